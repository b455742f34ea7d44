"""A match of one game, told as best of three: its result is asked for, and never dropped.

That many pools play one game to 11 is common practice; how players say it is from memory.
"""

from __future__ import annotations

import pytest
from talk import Talk

LOST = "lost eleven five"
CLOSED = "Lost 5-11. The match is closed."


@pytest.fixture
def lost(demo: Talk) -> Talk:
    demo.say("next: ruiz and hale")
    demo.say(LOST)
    return demo


@pytest.mark.parametrize(
    "text",
    [
        "it was only one game to eleven",
        "that was the whole match",
        "match over",
        "the match is over",
        "we only play one game",
        "just one game",
        "there is no second game",
        "matches are one game here",
        "one game to 11",
        "single game",
    ],
)
def test_said_at_once_it_closes_the_match(lost: Talk, text: str) -> None:
    assert lost.say(text) == CLOSED
    assert lost.say("undo").startswith("Taken back: the result.")


@pytest.mark.parametrize(
    "text",
    ["lost the match eleven five", "lost the only game 11-5", "lost 11-5 it was one game"],
)
def test_said_with_the_game_it_is_the_match(demo: Talk, text: str) -> None:
    demo.say("next: ruiz and hale")
    assert demo.say(text) == CLOSED


@pytest.mark.parametrize("text", ["won one game 11-5", "lost the first 11-5", "we lost 11-5"])
def test_one_game_of_several_is_not_the_match(demo: Talk, text: str) -> None:
    demo.say("next: ruiz and hale")
    assert demo.say(text).startswith("Game 1 ")


def test_the_next_announcement_asks(lost: Talk) -> None:
    told = lost.say("next: okafor and lindqvist").splitlines()
    assert told[0].startswith("Next: ")
    assert "Ruiz/Hale stand at 5-11, not closed." in told[-1]
    assert lost.tap("it was one game only").startswith("Lost 5-11 vs ")
    assert lost.say("did we beat ruiz and hale").startswith("You lost 5-11, earlier today,")
    assert lost.say("we serve").startswith("0-0-2.")


@pytest.mark.parametrize(
    "text", ["that was the whole match", "it was only one game to eleven", "we only play one game"]
)
def test_said_after_the_next_announcement_it_is_of_the_one_before(lost: Talk, text: str) -> None:
    lost.say("next: okafor and lindqvist")
    assert lost.say(text).startswith("Lost 5-11 vs Ana Ruiz/Hale: closed as one game.")
    assert lost.say("did we beat ruiz and hale").startswith("You lost 5-11")


def test_one_game_told_late_is_how_the_next_is_played_too(lost: Talk) -> None:
    lost.say("next: okafor and lindqvist")
    assert lost.say("we only play one game").endswith("This match: one game to 11.")


def test_a_second_press_and_an_undo(lost: Talk) -> None:
    lost.say("next: okafor and lindqvist")
    over = lost.button("it was one game only").payload
    lost.press(over)
    stored = lost.stored()
    lost.press(over)
    assert lost.stored() == stored
    assert lost.say("undo").startswith("Taken back: the result.")
    assert lost.say("put it back").startswith("Put back: the result.")


@pytest.mark.parametrize("next_said", ["next: okafor and lindqvist"])
def test_nothing_is_asked_of_a_match_that_was_decided_or_not_begun(
    demo: Talk, next_said: str
) -> None:
    demo.say("next: ruiz and hale")
    assert "not closed" not in demo.say(next_said)
    demo.say("won 11-5 11-4")
    assert "not closed" not in demo.say("next: ruiz and hale")


def test_before_anything_is_played_it_is_how_the_match_goes(demo: Talk) -> None:
    demo.say("next: ruiz and hale")
    assert demo.say("there is only one game here").startswith("This match: one game to 11.")
    assert demo.say("match over").startswith("By my log that's not decided.")


def test_games_that_decide_nothing_want_the_result(lost: Talk) -> None:
    lost.say("won 11-5")
    assert lost.say("match over").startswith("By my log that's not decided.")
