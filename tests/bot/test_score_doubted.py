"""A score asked about moves nothing, two counts are settled by a tap, an end has no chances."""

from __future__ import annotations

import pytest
from talk import Talk


@pytest.fixture
def match(fresh: Talk) -> Talk:
    fresh.say("we are ana and bo")
    fresh.say("next: gell and rudd")
    fresh.tap("add gell and rudd")
    fresh.say("1-2-1 us")
    return fresh


@pytest.mark.parametrize(
    "asked",
    [
        "hang on was that 2-2 or 3-2",
        "so thats 2 nil is it",
        "wait was it 4 2 or 5 2 now",
        "is it 3-1-2?",
        "did we say two three or three two",
    ],
)
def test_a_score_asked_about_moves_nothing(match: Talk, asked: str) -> None:
    stored = match.stored()["entry"]
    assert match.say(asked) == "As I have it; nothing changed.\n1-2-1. We serve."
    assert match.stored()["entry"] == stored


@pytest.mark.parametrize(
    "told",
    [
        "hang on bo says its 3 2 1",
        "they reckon it's 3-2-1",
        "they called 3-2-1 but its 1-2-1 isnt it",
    ],
)
def test_what_another_counts_is_taken_by_a_tap(match: Talk, told: str) -> None:
    assert match.say(told) == "I count this. Tap the other to take it.\n1-2-1. We serve."
    assert match.tap("we serve at 3-2-1").startswith("3-2-1. We serve.")


@pytest.mark.parametrize(
    ("told", "stands"),
    [
        ("i make it 3-2-1", "3-2-1. We serve."),
        ("no its 3-2-1", "3-2-1. We serve."),
        ("thats 3-2-1 us", "3-2-1. We serve."),
        ("we think its 3-2-1", "3-2-1. We serve."),
        ("were fine he can stand 3-2-1", "3-2-1. We serve."),
    ],
)
def test_a_score_told_still_counts(match: Talk, told: str, stands: str) -> None:
    assert match.say(told).endswith(stands)


@pytest.mark.parametrize(
    "told",
    ["11-9 us lol what a comeback", "what a game 11-9 to us", "11-9 us how sweet is that lol"],
)
def test_a_game_told_as_over_is_not_given_chances(match: Talk, told: str) -> None:
    assert match.say(told).startswith("Game 1 ours, 11-9.")
