"""One game of a match to another target, and leads that would have ended it: said, never counted.

By the 2025 rulebook a game to 11 is won by two points, so at 13-11 it is over; examples of our own.
"""

from __future__ import annotations

import pytest
from talk import Talk

from bot.chat.said import FormatTold

ONLY = "I count every game of a match to 11. For one to 15: next: ..., one game to 15."


@pytest.fixture
def decider(demo: Talk) -> Talk:
    """One game all with Ruiz and Hale, to 11."""
    for said in ("next: ruiz and hale", "we serve", "we won 11-7", "lost 11-9"):
        demo.say(said)
    return demo


@pytest.mark.parametrize(
    "said",
    ["third to 15, they serve", "game 3 to 15 they serve", "the decider is to 15, they serve"],
)
def test_one_game_to_another_target_is_said_and_its_server_counts(decider: Talk, said: str) -> None:
    text, score = decider.say(said).splitlines()
    assert text == ONLY
    assert score.startswith("Game 3. 0-0-2. They serve")


def test_the_same_target_opens_the_game(decider: Talk) -> None:
    assert decider.say("third to 11, they serve").startswith("Game 3. 0-0-2. They serve")


def test_a_game_to_another_target_is_no_format_of_the_match(demo: Talk) -> None:
    demo.say("next: ruiz and hale")
    stored = demo.stored()
    assert demo.say("third to 15").splitlines()[0] == ONLY
    assert demo.stored() == stored
    assert "best of 3 to 15" in demo.say("games to 15")


@pytest.mark.parametrize(
    "said", ["they lead 13-11 first server", "they lead 13-11", "we lead 11-4"]
)
def test_a_lead_is_a_running_score_and_ends_nothing(decider: Talk, said: str) -> None:
    decider.say("they serve")
    stored = decider.stored()
    assert decider.say(said).endswith("ends a game to 11. Not stored; what's the score?")
    assert decider.stored() == stored
    assert decider.say("they lead 8-7 second server").startswith("8-7-2. They serve.")


@pytest.mark.parametrize("said", ["whats the third to 15", "third shot to 15 feet"])
def test_other_thirds_are_no_game(decider: Talk, said: str) -> None:
    decider.say(said)
    assert decider.heard is not None
    assert not isinstance(decider.heard.understood, FormatTold)


def test_games_between_two_games_are_no_points(fresh: Talk) -> None:
    fresh.say("we are ana and bo")
    fresh.say("next: gell and rudd, best of 3 to 11")
    fresh.tap("add gell and rudd")
    fresh.say("we lost the first 8-11")
    between = fresh.say("we won g2 11-9")
    for asked in ("1-1. third to 11?", "is the third game to 15?", "one all, decider to 11?"):
        assert fresh.say(asked).startswith("I have best of 3 to 11."), asked
    assert fresh.say("1-1").startswith("Games so far: 8-11 11-9.\n")
    assert fresh.say("score") == between
    assert fresh.say("1-1-2 us").startswith("1-1-2. We serve.")
