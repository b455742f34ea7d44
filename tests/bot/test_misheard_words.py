"""Small words that dictation writes as others, told by their neighbours."""

from __future__ import annotations

import pytest
from talk import Talk

from bot.chat.misheard_words import as_heard
from bot.chat.words import folded_line, words


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ("we one that one", "we won that one"),
        ("they one the first game", "they won the first game"),
        ("and he one it", "and he won it"),
        ("there serving zero two one", "they serving zero two one"),
        ("were at nine ate two there serve", "were at nine ate two they serve"),
        ("there ball now", "they ball now"),
        ("there up nine five", "they up nine five"),
    ],
)
def test_the_word_is_heard_as_it_was_meant(typed: str, meant: str) -> None:
    assert folded_line(as_heard(words(typed))) == meant


@pytest.mark.parametrize(
    "typed",
    [
        "is he standing over there serving",
        "who is there serving",
        "one for we one the other side",
        "which one that one",
        "they want one that dips",
        "go there down the line",
        "is there up and back here",
        "hit it there point blank",
    ],
)
def test_a_number_and_a_place_stay_what_they_are(typed: str) -> None:
    assert folded_line(as_heard(words(typed))) == typed


def test_a_rally_and_who_serves_are_counted_as_heard(demo: Talk) -> None:
    demo.say("next: okafor and lindqvist")
    demo.say("they serve first")
    assert demo.say("there serving zero two one").startswith("0-2-1. They serve")
    assert demo.say("we one that one").startswith("0-2-2. They serve")
    assert demo.say("they one that one").startswith("1-2-2. They serve")
