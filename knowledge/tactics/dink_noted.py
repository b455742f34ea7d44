"""Of near-equal dinks the one that notes speak for: a weak dinker goes before one of whom nobody
wrote anything, or whose habit only makes his partner's ball the harder one."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from knowledge.beliefs import FLOOR_SD_POINTS
from knowledge.engine import Part, Ranked, Ranking
from knowledge.planning.weighing import is_open
from knowledge.tactics.dink_aims import Aim
from knowledge.tactics.dink_lanes import Lane
from knowledge.vocabulary import LOGIT_PER_POINT


def noted_first(ranking: Ranking, aims: Iterable[Aim]) -> Ranking:
    """The ranking with such a dink at another player first, as the speed-up's page has it.

    Within the doubt that every rule keeps two are as good as equal, unless hand and side settle
    which wing the first one meets: that was noted too. What notes say counts by what
    it is worth where it holds: while a side is not known, whoever hits the dink sees where that
    wing is. Notes against the ball there, such as of a partner who poaches it, count too. Never one
    down the line: row 11 of the trade's table wants a safe lane.
    """
    by_option = {aim.id: aim for aim in aims}
    best = ranking.best
    called = by_option.get(best.option.id)
    if called is None or called.wing is not None or _noted(best) > 0:
        return ranking
    near = [
        one
        for one in ranking.ranked
        if _is_safe_at_the_other(by_option.get(one.option.id), called)
        and (best.logit - one.logit) / LOGIT_PER_POINT <= FLOOR_SD_POINTS
        and _noted(one) > 0
    ]
    if not near:
        return ranking
    rest = (one for one in ranking.ranked if one is not near[0])
    return replace(ranking, ranked=(near[0], *rest))


def _is_safe_at_the_other(aim: Aim | None, called: Aim) -> bool:
    if aim is None or aim.lane is Lane.LINE:
        return False
    return aim.target.player != called.target.player


def _noted(ranked: Ranked) -> float:
    """Points of all that settled notes say of this ball."""
    return sum(_declared(part) for part in ranked.parts if part.evidence and not is_open(part))


def _declared(part: Part) -> float:
    scale = part.effect.scale
    return 0.0 if scale is None else scale.level * part.effect.points.mean
