"""A call of theirs that takes a point from somebody is asked where our number first takes none."""

from __future__ import annotations

import pytest
from talk import Talk


@pytest.fixture
def match(demo: Talk) -> Talk:
    demo.say("start")
    demo.say("6-4-2 us")
    return demo


@pytest.mark.parametrize(
    "said",
    [
        "6-5-1 them",
        "6-5-1, they serve",
        "scratch that last one, they only got 1, so 6-5-1 them",
        "6-4-1 them",
        "7-5-2 they're serving",
    ],
)
def test_a_point_taken_from_us_is_asked_and_not_stored(match: Talk, said: str) -> None:
    assert match.say(said) == "By my log it was 6 for you, 4 for them. Which is it?"
    assert match.say("score").startswith("6-4-2.")


def test_a_point_taken_from_them_is_asked_too(match: Talk) -> None:
    match.say("4-6-1 us")
    assert match.say("5-6-1 them").startswith("By my log it was 4 for you, 6 for them.")


def test_their_point_that_would_be_ours_is_asked(match: Talk) -> None:
    assert match.say("4-6-1 them").startswith("4-6-1. They serve from the right")
    assert match.say("their pt 4-7-1 them serving").endswith("Which is it?")
    assert match.say("5-6-1 them serving").startswith("5-6-1. They serve")


def test_a_tap_says_whose_they_are(match: Talk) -> None:
    match.say("6-5-1 them")
    ours_first, as_said = match.buttons
    assert (ours_first.label, as_said.label) == ("5-6-1: you 6", "6-5-1: you 5")
    assert match.press(ours_first.payload).startswith("5-6-1. They serve")
    match.say("undo")
    match.say("6-5-1 them")
    assert match.press(match.buttons[1].payload).startswith("6-5-1. They serve.")


@pytest.mark.parametrize(
    ("said", "kept"),
    [
        ("5-6-1 them", "5-6-1. They serve."),
        ("6-7-1 them", "6-7-1. They serve."),
        ("4-3-1 them", "4-3-1. They serve."),
        ("5-4-1 us", "5-4-1. We serve"),
        ("we're down 6-5-1 them", "6-5-1. They serve."),
    ],
)
def test_what_can_follow_or_fits_no_better_stands_as_said(
    match: Talk, said: str, kept: str
) -> None:
    assert match.say(said).startswith(kept)


def test_their_call_told_last_may_be_put_the_other_way_round(match: Talk) -> None:
    match.say("3-6-1 them")
    assert match.say("no, 6-3-1 them").startswith("6-3-1. They serve.")
