"""A note of which way somebody moves badly is named and used, though nobody knows their side."""

from __future__ import annotations

from dataclasses import replace

import pytest
from noted_players import match, player

from knowledge.advice import Advice
from knowledge.situation import Asked, OnCourt
from knowledge.tactics import advise
from knowledge.tactics.aim_words import REASON_LIMIT
from knowledge.vocabulary import PlayerId, Side, Topic

OKAFOR, LINDQVIST = 3, 4


def _dink(target: OnCourt, *, other: Side | None = None) -> Advice:
    situation = match(Topic.AIM_DINK, target, player(LINDQVIST, "Lindqvist", other))
    return advise(replace(situation, asked=Asked(about=(PlayerId(OKAFOR),))))


@pytest.mark.parametrize("way", list(Side))
def test_the_way_they_move_badly_is_named_and_may_turn_the_call(way: Side) -> None:
    slow = f"moves_{way} weakness"
    advice = _dink(player(OKAFOR, "Okafor", None, slow))
    assert advice.reasons[0].text == f"On the {way.other}, Okafor moves badly to it"
    assert advice.reasons[0].source.evidence
    assert len(advice.reasons[0].text) <= REASON_LIMIT
    there = _dink(player(OKAFOR, "Okafor", way, slow), other=way.other)
    turns = there.call != advice.call
    assert turns is (way is Side.LEFT)  # on the right the middle is a right-hander's backhand
    assert (advice.unless == f"Okafor plays {way}? {there.call}") is turns


@pytest.mark.parametrize("noted", ["moves_left strength", "gets_low weakness", "lob often"])
def test_what_hangs_on_no_side_adds_no_such_line(noted: str) -> None:
    advice = _dink(player(OKAFOR, "Okafor", None, noted))
    assert "plays" not in (advice.unless or "")
