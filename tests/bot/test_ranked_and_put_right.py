"""Who is the weak one is a note; and whose a note is once it was put right. Our own wordings."""

from __future__ import annotations

import pytest
from talk import Talk


@pytest.mark.parametrize(
    "text",
    [
        "okafors the weak one though i think at the net honestly maybe",
        "okafor's the stronger player",
        "okafors the weak link honestly",
        "Okafors the better one at the net maybe",
    ],
)
def test_who_is_the_weak_one_is_kept_in_words(demo: Talk, text: str) -> None:
    demo.say(text)
    assert text[:40] in demo.say("what did i note about okafor")


@pytest.mark.parametrize(
    "text",
    [
        "okafors the weak one?",
        "who is the weak one okafor or lindqvist",
        "is okafor the weak one",
        "whos the stronger player",
    ],
)
def test_asked_who_is_the_weak_one_keeps_nothing(demo: Talk, text: str) -> None:
    before = demo.say("how many notes on okafor")
    demo.say(text)
    assert demo.say("how many notes on okafor") == before


@pytest.mark.parametrize("text", ["hales serve looks odd today", "hale's serve looks odd today"])
def test_words_that_name_the_owner_of_a_stroke_are_found_again(
    fresh_anywhere: Talk, text: str
) -> None:
    fresh_anywhere.say("new opponent hale")
    fresh_anywhere.say(text)
    assert text in fresh_anywhere.say("what did i note about hale")


@pytest.mark.parametrize(
    "right",
    [
        "i mean sunnivas hands are slow sorry not gretel",
        "i mean sunnivas hands are slow not gretel",
    ],
)
def test_nothing_of_it_is_of_whom_it_was_not_meant(fresh_anywhere: Talk, right: str) -> None:
    fresh_anywhere.say("next: gretel hoffmann and sunniva berg")
    fresh_anywhere.say("add both")
    fresh_anywhere.say("gretels hands are slow")
    assert fresh_anywhere.say(right) == "Changed. Berg: counter weak."
    assert "hands are slow" not in fresh_anywhere.say("what do i know about gretel")
    assert fresh_anywhere.say("what did i note about gretel") == "No notes on Hoffmann yet."
    assert "= counter weak" in fresh_anywhere.say("what did i note about sunniva")
