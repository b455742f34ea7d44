"""The form of a message: well-formed HTML that reads as the reply, within the limits."""

from __future__ import annotations

import pytest
from bot_api_rules import (
    MAX_CAPTION,
    MAX_TEXT,
    RefusedError,
    check_caption,
    check_text,
    plain_text,
    utf16_units,
)
from hypothesis import given
from hypothesis import strategies as st

from bot.channels.telegram_bot.form import LIMITS, html_of, keyboard_of
from bot.chat.reply import Button, Reply
from bot.post import Outgoing, messages_of
from knowledge.court_picture import CourtPicture

ODD_TEXTS = st.text(alphabet=st.sampled_from("ab<>&\"'\n \U0001f3d3"), min_size=1, max_size=60)


def test_our_limits_are_those_of_the_documentation() -> None:
    """Bot API, sendMessage and sendPhoto: 4096 and 1024 characters after entities parsing."""
    assert (LIMITS.text, LIMITS.caption) == (MAX_TEXT, MAX_CAPTION) == (4096, 1024)


@given(ODD_TEXTS)
def test_any_text_reads_back_as_written(text: str) -> None:
    assert plain_text(html_of(Outgoing(text=text)), "HTML") == text


@given(ODD_TEXTS, ODD_TEXTS)
def test_a_caption_with_its_alt_text_is_well_formed_and_fits(text: str, alt: str) -> None:
    message = Outgoing(text=text, picture=CourtPicture(title="", alt=alt * 20))
    shown = plain_text(html_of(message), "HTML")
    assert shown.startswith(text)
    check_caption(shown)


@given(st.text(alphabet=st.sampled_from("a<& \n\U0001f3d3"), min_size=1, max_size=400))
def test_long_texts_go_out_in_parts_that_the_server_takes(text: str) -> None:
    long = (text.strip() or "a") * 40
    for part in messages_of(Reply(text=long), LIMITS):
        check_text(plain_text(html_of(part), "HTML"))


def test_the_first_line_is_bold_and_a_later_part_is_not() -> None:
    assert (
        html_of(Outgoing(text="Mira takes it\nwhy & how")) == "<b>Mira takes it</b>\nwhy &amp; how"
    )
    assert html_of(Outgoing(text="and more", continues=True)) == "and more"


def test_alt_text_is_folded_away_under_a_picture() -> None:
    picture = CourtPicture(title="", alt="Mira left, Tom right")
    assert html_of(Outgoing(text="Stand", picture=picture)).endswith(
        "\n<blockquote expandable>Picture: Mira left, Tom right</blockquote>"
    )


def test_buttons_keep_their_rows() -> None:
    message = Outgoing(
        text="x",
        buttons=((Button(label="why", payload="1:why:lob"),), (Button(label="b", payload="1:a"),)),
    )
    assert keyboard_of(message) == {
        "inline_keyboard": [
            [{"text": "why", "callback_data": "1:why:lob"}],
            [{"text": "b", "callback_data": "1:a"}],
        ]
    }
    assert keyboard_of(Outgoing(text="x")) is None


def test_the_stand_in_refuses_what_the_server_refuses() -> None:
    """So that a mistake of ours would show in the end-to-end tests."""
    for source in ("5 < 6", "<b>open", "</b>", "<b><i>x</b></i>", "<nav>x</nav>", "a <"):
        with pytest.raises(RefusedError, match="can't parse entities"):
            plain_text(source, "HTML")
    for text in ("", " \n ", "x" * 4097, "\U0001f3d3" * 2049):
        with pytest.raises(RefusedError):
            check_text(text)
    assert utf16_units("\U0001f3d3") == 2
