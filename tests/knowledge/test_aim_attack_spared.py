"""A strong counter turns the speed-up to the partner: row 14 of the trade's table, common practice.

"Does not apply when the target is set and counters well" (a player and coach's judgement).
"""

from __future__ import annotations

from dataclasses import replace

import pytest
from noted_players import match, often_noted, player

from knowledge.planning.probes import PROBES, probes
from knowledge.situation import Asked, OnCourt
from knowledge.sources import SourceKind
from knowledge.tactics import advise
from knowledge.tactics.attack_answer import aimed
from knowledge.vocabulary import Side, Topic

COUNTERS = player(3, "Okafor", Side.LEFT, "counter strength")
UNKNOWN = player(4, "Lindqvist", Side.RIGHT)


@pytest.mark.parametrize("pair", [(COUNTERS, UNKNOWN), (UNKNOWN, COUNTERS)])
def test_the_note_is_said_as_the_reason_and_its_owner_is_no_change_up(
    pair: tuple[OnCourt, OnCourt],
) -> None:
    advice = advise(match(Topic.AIM_ATTACK, *pair))
    assert advice.call == "Speed up at Lindqvist's paddle hip."
    assert advice.reasons[0].text == "Not Okafor: strong counter"
    assert advice.reasons[0].source.kind is SourceKind.BOOK
    assert advice.assumed is None
    assert advice.mix is not None
    assert not any("Okafor" in one.label for one in advice.mix.shares)


def test_whom_it_speaks_against_more_is_left_out() -> None:
    more = player(4, "Lindqvist", Side.RIGHT, *often_noted("counter strength", 4))
    found = aimed(match(Topic.AIM_ATTACK, COUNTERS, more))
    assert found.spared is not None
    assert found.spared[0].name == "Lindqvist"


def test_what_contradicts_itself_leaves_out_nobody() -> None:
    disputed = player(3, "Okafor", Side.LEFT, "counter strength by tom", "counter weakness by wen")
    assert aimed(match(Topic.AIM_ATTACK, disputed, UNKNOWN)).spared is None


def test_asked_about_the_one_who_counters_the_other_is_named() -> None:
    situation = match(Topic.AIM_ATTACK, COUNTERS, UNKNOWN)
    about = replace(situation, asked=Asked(about=(COUNTERS.player,)))
    advice = advise(about)
    assert "Okafor" in advice.call
    assert advice.reasons[0].text == "Strong counter: rather at Lindqvist"
    assert advice.assumed is None


def test_nobody_looks_for_late_hands_where_they_are_noted_as_quick() -> None:
    plan = advise(match(Topic.GAME_PLAN, COUNTERS, UNKNOWN))
    looks = [line.text for line in plan.lines]
    assert "Respect Okafor, keep it low: strong counter" in looks
    assert PROBES[-1].text not in looks
    assert "Speed up once at Lindqvist: late?" in looks


def test_the_look_at_hands_is_for_whom_nothing_is_noted_of() -> None:
    both = (COUNTERS, player(4, "Lindqvist", Side.RIGHT, "counter strength"))
    weak = player(3, "Okafor", Side.LEFT, "counter weakness")
    assert probes((weak, UNKNOWN)) == PROBES
    assert probes(()) == PROBES
    assert probes(both) == PROBES[:-1]
