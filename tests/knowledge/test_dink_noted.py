"""A weak dinker is dinked, also where the partner poaches or a side is not known.

Row 11 of the trade's table (a player and coach's judgement; common practice, no source): the
clearly weaker wing by a safe lane; the review's 2.2 adds "who is next to it (the poacher)".
"""

from __future__ import annotations

from dataclasses import replace

import pytest
from noted_players import match, often_noted, player

from knowledge.advice import Advice
from knowledge.effects import OptionId
from knowledge.situation import OnCourt
from knowledge.tactics import advise
from knowledge.tactics.dink_answer import answer_dink
from knowledge.tactics.dink_lanes import Lane, Spot
from knowledge.vocabulary import PlayerId, Side, Topic

MIDDLE = OptionId(f"4:{Spot.MIDDLE}")
BOTH_WEAK = ("forehand_dink weakness", "backhand_dink weakness")
BOTH_STRONG = ("forehand_dink strength", "backhand_dink strength")


def gell(*claims: str, side: Side | None = None) -> OnCourt:
    return player(3, "Gell", side, *claims)


def rudd(*claims: str, side: Side | None = None) -> OnCourt:
    return player(4, "Rudd", side, *claims)


def dink(*theirs: OnCourt) -> Advice:
    return advise(match(Topic.AIM_DINK, *theirs))


@pytest.mark.parametrize("weak", [BOTH_WEAK, ("backhand_dink weakness",)])
@pytest.mark.parametrize("is_first", [True, False])
def test_the_weak_dinker_and_not_the_poacher(weak: tuple[str, ...], is_first: bool) -> None:
    pair = (gell("poaching often"), rudd(*weak))
    advice = dink(*(pair if is_first else pair[::-1]))
    assert advice.call.startswith("Dink Rudd")
    assert advice.reasons[0].text.startswith("Rudd's ")
    assert advice.reasons[0].text.endswith(" dink is weak")


def test_a_partner_who_is_known_to_poach_sends_it_away_from_the_middle() -> None:
    advice = dink(gell(*often_noted("poaching often")), rudd(*BOTH_WEAK))
    assert advice.call == "Dink Rudd: across; not down the line."


def test_a_poacher_is_no_reason_to_dink_the_poacher() -> None:
    advice = dink(gell("poaching often"), rudd())
    assert advice.call.startswith("Dink Gell")
    assert not any("poaches" in one.text for one in advice.reasons)
    other = dink(gell("poaching often", side=Side.LEFT), rudd(*BOTH_WEAK, side=Side.RIGHT))
    assert other.call.startswith("Dink Rudd")


def test_whoever_is_weak_on_both_wings_is_so_whichever_wing_meets_it() -> None:
    """Of one note on either wing the chance rests on the side; of one on both it does not."""
    worth = {
        name: answer_dink(match(Topic.AIM_DINK, gell(), rudd(*claims))).ranking.of(MIDDLE).chance
        for name, claims in {"both": BOTH_WEAK, "one": BOTH_WEAK[:1], "none": ()}.items()
    }
    assert worth["both"] > worth["one"] > worth["none"]


def test_strong_on_both_wings_is_left_alone() -> None:
    assert dink(gell(), rudd(*BOTH_STRONG)).call.startswith("Dink Gell")
    assert dink(gell(*BOTH_STRONG), rudd()).call.startswith("Dink Rudd")


def test_a_clearly_better_ball_stays_the_call() -> None:
    """More than the doubt that every rule keeps is not given up for a note."""
    slow = gell(*often_noted("gets_low weakness"), *often_noted("communication weakness"))
    assert dink(slow, rudd("forehand_dink weakness")).call.startswith("Dink Gell")


def test_the_line_is_never_the_call_for_a_note_alone() -> None:
    """Row 11 wants a safe lane: down the line a weak wing stays the change-up."""
    weak = player(3, "Okafor", Side.LEFT, "hand right", "backhand_dink weakness")
    situation = match(Topic.AIM_DINK, weak, player(4, "Lindqvist", Side.RIGHT, "hand right"))
    for striker in (None, PlayerId(1), PlayerId(2)):
        best = answer_dink(replace(situation, striker=striker)).best
        assert best is not None
        assert best.lane is not Lane.LINE
