"""Reminders, moved matches and clocks as they are typed: cases/reminders_said.toml."""

from __future__ import annotations

import tomllib
from pathlib import Path

import pytest

from bot.chat.said import MatchMoved, Question, ReminderSaid, Understood, ZoneSaid
from bot.chat.understand import understand
from bot.chat.view import ChatView
from knowledge.vocabulary import PlayerId, Topic
from scouting_db.values import PlayerRow

CASES = tomllib.loads(
    (Path(__file__).parents[1] / "cases" / "reminders_said.toml").read_text(encoding="utf-8")
)
LINES = [(case["said"], typed) for case in CASES["line"] for typed in case["typed"]]

ROSTER = tuple(
    PlayerRow(player=PlayerId(number), name=name, ours=number < 3)
    for number, name in enumerate(("Mira", "Tom", "Ana Hale", "Sven Lindqvist"), start=1)
)
BEFORE_A_MATCH = ChatView(
    book=1,
    version=1,
    roster=ROSTER,
    ours=(PlayerId(1), PlayerId(2)),
    theirs=(PlayerId(3), PlayerId(4)),
    match_on=True,
)


def meaning(said: Understood) -> str:
    match said:
        case ReminderSaid():
            return said.verb if said.minutes is None else f"{said.verb} {said.minutes}"
        case MatchMoved(at=at) if at is not None:
            return f"at {at:%H:%M}"
        case MatchMoved(by_minutes=by) if by is not None:
            return f"by {by}"
        case MatchMoved():
            return f"court {said.court}"
        case ZoneSaid():
            return f"zone {said.zone or '?'}"
        case Question(topic=Topic.CUE):
            return "cue"
    return "other"


def test_there_are_enough_lines() -> None:
    assert len(LINES) >= 80


@pytest.mark.parametrize(("said", "typed"), LINES, ids=[typed for _, typed in LINES])
def test_a_line_is_read_as_it_was_meant(said: str, typed: str) -> None:
    found = [meaning(one) for one in understand(typed, chat=BEFORE_A_MATCH)]
    if typed == "reminder?":
        assert found == ["cue"]
    elif said == "other":
        assert all(one in ("other", "cue") for one in found)
    else:
        assert found == [said]


def test_what_is_forwarded_moves_nothing() -> None:
    from dataclasses import replace

    chat = replace(BEFORE_A_MATCH, forwarded=True)
    assert meaning(understand("match moved to 11:20", chat=chat)[0]) == "other"
