"""How a third is said: the call with its fifth ball, what it is worth, what would change it."""

from __future__ import annotations

from knowledge.planning.names import first_that_fits
from knowledge.planning.thirds import Third
from knowledge.situation import Wind
from knowledge.tactics.third_contact import contact_of, contact_words
from knowledge.tactics.third_options import DRIVE, DROP, LATE, LINE, LOB, MIDDLE
from knowledge.tactics.third_said import Return, ThirdSaid
from knowledge.vocabulary import Wing

RULE = "Drop off a deep return, drive off a short one."
RULE_WHY = (
    "A returner on the move can't set the paddle",
    "Middle, or at the one who arrives late",
)
RULE_IN_SHORT = "Else: deep return drop, short return drive"
RULE_IN_WIND = {
    Wind.BEHIND_US: "Aim drops shorter, or drive: wind behind.",
    Wind.AGAINST_US: "Drive more into the wind; lift drops longer.",
}
RULE_UNLESS = "Backhand third: drop, unless two-handed."

ONLY_DROPS = "Drop thirds to the middle, short ones too."
NO_THIRD = "Push it deep through the middle, then come in."
BODY_CAUTION = "At feet or hip, never at the head."

FIFTH = {
    DROP: "Follow it in; the fifth soft to the middle",
    LOB: "Both come in behind it, split as they hit",
}
"""Drive then drop: a drive's fifth ball is part of its call."""


def call(third: Third) -> str:
    """What to hit and where, with what comes after it."""
    name = third.target.name if third.target else ""
    place = {LATE: "at the one still coming in", LINE: "down the line"}.get(third.where)
    match third.shot:
        case "lob":
            over = f"over {name}, high and deep" if name else "high and deep, to the middle"
            return first_that_fits((f"Lob it {over}.", "Lob it high and deep."))
        case "drive":
            where = place or _at(third, middle="through the middle")
            return first_that_fits((f"Drive {where}, then drop the fifth.", f"Drive {where}."))
        case _:
            where = place or _at(third, middle="to the middle")
            return first_that_fits((f"Drop it {where}, then come in.", f"Drop it {where}."))


def _at(third: Third, *, middle: str) -> str:
    return middle if third.target is None else f"{third.towards} {third.target.name}"


def number(other: str, points: float) -> str | None:
    """What it gains over the other shot, in plain words."""
    whole = round(points)
    if whole < 1:
        return None
    return f"About {whole} in 100 over a {other} from here."


def unless(third: Third, said: ThirdSaid, *, two_handed: bool | None) -> str:
    owned = {one.option.id.partition(":")[0] for one in third.weighed.ranking.ranked}
    if not {DROP, DRIVE} <= owned:
        return "Sits up? The same drop." if third.shot == DROP else "Deep and low? The same drive."
    if third.shot == DRIVE:
        if said.moving and said.came is not Return.POOR:
            return "Once they are set: drop it."
        is_last = third.is_behind or third.where == MIDDLE
        return f"Set counter there? {'Drop it' if is_last else 'Middle'} instead."
    if third.shot == LOB:
        return "In balance? Drop it instead."
    if said.wing is Wing.BACKHAND and two_handed is None and said.came is not Return.GOOD:
        return "Two-handed? Then a drive is on."
    if said.moving is None and said.came is Return.GOOD:
        return "Still running in? Low at their feet."
    if said.partner_crashes:
        return "Short or sitting up? Drive low: partner crashes."
    return "Short or sitting up? Drive it."


def assumed(said: ThirdSaid) -> str | None:
    """What the call rests on that nobody said: how we meet it, and that they are set."""
    are_set = said.moving is None and not said.both_back
    if said.met.is_all_said:
        return "Taking them as set at the line." if are_set else None
    them = ", them set" if are_set else ""
    return f"Taking it {contact_words(contact_of(said.met))}{them}."
