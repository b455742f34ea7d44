"""Payloads: short, versioned, parsed strictly."""

from __future__ import annotations

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from telegram.constants import InlineKeyboardButtonLimit

from bot.chat.payload import (
    HIGHEST_NUMBER,
    LIMIT_BYTES,
    ROOM_BYTES,
    BadPayloadError,
    Tap,
    Verb,
    stamped,
    tap,
    unstamped,
)
from knowledge.advice import MatchFact
from knowledge.vocabulary import Trait

ARGS = st.lists(
    st.text(st.characters(min_codepoint=48, max_codepoint=122, exclude_characters=":"), min_size=1),
    max_size=3,
)


def test_the_limit_is_the_bot_api_s() -> None:
    assert LIMIT_BYTES == InlineKeyboardButtonLimit.MAX_CALLBACK_DATA


@given(st.sampled_from([*Verb]), ARGS)
def test_round_trip(verb: Verb, args: list[str]) -> None:
    made = Tap(verb=verb, args=tuple(args))
    try:
        text = str(made)
    except ValueError:
        assert len(":".join(["1", verb, *args]).encode()) > ROOM_BYTES
        return
    assert Tap.parse(text) == made


@pytest.mark.parametrize(
    "forged", ["", "1", "1:", "2:ask:lob", "1:steal:1", "1:undo:", "::", "x" * 500]
)
def test_a_forged_or_old_payload_is_refused(forged: str) -> None:
    with pytest.raises(BadPayloadError):
        Tap.parse(forged)


@given(st.text(max_size=200))
def test_any_text_is_parsed_or_refused(text: str) -> None:
    try:
        parsed = Tap.parse(text)
    except BadPayloadError:
        return
    assert str(parsed) == text or len(text.encode()) > ROOM_BYTES


@given(st.sampled_from([*Verb]), ARGS, st.integers(min_value=1, max_value=36**8 - 1))
def test_a_stamp_comes_off_again_and_keeps_to_the_limit(
    verb: Verb, args: list[str], book: int
) -> None:
    plain = ":".join(["1", verb, *args])
    assume(len(plain.encode()) <= ROOM_BYTES)
    bearing = stamped(plain, book)
    assert len(bearing.encode()) <= LIMIT_BYTES
    assert unstamped(bearing) == (plain, book)
    assert unstamped(plain) == (plain, None)


def test_more_books_than_a_stamp_holds_are_refused() -> None:
    with pytest.raises(ValueError, match="does not fit"):
        stamped("1:ask:lob", HIGHEST_NUMBER)


@pytest.mark.parametrize("forged", ["1.:ask:lob", "1.Z:ask:lob", "1.a", "1.zzzzzzzzz:ask:lob"])
def test_a_forged_stamp_is_no_payload(forged: str) -> None:
    plain, book = unstamped(forged)
    assert book is None
    with pytest.raises(BadPayloadError):
        Tap.parse(plain)


def test_an_argument_never_smuggles_a_colon() -> None:
    with pytest.raises(ValueError, match="colon"):
        tap(Verb.ASK, "lob:2")


def test_what_a_button_settles_is_either_of_the_match_or_of_a_player() -> None:
    """Both stand in the same place of a payload, so that no word may be both."""
    assert {*MatchFact}.isdisjoint({*Trait})
