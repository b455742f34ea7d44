"""Whose the last rally was not: said after it was counted, it is counted anew and never twice."""

from __future__ import annotations

from dataclasses import replace

import pytest
from talk import Talk
from voices import EVENING

from bot.chat.said import RallySaid, UndoSaid
from bot.chat.understand import understand
from knowledge.vocabulary import PlayerId

OKAFOR, LINDQVIST = PlayerId(3), PlayerId(4)
MATCH = replace(EVENING, theirs=(OKAFOR, LINDQVIST), focus=(OKAFOR, LINDQVIST), match_on=True)


@pytest.fixture
def match(demo: Talk) -> Talk:
    demo.say("start")
    demo.say("7-3-1 us")
    return demo


@pytest.mark.parametrize(
    "said",
    [
        "oh no, it was not our point, they took it",
        "no it wasn't our point",
        "that was not ours, it was theirs",
        "sorry, we did not win that one",
        "that point was not ours",
        "no, not our point, their point",
    ],
)
def test_a_point_denied_is_taken_back_and_counted_for_them(match: Talk, said: str) -> None:
    assert match.say("our point").startswith("8-3-1.")
    assert "7-3-2" in match.say(said)


@pytest.mark.parametrize(
    "said",
    [
        "no, it was not their point",
        "they didn't win that, we did",
        "wait that wasn't theirs",
        "actually that last one was ours",
        "the last point was ours not theirs",
    ],
)
def test_theirs_denied_is_ours(match: Talk, said: str) -> None:
    assert "7-3-2" in match.say("their point")
    assert "8-3-1" in match.say(said)


def test_denied_as_it_was_counted_it_counts_no_second_time(match: Talk) -> None:
    match.say("their point")
    assert "7-3-2" in match.say("no, it was not our point")


def test_denied_without_looking_back_it_is_the_rally_just_played() -> None:
    (said,) = understand("not our point, they got it", chat=MATCH)
    assert isinstance(said, RallySaid)
    assert (said.won_by_us, said.corrects) == (False, False)


@pytest.mark.parametrize(
    "said",
    [
        "it was not our point?",
        "was it not our point",
        "not our serve",
        "it is not our ball",
        "we did not get it",
        "we did not take it",
        "not us",
        "we never won one",
        "okafor did not win it with his hands",
    ],
)
def test_what_may_mean_something_else_counts_no_rally(said: str) -> None:
    assert not any(isinstance(one, RallySaid) for one in understand(said, chat=MATCH))


@pytest.mark.parametrize("said", ["back one step", "go back one", "go one point back", "back one"])
def test_a_step_back_in_the_score_is_undo(match: Talk, said: str) -> None:
    match.say("our point")
    assert "7-3-1" in match.say(said)


@pytest.mark.parametrize("said", ["take one step back", "step back", "back a step when he lobs"])
def test_a_step_back_on_court_is_none(said: str) -> None:
    assert not any(isinstance(one, UndoSaid) for one in understand(said, chat=MATCH))


@pytest.mark.parametrize(
    "said", ["scratch that, their point", "strike that, it was theirs", "scratch that they won it"]
)
def test_scratched_and_told_anew_it_counts_once(match: Talk, said: str) -> None:
    match.say("our point")
    assert "7-3-2" in match.say(said)
