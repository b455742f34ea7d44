"""A bare call is read by the course of the game, and turned where somebody says whose it was.

Only the serving side scores (2025 rulebook, side-out scoring).
"""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from coach_talks import coach_at_a_match
from talk import Talk


@pytest.fixture
def match() -> Iterator[Talk]:
    talk = coach_at_a_match()
    yield talk
    talk.store.close()


def after(match: Talk, *texts: str) -> str:
    for text in texts:
        said = match.say(text)
    return said


def test_our_points_stand_where_they_served(match: Talk) -> None:
    said = after(match, "we serve", "5-2-2", "side out", "5-7-2")
    assert said.startswith("5-7-2. We serve.")
    assert "3 in 10" in match.say("win chance").splitlines()[0]


@pytest.mark.parametrize(
    "said",
    [
        "no we serve", "No, we're serving", "wait its our serve", "our serve not theirs",
        "nope we have the 5", "no we have 5", "they have the 7", "other way round",
    ],
)  # fmt: skip
def test_the_digits_stay_and_the_sides_change(match: Talk, said: str) -> None:
    assert after(match, "they serve", "5-7-2").startswith("5-7-2. They serve.")
    assert match.say(said).startswith("5-7-2. We serve.")
    assert "3 in 10" in match.say("win chance").splitlines()[0]
    match.say("undo")
    assert match.say("score").startswith("5-7-2. They serve.")


def test_a_call_told_with_who_serves_may_be_the_other_sides(match: Talk) -> None:
    assert after(match, "5-7-2 them serving", "no we serve").startswith("5-7-2. We serve.")


def test_a_call_of_ours_was_theirs(match: Talk) -> None:
    assert after(match, "we serve", "3-5-1", "no they serve").startswith("3-5-1. They serve.")


@pytest.mark.parametrize(
    ("before", "said", "stands"),
    [
        (("they serve", "5-7-2"), "we serve", "7-5-1. We serve"),
        (("we serve", "5-2-2", "7-2-1"), "no they serve", "2-7-1. They serve"),
        (("we serve", "5-2-2", "side out"), "no we serve", "5-2-1. We serve"),
        (("they serve", "5-7-2", "our rally"), "no they serve", "5-7-1. They serve"),
        (("they serve", "we are down 5-7-2, they serve"), "no we serve", "5-7-1. We serve"),
    ],
)
def test_points_stay_whose_they_were(
    match: Talk, before: tuple[str, ...], said: str, stands: str
) -> None:
    """What came after the call, points that nobody can have lost, a side-out, a rally, and a call
    that said who serves: nothing of it is in doubt."""
    after(match, *before)
    assert match.say(said).startswith(stands)


def test_a_call_that_would_take_a_point_from_them_is_ours_first(demo: Talk) -> None:
    """Points never fall: "5-6, they serve" at their 6 and our 4 is their 6 still."""
    demo.say("playing okafor and lindqvist, one game to 15 rally scoring, they serve")
    demo.say("we have 4, they have 6, they serve")
    assert demo.say("5-6, they serve").startswith("6-5. They serve")


@pytest.mark.parametrize(
    ("told", "right", "stands"),
    [
        ("5-1-1 they serve", "sorry 5-2 they have 5 we have 2", "5-2-1. They serve"),
        ("4-2-1 we serve", "no wait we have 4 and they have 3", "4-3-1. We serve"),
        # Not put right but told anew, it is whoever scored that serves.
        ("4-2-1 we serve", "we have 4 and they have 3", "3-4-1. They serve"),
    ],
)
def test_points_put_right_leave_the_serve(match: Talk, told: str, right: str, stands: str) -> None:
    assert after(match, told, right).startswith(stands)


def test_the_same_digits_as_their_call_say_whose_they_are(match: Talk) -> None:
    said = after(match, "5-4-1 we serve", "no its 5-4 to them")
    assert said.splitlines() == [
        "5-4-1. They serve.",
        "Ours first that's 4-5; before it was 5-4.",
    ]


def test_a_call_that_fits_either_way_leaves_a_tap(match: Talk) -> None:
    assert after(match, "3-2-1 they serve", "3-4-1").startswith("3-4-1. They serve")
    assert match.tap("we serve at 3-4-1").startswith("3-4-1. We serve")


def test_a_call_that_is_nearer_one_way_leaves_none(match: Talk) -> None:
    after(match, "3-2-1 they serve", "4-2-1")
    assert not [one.label for one in match.buttons if "serve at" in one.label]
