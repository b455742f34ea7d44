"""How an overhead is said: the aim, the change-up with its sign, and what to do next."""

from __future__ import annotations

from typing import Final

from knowledge.ball_facts import Depth, Footing
from knowledge.planning.names import first_that_fits
from knowledge.tactics.overhead_effects import Aim
from knowledge.tactics.overhead_outcomes import Spot

STEP_IN: Final = "Then step in: expect it back."
STAY_READY: Final = "Then paddle up: expect it back."
COME_BACK_IN: Final = "Then come back in together: expect it back."

NEVER_AT_THE_HEAD: Final = "Feet or hip; never at the head."
TURN: Final = "Going back: turn and run, never backpedal."
TURN_IN_SUN: Final = "Turn and run, never backpedal. Sun: cap, eyewear."
SUN: Final = "Sun: cap and eyewear; never look into it."

SHORT: Final = {
    Spot.MIDDLE: "middle",
    Spot.ANGLE: "angle",
    Spot.FEET: "feet",
    Spot.HIP: "hip",
    Spot.BEHIND: "ball behind",
    Spot.BOUNCE: "bounce",
}
"""A spot in one word or two, in a sum and beside an arrow."""

_GENERAL: Final = {
    Spot.MIDDLE: "Hit it deep middle, at the slower one's feet.",
    Spot.FEET: "Hit it deep middle, at the slower one's feet.",
    Spot.HIP: "Hit it at the hip of the one at the line.",
    Spot.ANGLE: "Hit a short angle, away from the nearer one.",
    Spot.BEHIND: "Hit it behind the runner.",
    Spot.BOUNCE: "Let it bounce, then hit it deep middle.",
}

_FEET_OF_THE_NEAR_ONE: Final = "Hit it at the feet of the one at the line."

_PLACED: Final = {
    Spot.MIDDLE: "Place it deep middle; no full swing.",
    Spot.FEET: "Place it deep at the slower one's feet.",
    Spot.BOUNCE: "Let it bounce, then place it deep middle.",
}

_SIGNS: Final = {
    Spot.MIDDLE: "they spread to the sidelines",
    Spot.FEET: "they stand still and wait",
    Spot.HIP: "the near one stands tall",
    Spot.ANGLE: "they back up",
    Spot.BEHIND: "one of them is on the run",
}


def call(aim: Aim, *, theirs: Depth | None, placed: bool, named: bool) -> str:
    """The call; a player is named where notes, or the question, single them out."""
    general = _PLACED[aim.spot] if placed else _GENERAL[aim.spot]
    if aim.spot is Spot.FEET and theirs is Depth.ONE_BACK and not placed:
        general = _FEET_OF_THE_NEAR_ONE
    if aim.target is None or not aim.target.name or not named:
        return general
    name, verb = aim.target.name, "Place" if placed else "Hit"
    if aim.spot is Spot.HIP:
        return first_that_fits((f"Hit it at {name}'s hip.", general))
    return first_that_fits(
        (f"{verb} it deep at {name}'s feet, middle side.", f"{verb} it at {name}'s feet.", general)
    )


def branch(aim: Aim) -> str:
    """An aim as the answer to a question: "short angle"."""
    return _BRANCHES[aim.spot]


_BRANCHES: Final = {
    Spot.MIDDLE: "Deep middle, at the feet.",
    Spot.FEET: "Deep middle, at the feet.",
    Spot.HIP: "At the hip of the near one.",
    Spot.ANGLE: "Short angle.",
    Spot.BEHIND: "Behind the runner.",
    Spot.BOUNCE: "Let it bounce first.",
}


def sign(aim: Aim) -> str:
    """What to look for before the change-up: completes "when"."""
    return _SIGNS[aim.spot]


def next_ball(footing: Footing, *, is_deep: bool) -> str:
    """What to do after it: every overhead may come back."""
    if footing is Footing.BACKWARD or is_deep:
        return COME_BACK_IN if footing is Footing.BACKWARD else STEP_IN
    return STAY_READY if footing is Footing.STILL else STEP_IN
