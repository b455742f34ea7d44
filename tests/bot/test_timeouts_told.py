"""Time-outs told in passing stay told, and what is asked in one is what to change."""

from __future__ import annotations

import pytest
from talk import Talk

from bot.chat.said import Question
from knowledge.vocabulary import Topic


@pytest.fixture
def match(demo: Talk) -> Talk:
    demo.say("next: okafor and lindqvist, we serve")
    demo.say("4-4-1")
    return demo


NONE_LEFT = "None left: breathe in the ten seconds of the call."


@pytest.mark.parametrize(
    "said",
    [
        "used our timeouts",
        "we out of timeouts",
        "we dont have any timeouts",
        "no more timeouts",
        "burned both our t/os",
        "both timeouts gone",
        "no timeouts left",
    ],
)
def test_none_left_is_kept_for_the_game(match: Talk, said: str) -> None:
    assert match.say(said).startswith(NONE_LEFT)
    assert match.say("t/o?").startswith(NONE_LEFT)
    assert match.say("how many timeouts left") == "Time-outs left: you 0, they 2."
    match.say("lost g1 8-11")
    assert match.say("how many timeouts left") == "Time-outs left: you 2, they 2."


@pytest.mark.parametrize(
    "said", ["if we had no timeouts left what then", "they have no timeouts left"]
)
def test_what_is_supposed_or_theirs_is_not_kept(match: Talk, said: str) -> None:
    match.say(said)
    assert not match.say("t/o?").startswith(NONE_LEFT)


@pytest.mark.parametrize(
    ("said", "taken"),
    [
        ("they called t/o what do i tell tom", "Their time-out."),
        ("they called timeout what now", "Their time-out."),
        ("they took a timeout, what do we talk about", "Their time-out."),
        ("we took a timeout whats the plan", "Time-out taken. 1 left this game."),
    ],
)
def test_a_timeout_told_with_its_question_counts(match: Talk, said: str, taken: str) -> None:
    answer = match.say(said)
    assert taken in answer
    assert len(match.last) == 1


def test_what_to_say_in_one_is_one_ball_and_one_word(match: Talk) -> None:
    answer = match.say("what do i say in the timeout")
    heard = match.heard.understood if match.heard else None
    assert isinstance(heard, Question)
    assert heard.topic is Topic.CUE
    assert "Say:" in answer or "say:" in answer


@pytest.mark.parametrize(
    ("said", "stands"),
    [
        ("lost 4 straight 5-7", "7-5-1. They serve."),
        ("5-7 them, lost 4 in a row", "7-5-1. They serve."),
        ("lost 5 in a row, 8-9", "9-8-1. They serve."),
        ("up 8-3 w wind switch ends", "8-3-1. We serve"),
        ("up 8-3 w the sun behind", "8-3-1. We serve"),
    ],
)
def test_a_run_or_a_with_ends_no_game(match: Talk, said: str, stands: str) -> None:
    assert match.say(said).startswith(stands)


@pytest.mark.parametrize(
    "said", ["lost 5 in a row, 8-11", "lost 8-11, lost 5 straight at the end", "L 8-11"]
)
def test_a_game_that_is_over_still_is(match: Talk, said: str) -> None:
    assert match.say(said).startswith("Game 1 theirs, 8-11.")


@pytest.mark.parametrize(
    "said",
    ["is it win by 2 to 15", "is it win by two", "do we win by 2", "game to 15 win by 2?"],
)
def test_win_by_two_is_a_rule(match: Talk, said: str) -> None:
    """Rulebook 2025, section 12: games are won by two points (from memory)."""
    assert match.say(said).startswith("Win by two")
