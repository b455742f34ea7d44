"""How an answer about a dink is said: calls, change-ups and triggers, short enough for a phone."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from knowledge.advice import CALL_LIMIT, CHANGE_UP
from knowledge.court import METRES_PER_INCH
from knowledge.situation import OnCourt
from knowledge.tactics.conditions import marked_wing
from knowledge.tactics.dink_aims import Aim
from knowledge.tactics.dink_chances import LaneChance
from knowledge.tactics.dink_lanes import Lane, Spot, lane_net_height_m
from knowledge.vocabulary import Trait, Wing

SOFT_CALL = "Dink soft to the middle. Wait for a better one."
STRETCHED_CALL = "Play it soft, cross to the middle. No target."
NEUTRAL = "For a neutral ball."
GENERAL = "No notes on them: general rule."
STRETCHED_BRANCH = "Stretched? Soft, cross to the middle."

_PLACES = {
    Lane.CENTRE: ("across to the middle", "across, middle"),
    Lane.STRAIGHT: ("straight, inside foot", "inside foot"),
    Lane.WIDE: ("wide across", "wide"),
    Lane.LINE: ("down the line", "line"),
}
_PLACES_OF_SPOT = {
    Spot.MIDDLE: ("middle, at the feet", "middle"),
    Spot.SIDELINE: ("across; not down the line", "across, not the line"),
}
_NAMELESS = {
    Lane.CENTRE: "Dink across to the middle, low at the feet.",
    Lane.STRAIGHT: "Dink straight, low at the inside foot.",
    Lane.WIDE: "Dink wide across, low over the middle.",
    Lane.LINE: "Dink down the line, low.",
}


MOVES = {
    Trait.MOVES_LEFT: ("moves badly left", "moves well left"),
    Trait.MOVES_RIGHT: ("moves badly right", "moves well right"),
    Trait.GETS_LOW: ("is slow getting low", "gets low well"),
    Trait.REACH: ("has a short reach", "has a long reach"),
    Trait.PATIENCE: ("is impatient", "is patient"),
}
"""Traits that "weak" and "strong" don't suit: below and above."""


def fit(candidates: Iterable[str], limit: int = CALL_LIMIT) -> str:
    """The first that fits; a long name costs words, never half a word. The last must fit."""
    said = ""
    for said in candidates:
        if len(said) <= limit:
            return said
    raise ValueError(f"nothing fits {limit} characters, not even {said!r}")


def places(aim: Aim) -> tuple[str, str]:
    """The way to a spot in words, and shorter."""
    return _PLACES_OF_SPOT[aim.spot] if aim.lane is None else _PLACES[aim.lane]


def call(aim: Aim, *, names_wing: bool = True) -> str:
    """The call for a dink. A wing is named only where hand and side, or a note, settle it."""
    name = aim.target.name
    long, short = places(aim)
    if aim.wing is not None and names_wing:
        return fit(
            (
                f"Dink {name}'s {aim.wing}: {long}.",
                f"Dink {name}'s {aim.wing}: {short}.",
                f"Dink the {aim.wing}: {long}.",
            )
        )
    weak = marked_wing(aim.target)
    if weak is not None and aim.wing is None and aim.lane is None:
        return fit(
            (
                f"Dink {name}'s {weak}, low; not down the line.",
                f"Dink {name}'s {weak}, not the line.",
                f"Dink the weak {weak}, low; not down the line.",
            )
        )
    return fit((f"Dink {name}: {long}.", f"Dink {name}: {short}.", nameless(aim)))


def hand_taken(name: str, *, is_asked: bool) -> str:
    """Which hand was taken; beside a line that asks for it ("left-handed?") in a few words."""
    return (
        f"{name}'s hand: taken as right."
        if is_asked
        else (f"I don't know {name}'s hand: most are right-handed.")
    )


def names_wing(aim: Aim, asked: Wing | None) -> bool:
    """A forehand is named if it was asked for or is weak; else the place is the point."""
    if asked is not None or aim.wing is Wing.BACKHAND:
        return True
    return aim.wing is marked_wing(aim.target)


def nameless(aim: Aim) -> str:
    """The call for people of whom nothing is known."""
    if aim.lane is not None:
        return _NAMELESS[aim.lane]
    return "Dink the middle, low at the feet."


def attack_call(target: OnCourt) -> str:
    """The call for an easy ball."""
    if not target.name:
        return "Speed it up at the body, then be set."
    return fit((f"Speed it up at {target.name}'s body.", "Speed it up at the body, then be set."))


def change_up(aim: Aim, *, same_target: bool, named: bool) -> str:
    """The second choice, with the sign to look for."""
    is_named = named and bool(aim.target.name)
    name = aim.target.name if is_named else "they"
    verb = "s" if is_named else ""
    if aim.spot is Spot.MIDDLE:
        sign = f"middle when {name} guard{verb} the line"
    elif aim.lane is Lane.LINE:
        sign = f"line when {name} lean{verb} in"
    else:
        sign = f"wide when {name} pinch{'es' if verb else ''} in"
    where = "" if same_target or not is_named else f"{aim.target.name} "
    return f"{CHANGE_UP} {where}{sign}, 1-2 a game"


def against(lane: Lane, chance: LaneChance, other: Lane, others: LaneChance) -> str:
    """How a lane compares with another: dinks in 100 that go wrong, else the net there.

    What is out, in the net or past the kitchen line has gone wrong. Where fewer go wrong and it is
    worth less all the same, the misses say why.
    """
    wrong, of_other = (round(100 * (1 - one.short)) for one in (chance, others))
    missed, other_missed = (round(100 * (1 - one.in_play)) for one in (chance, others))
    is_better = chance.worth > others.worth
    if wrong != of_other and (wrong < of_other) is is_better:
        return f"{wrong} in 100 go wrong, {of_other} {_THERE[other]}"
    if missed != other_missed and (missed < other_missed) is is_better:
        return f"{missed} in 100 miss, {other_missed} {_THERE[other]}"
    lower = lane_net_height_m(lane) < lane_net_height_m(other)
    return f"{'Lower' if lower else 'Higher'} net than at the {_BESIDE[other]}"


_BESIDE = {
    Lane.CENTRE: "middle",
    Lane.STRAIGHT: "inside",
    Lane.WIDE: "wide",
    Lane.LINE: "line",
}

_THERE = {
    Lane.CENTRE: "in the middle",
    Lane.STRAIGHT: "straight",
    Lane.WIDE: "wide",
    Lane.LINE: "down the line",
}


def by_lane(clearances_m: Mapping[Lane, float]) -> str:
    """The net and the air over it of the arc that goes wrong least, by lane, in inches."""
    nets = _in_inches({lane: lane_net_height_m(lane) for lane in clearances_m})
    airs = _in_inches(clearances_m)
    return f"Net: {nets}. Safest arc over it: {airs}. Lower sits up less, misses more."


def _in_inches(metres: Mapping[Lane, float]) -> str:
    told = [f"{_BESIDE[lane]} {round(each / METRES_PER_INCH)}" for lane, each in metres.items()]
    return ", ".join([f"{told[0]} in", *told[1:]])


def worth(points: float) -> str:
    """A gain in plain words."""
    whole = round(points)
    if whole < 1:
        return "Little between the aims: under 1 in 100."
    return f"Worth about {whole} {'rally' if whole == 1 else 'rallies'} in 100."
