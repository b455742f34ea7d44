"""Several games told at once: each goes to whom it is told of, and a split never ends a match.

How players say it is from memory.
"""

from __future__ import annotations

import pytest
from talk import Talk

from bot.chat.results_said import result_said
from bot.chat.words import words
from knowledge.game import GameFormat


def games_of(text: str) -> tuple[tuple[int, int], ...]:
    found = words(text)
    said = result_said(text, found, of_score=found, format=GameFormat(best_of=3))
    assert said is not None, text
    return said.games


@pytest.mark.parametrize(
    "text",
    [
        "we split one game each the first was eleven nine them and the second eleven six us",
        "we split, 11-9 them then 11-6 us",
        "it is one all, 11-9 theirs and 11-6 ours",
        "11-9 them 11-6 us",
        "eleven nine them, eleven six us, third now",
        "first game them eleven nine second game us eleven six",
        "one game each, they took the first 11-9 and we took the second 11-6",
        "they won one and we won one, 11-9 and 11-6",
        "split the first two, 9-11 and 11-6",
        "one game all, 11-9 to them and 11-6",
    ],
)
def test_each_game_goes_to_its_side(text: str) -> None:
    assert games_of(text) == ((9, 11), (11, 6))


def test_a_win_in_two_is_still_one() -> None:
    assert games_of("11-9 us, 11-6 us") == ((11, 9), (11, 6))
    assert games_of("they won 11-9 11-6") == ((9, 11), (6, 11))


@pytest.fixture
def match(demo: Talk) -> Talk:
    demo.say("next: ruiz and hale, best of 3 to 11")
    return demo


@pytest.mark.parametrize("text", ["we split the first two 11-9 11-6", "one game all 11-9 11-6"])
def test_whose_they_were_is_asked_where_the_points_say_otherwise(match: Talk, text: str) -> None:
    stored = match.stored()
    reply = match.say(text)
    assert "11-9 6-11 or 9-11 11-6" in reply
    assert match.stored() == stored
    assert match.say("9-11 11-6").startswith("Game 2 ours, 11-6.")


@pytest.mark.parametrize(
    "text",
    [
        "we split it is one all",
        "split the first two",
        "its one game all",
        "one all in games",
        "we won one they won one",
        "tied at one game",
        "split games going to a third",
    ],
)
def test_games_told_level_are_no_points(match: Talk, text: str) -> None:
    assert match.say(text).startswith("No game of this match is over")
    match.say("11-9 6-11")
    assert match.say(text).startswith("Games so far: 11-9 6-11.")


def test_points_told_level_still_are(match: Talk) -> None:
    match.say("0-0-2 us")
    assert match.say("one all").startswith("1-1-2.")
