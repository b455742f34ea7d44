"""Time-outs taken, in words: counted for whoever took it, never mixed up with asking for one."""

from __future__ import annotations

import pytest
from talk import Talk
from voices import EVENING

from bot.chat.said import Kind, Question
from bot.chat.understand import understand
from bot.chat.wording import wording
from knowledge.vocabulary import Topic


@pytest.fixture
def running(demo: Talk) -> Talk:
    demo.say("next: okafor and lindqvist, to 11")
    demo.say("we serve")
    return demo


@pytest.mark.parametrize(
    "text",
    [
        "we took a timeout",
        "our time-out",
        "timeout us",
        "called a timeout",
        "ok we used our timeout",
    ],
)
def test_our_time_out_is_counted(running: Talk, text: str) -> None:
    assert running.say(text).startswith("Time-out taken. 1 left")
    assert running.heard is not None
    assert running.heard.kind is Kind.SCORE


@pytest.mark.parametrize(
    "text", ["they called a timeout", "their timeout", "timeout them", "they just took a time out"]
)
def test_their_time_out_is_counted(running: Talk, text: str) -> None:
    assert running.say(text).startswith("Their time-out.")


def test_a_game_to_11_has_two_and_undo_gives_one_back(running: Talk) -> None:
    """Two a game to 11 or 15 (2025 edition, 10.A)."""
    running.say("our timeout")
    assert "0 left" in running.say("our timeout")
    assert running.say("our timeout").startswith("No time-out left")
    running.say("undo")
    assert "0 left" in running.say("our timeout")


@pytest.mark.parametrize(
    "text", ["timeout?", "should we call a timeout", "timeout", "our timeout?"]
)
def test_asking_for_one_takes_none(running: Talk, text: str) -> None:
    running.say(text)
    assert running.heard is not None
    assert running.heard.kind is Kind.QUESTION


@pytest.mark.parametrize(
    "text",
    ["timeouts left?", "how many timeouts do we have left", "any time-outs left", "timeouts left"],
)
def test_what_is_left_is_told_of_both_sides(running: Talk, text: str) -> None:
    running.say("they called a timeout")
    assert running.say(text) == "Time-outs left: you 2, they 1."


def test_what_is_left_needs_a_match(fresh: Talk) -> None:
    assert fresh.say("timeouts left?") == wording("timeouts.no_match")


def test_without_a_match_nothing_is_counted(demo: Talk) -> None:
    demo.say("won 11-3 11-4")
    demo.say("their timeout")
    assert demo.heard is not None
    assert demo.heard.kind is not Kind.SCORE


def test_a_call_is_nobodys_height(running: Talk) -> None:
    running.say("cue, they serve 0-5-1")
    assert running.heard is not None
    assert running.heard.kind is not Kind.NOTE
    assert "short" not in running.say("what do we know about okafor")


@pytest.mark.parametrize(
    ("text", "topic"),
    [
        ("ok timeout. 3 things max", Topic.GAME_PLAN),
        ("we called timeout, give me two things", Topic.GAME_PLAN),
        ("a couple of tips for the timeout pls", Topic.GAME_PLAN),
        ("time out! one thing", Topic.CUE),
        ("timeout now? three things went wrong", Topic.TIMEOUT_NOW),
        ("should we take a timeout", Topic.TIMEOUT_NOW),
    ],
)
def test_how_many_things_are_wanted_in_a_break_asks_for_the_plan(text: str, topic: Topic) -> None:
    asked = [one for one in understand(text, chat=EVENING) if isinstance(one, Question)]
    assert [one.topic for one in asked] == [topic]


def test_a_break_called_beside_it_is_counted_as_well(running: Talk) -> None:
    assert "Time-out taken. 1 left" in running.say("we called a timeout, three things max")


def test_a_timeout_in_two_capitals(fresh: Talk) -> None:
    fresh.say("we are ana and bo")
    fresh.say("next: gell and rudd")
    fresh.tap("add gell and rudd")
    fresh.say("3-7-1 they serve")
    assert fresh.say("ok TO taken").startswith("Time-out taken. 1 left this game.")
    assert fresh.say("they called a TO").startswith("Their time-out.")
    assert fresh.say("how many left of TOs") == "Time-outs left: you 1, they 1."
    for said in ("serve it TO gell", "ok TO GELL THEN"):
        fresh.say(said)
        assert fresh.say("TOs left?") == "Time-outs left: you 1, they 1.", said
