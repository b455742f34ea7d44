"""No word of a user's becomes markup or a link, whatever it looks like.

What the server makes a link of is checked with its own patterns, as its source states them beside
its matchers (tdlib, MessageEntity.cpp: match_mentions, match_bot_commands, match_hashtags,
match_cashtags, match_tg_urls, match_urls, match_bank_card_numbers; read), an address being taken
wider than there: any dot between two signs that are no blanks and no decimal point.
"""

from __future__ import annotations

import re

import pytest
from bot_api_rules import plain_text
from hypothesis import given
from hypothesis import strategies as st
from talk import Talk

from bot.channels.telegram_bot.form import LIMITS, html_of, keyboard_of, shown_text
from bot.chat.payload import LIMIT_BYTES
from bot.post import Outgoing
from bot.post.outgoing import units
from scouting_db.values import About

LINKS = {
    "mention": re.compile(r"(?<!\w)@\w{2,32}\b"),
    "command": re.compile(
        r"(?<![\w/<>])/(?!(?:plan|cue|scout|review|players|undo|mode|bind)\b)\w{1,64}"
    ),
    "hashtag": re.compile(r"(?<![\w·\u200c])#[\w·\u200c]*[^\W\d_]"),
    "cashtag": re.compile(r"(?<![\w$])\$(?:1INCH|[A-Z]{1,8})(?![\w$])"),
    "own address": re.compile(r"(?:tg|ton|tonsite)://", re.IGNORECASE),
    "address": re.compile(r"(?<![\d\s])\.(?=[^\s.])|(?<=\d)\.(?=[^\s.\d])|\d\.\d+\.\d"),
    "card": re.compile(r"[0-9](?:[ -]*[0-9]){12,}"),
}

NASTY = [
    "<b>Okafor</b>",
    "<a href='https://evil.example'>Okafor</a>",
    "Okafor</b><i>",
    "&lt;Okafor&amp;",
    "*Okafor* _Lin_ `Ruiz`",
    "[Okafor](https://evil.example)",
    "[Okafor](tg://user?id=1)",
    "evil.example",
    "https://evil.example/a?b=c#d",
    "www.evil.example",
    "okafor@evil.example",
    "@okafor_bot",
    "/stop_all",
    "#okafor",
    "$OKA",
    "tg://resolve?domain=evil",
    "ton://evil",
    "tonsite://evil.ton",
    "1.2.3.4",
    "t.me/evil",
    "http://1.2.3.4:80",
    "4111 1111 1111 1111",
    "x.y",
    "über.example",
    "пример.рф",
    "a@b.co",
    "..evil.example..",
    "https://t.me/StandInBot?start=71JQG-X0Y9-FHB1-QDG2-T6XF",
    "no.spaces,no.peace",
    "3.5 and 4.0 players",
    "ab.1",
]


def links_in(text: str) -> dict[str, str]:
    """What of the text the server would make a link of."""
    return {kind: found[0] for kind, rule in LINKS.items() if (found := rule.search(text))}


@pytest.mark.parametrize("name", NASTY)
def test_no_name_becomes_markup_or_a_link(name: str) -> None:
    for message in (Outgoing(text=f"Dink {name}\n{name} is tall"), Outgoing(text=name)):
        assert links_in(plain_text(html_of(message), "HTML")) == {}
        assert links_in(shown_text(message)) == {}
        assert len(shown_text(message)) == len(message.text)


@given(st.text(alphabet=st.sampled_from("ab1 .@/#$:-<>&\n\U0001f3d3E"), min_size=1, max_size=60))
def test_no_text_does(text: str) -> None:
    assert links_in(shown_text(Outgoing(text=text))) == {}


@given(st.text(alphabet=st.sampled_from("ab1 .@/#$:-<>&\n\U0001f3d3E"), min_size=1, max_size=60))
def test_it_stays_as_long_as_it_was(text: str) -> None:
    assert units(shown_text(Outgoing(text=text))) == units(text)


def test_the_check_itself_finds_links() -> None:
    assert {kind for text in NASTY for kind in links_in(text)} == {*LINKS}


@pytest.mark.parametrize(
    "text", ["3.5 in 100", "6-4-2. Same shot.", "/plan  /cue", "Okafor/Lindqvist", "e. g."]
)
def test_our_own_words_stay_as_they_are(text: str) -> None:
    assert shown_text(Outgoing(text=text)) == text


def test_only_an_invitation_bears_a_link() -> None:
    link = "https://t.me/StandInBot?start=71JQG-X0Y9-FHB1-QDG2-T6XF"
    about = About(kind="invitation", id=0)
    assert link in html_of(Outgoing(text=link, about=about))
    assert link not in html_of(Outgoing(text=link))


@pytest.mark.parametrize("name", NASTY)
def test_a_player_of_such_a_name_is_answered_within_every_limit(demo: Talk, name: str) -> None:
    for words in (
        f"/add {name}",
        f"{name} is tall, lobs a lot",
        f"/nickname okafor {name}",
        f"/rename hale to {name}",
    ):
        demo.say(words)
        for one in demo.last:
            _within_limits(one)
    for words in ("/players", f"where do i dink {name}", "/plan", f"/notes {name}"):
        demo.say(words)
        for one in demo.last:
            _within_limits(one)


def _within_limits(message: Outgoing) -> None:
    shown = plain_text(html_of(message), "HTML")
    assert 0 < units(shown) <= (LIMITS.text if message.picture is None else LIMITS.caption)
    assert links_in(shown) == {}
    for row in (keyboard_of(message) or {"inline_keyboard": []})["inline_keyboard"]:
        for button in row:
            assert button["text"].strip()
            assert 1 <= len(button["callback_data"].encode()) <= LIMIT_BYTES


def test_a_note_of_full_length_is_answered_in_whole_parts(demo: Talk) -> None:
    demo.say("okafor " + "www.evil.example " * 240)
    for reply in demo.last:
        assert units(shown_text(reply)) <= LIMITS.text
    assert demo.last[-1].text.endswith("A long one: I read only its beginning.")
