"""Our own shake and bake: on which third to drive with the partner running in behind it, and who.

The sizes are runners-up of the table of effects (common practice): the drive must go down for the
crash to pay, so the return decides; off a deep, low one a drive comes up to a waiting volley.
"""

from __future__ import annotations

from types import MappingProxyType

from knowledge.advice import Advice
from knowledge.situation import OnCourt, Situation
from knowledge.tactics import third_sizes as sizes
from knowledge.tactics.told_reasons import plain, weak_shot
from knowledge.vocabulary import Topic, Trait

CALL = "Shake and bake off a short or high return."
NOT_OURS = "No: drop. Neither of us drives well."
DEEP = "Off a deep, low one a drive sits up: drop"
UNLESS = "Blocked at the runner's feet twice? Stop."
EITHER = "Who gets the third drives low; partner runs in"


def our_crash(situation: Situation) -> Advice:
    """When to go, and who drives where our own notes tell the drives apart."""
    driver = _driver(situation)
    weak = [one for one in situation.ours if _drives_badly(one)]
    if weak and len(weak) == len(situation.ours):
        return Advice(
            topic=Topic.THIRD_SHOT,
            call=NOT_OURS,
            reasons=tuple(weak_shot(one, Trait.FOREHAND_DRIVE) for one in weak),
        )
    return Advice(
        topic=Topic.THIRD_SHOT,
        call=CALL,
        reasons=(
            *plain(_roles(driver, situation)),
            *(weak_shot(one, Trait.FOREHAND_DRIVE) for one in weak),
            *plain(DEEP),
        ),
        unless=UNLESS,
        numbers=MappingProxyType(
            {
                "points_behind_a_low_drive": sizes.CRASH_BEHIND_A_LOW_DRIVE.mean,
                "points_behind_a_high_drive": sizes.CRASH_BEHIND_A_HIGH_DRIVE.mean,
            }
        ),
    )


def _driver(situation: Situation) -> OnCourt | None:
    """The one of us whose drive is the better by the notes, else whoever hits this third."""
    ranked = sorted(situation.ours, key=_drive)
    if len(ranked) > 1 and _drive(ranked[-1]) > _drive(ranked[0]):
        return ranked[-1]
    return next((one for one in situation.ours if one.player == situation.striker), None)


def _drive(one: OnCourt) -> float:
    return one.profile.skill(Trait.FOREHAND_DRIVE).level


def _drives_badly(one: OnCourt) -> bool:
    return one.profile.skill(Trait.FOREHAND_DRIVE).is_weak


def _roles(driver: OnCourt | None, situation: Situation) -> str:
    runners = [one.name for one in situation.ours if driver is None or one.player != driver.player]
    if driver is None or not driver.name or len(runners) != 1 or not runners[0]:
        return EITHER
    return f"{driver.name} drives low, {runners[0]} runs in behind"
