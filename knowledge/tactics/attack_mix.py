"""How to vary the speed-up: the hips of both opponents, as far as the counter may come back."""

from __future__ import annotations

from typing import Final

from knowledge.advice import AdvisedMix
from knowledge.effects import OptionId
from knowledge.mixing import advised_mix
from knowledge.planning.names import first_that_fits
from knowledge.situation import Situation
from knowledge.tactics.attack_answer import SEAM_LABEL, Aimed, hitters, punishing
from knowledge.tactics.attack_question import cross_to
from knowledge.tactics.attack_spots import CHEST, SEAM_ID, BodySpot

TRIGGER: Final = "they sit on it"
"""Common practice, no source."""


def attack_mix(situation: Situation, found: Aimed) -> AdvisedMix | None:
    """The called spot and every hip; None without an opponent.

    A hip that only a cross ball reaches is out while our partner is not ready, and so are the hips
    of whom the call is turned away from.
    """
    if not situation.theirs:
        return None
    calls: dict[str, str] = {
        spot.id: _called(spot, situation) for spot in found.spots if _is_in(spot, found)
    }
    best = OptionId(found.weighed.best)
    if best == SEAM_ID:
        calls[best] = f"Speed up at {SEAM_LABEL}."
    if best == CHEST or not calls:
        return None
    return advised_mix(
        situation,
        found.weighed.ranking,
        calls=calls,
        trigger=TRIGGER,
        punishes=punishing(found),
    )


def _is_in(spot: BodySpot, found: Aimed) -> bool:
    if found.spot is not None and spot.id == found.spot.id:
        return True
    question = found.question
    turned_from = found.turned_from
    if turned_from is not None and turned_from.player == spot.target.player:
        return False
    is_unsafe = question.facts.partner_set is False and cross_to(spot.target, question) is True
    return spot.is_hip and not is_unsafe


def _called(spot: BodySpot, situation: Situation) -> str:
    """The call at a spot, shorter where a long name needs the room."""
    able = hitters(situation)
    only = able[0].name if 0 < len(able) < len(situation.ours) else ""
    call = f"{only}: speed up at {spot.at}." if only else f"Speed up at {spot.at}."
    return first_that_fits((call, f"At {spot.at}."))
