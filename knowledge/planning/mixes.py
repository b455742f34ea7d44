"""How a plan's shots vary: the speed-up among hips, the third between drop and drive."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from types import MappingProxyType
from typing import Final

from knowledge.advice import AdvisedMix
from knowledge.engine import OptionId
from knowledge.evidence import TraitEstimate
from knowledge.mixing import advised_mix
from knowledge.planning.hands import hands_aim
from knowledge.planning.names import first_that_fits
from knowledge.planning.thirds import (
    DRIVE,
    DROP,
    LEAST_GAIN,
    MIDDLE,
    Third,
    best_third,
    thirds_of,
)
from knowledge.situation import OnCourt, Situation
from knowledge.tactics import attack_mix as attack
from knowledge.vocabulary import Trait

THIRD_TRIGGERS: Final[Mapping[str, str]] = MappingProxyType(
    {DRIVE: "the return lands short", DROP: "the return is deep"}
)
"""By the change-up: common practice, no source."""


def attack_mix(situation: Situation) -> AdvisedMix | None:
    """The speed-up among both opponents' hips; None without an opponent."""
    return attack.attack_mix(situation, hands_aim(situation))


def third_mix(situation: Situation) -> AdvisedMix | None:
    """Drop or drive, each where it is best; None where we don't know whose third it is.

    It is one shot for both of us where our shots agree; who owns but one shot has no choice.
    """
    thirds = thirds_of(situation)
    if not thirds or not situation.theirs:
        return None
    target = best_third(thirds).target
    thirds = [one for one in thirds if one.target == target]
    third = next((one for one in thirds if _hits(one.hitter, situation)), None)
    if third is None and len({one.shot for one in thirds}) == 1:
        third = thirds[0]
    if third is None:
        return None
    best = _best_of_each(third)
    if len(best) < len((DROP, DRIVE)) or third.shot not in best:
        return None
    change_up = next(shot for shot in best if shot != third.shot)
    found = advised_mix(
        situation,
        third.weighed.ranking,
        calls={
            id: first_that_fits((f"{label[:1].upper()}{label[1:]}.", f"{shot.capitalize()} it."))
            for shot, (id, label) in best.items()
        },
        trigger=THIRD_TRIGGERS[change_up],
        punishes=_meets_drive(best[DRIVE][0], situation),
        counts_as=_shot_of(best),
    )
    return replace(
        found,
        shares=tuple(replace(one, label=_label(third, one.option)) for one in found.shares),
    )


def _label(third: Third, option: str) -> str:
    return third.label_of(third.weighed.ranking.of(OptionId(option)).option)


def _hits(hitter: OnCourt | None, situation: Situation) -> bool:
    return hitter is not None and hitter.player == situation.striker


def _best_of_each(third: Third) -> Mapping[str, tuple[OptionId, str]]:
    """The best drop and the best drive, as far as the hitter owns them: id and label."""
    found: dict[str, tuple[OptionId, str]] = {}
    ranking = third.weighed.ranking
    for one in ranking.ranked:
        shot = one.option.id.partition(":")[0]
        if shot not in (DROP, DRIVE):
            continue  # a lob off a third is no secret: nothing to guess
        middle = ranking.of(OptionId(f"{shot}:{MIDDLE}"))
        is_no_better = 100 * (one.chance - middle.chance) < LEAST_GAIN
        best = middle.option if is_no_better else one.option
        found.setdefault(shot, (best.id, third.label_of(best)))
    return found


def _meets_drive(drive: str, situation: Situation) -> Mapping[str, TraitEstimate]:
    """A drive that they wait for meets the counter of whoever it goes at."""
    at = drive.partition(":")[2]
    target = next((one for one in situation.theirs if str(one.player) == at), None)
    return {} if target is None else {drive: target.profile.skill(Trait.COUNTER)}


def _shot_of(best: Mapping[str, tuple[OptionId, str]]) -> Callable[[str], str]:
    """A logged "drop" or "drop:5" counts as the drop, wherever it went."""

    def option(logged: str) -> str:
        shot = logged.partition(":")[0]
        return best[shot][0] if shot in best else logged

    return option
