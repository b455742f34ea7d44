"""The plan's line about the speed-up: whom at and on which spot, as the speed-up's page has it."""

from __future__ import annotations

from dataclasses import replace

from knowledge.court import at_kitchen_line
from knowledge.court_picture import Arrow
from knowledge.planning import sizes
from knowledge.planning.line import Line, Phase, worth_of
from knowledge.situation import Asked, OnCourt, Situation
from knowledge.tactics.attack_answer import SEAM_LABEL, Aimed, aimed, hitters
from knowledge.tactics.attack_spots import BodySpot, counter_met
from knowledge.vocabulary import Trait


def hands_aim(situation: Situation) -> Aimed:
    """Where we speed up, whatever ball this question is about."""
    return aimed(replace(situation, asked=Asked()))


def hands_line(situation: Situation) -> Line | None:
    """Whom to speed up at and on which spot; None without an opponent or a speed-up of ours."""
    if not situation.theirs or (situation.ours and not hitters(situation)):
        return None
    found = hands_aim(situation)
    weighed = found.weighed
    if weighed.driver is None:
        return None  # what only spares the other one is his line: respect it
    call = call_at(found.spot, situation)
    return Line(
        phase=Phase.HANDS,
        do=call,
        because=weighed.because,
        cue=f"{call}.",
        points=weighed.gain,
        share=sizes.HANDS_SHARE,
        source=weighed.source,
        arrow=None if found.spot is None else _arrow(found.spot.target),
        option=weighed.best,
        worth=worth_of(weighed.ranking, weighed.gain),
    )


def call_at(spot: BodySpot | None, situation: Situation) -> str:
    """The speed-up at a spot or the seam, and by whom where only one of us owns the shot."""
    able = hitters(situation)
    at = SEAM_LABEL if spot is None else spot.at
    if len(able) == len(situation.ours):
        return f"Speed up at {at}"
    return f"{able[0].name}: speed up at {at}"


_COUNTERS = (Trait.COUNTER_BACKHAND, Trait.COUNTER_FOREHAND)


def attacked_at(one: OnCourt, trait: Trait, situation: Situation) -> str | None:
    """The speed-up at the spot that meets such a counter: "Speed up at Brack's left hip".

    A wing is no place to aim at, and the speed-up's own page names the hip: two answers from one
    note name the same spot. None of any other trait, and where that page goes elsewhere.
    """
    if trait not in _COUNTERS:
        return None
    spot = hands_aim(replace(situation, theirs=(one,))).spot
    if spot is None or counter_met(spot) is not trait:
        return None
    return f"Speed up at {spot.at}"


def _arrow(target: OnCourt) -> Arrow | None:
    if target.side is None:
        return None
    start = at_kitchen_line(target.side.other, ours=True)
    end = at_kitchen_line(target.side, ours=False)
    return Arrow.between(start, end, width=1.0, label="speed-up")
