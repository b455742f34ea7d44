"""How often a shot of ours goes as meant, from the flight's tables, and what that is in points.

A shot that wins w, errs e and otherwise leaves a rally worth v is worth w + (1 - w - e) v
(engineering notes, 1.3). A ball in play leaves one rally where it does what it is meant to, and
another where it does not: m a + (p - m) b, with p in play and m as meant. No turn integrates: the
chances are those of `usual_aim`.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import field
from typing import Final

from knowledge.court import Lane
from knowledge.dataclass import dataclass
from knowledge.effects import Effect, EffectId, Mechanism, OptionId, Points, TraitScale
from knowledge.evidence import TraitEstimate
from knowledge.flight import Aim, Shot, scatter_factor, usual_aim
from knowledge.flight.scatter import SCATTER_PER_TRAIT
from knowledge.normal import logit
from knowledge.situation import OnCourt
from knowledge.sources import Source, computed
from knowledge.vocabulary import LOGIT_PER_POINT, Level, Trait

SUCCESS: Final = computed("flight tables and our scatter")

SCATTER_DOUBT: Final = 0.15
"""Standard deviation of the log of the usual scatter: our guess is good to a sixth of it. Common
practice, no source."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Ball:
    """What is hit, from where and where to; the wind along the court is positive from behind."""

    shot: Shot
    height_m: float
    from_net_m: float
    lane: Lane = Lane.MIDDLE
    wind_mps: float = 0.0

    def aimed(self, factor: float = 1.0) -> Aim:
        """The best aim for so many times the usual scatter, and how it goes."""
        return usual_aim(
            self.shot,
            height_m=self.height_m,
            from_net_m=self.from_net_m,
            lane=self.lane,
            wind_mps=self.wind_mps,
            factor=factor,
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class OurScatter:
    """How far a shot of ours scatters against the usual, the doubt in its log, and whose notes."""

    factor: float = 1.0
    log_sd: float = SCATTER_DOUBT
    estimate: TraitEstimate | None = field(default=None, repr=False)

    def times(self, factor: float) -> OurScatter:
        return OurScatter(factor=factor * self.factor, log_sd=self.log_sd, estimate=self.estimate)

    @property
    def ends(self) -> tuple[float, float]:
        """The factors one standard deviation to either side."""
        return (self.factor * math.exp(-self.log_sd), self.factor * math.exp(self.log_sd))


def our_scatter(one: OnCourt | None, trait: Trait, level: Level | None = None) -> OurScatter:
    """That of a player's shot, by the notes on it; a level that is not known is 4.5."""
    plays = Level.L4_5 if level is None else level
    if one is None:
        return OurScatter(factor=scatter_factor(0.0, plays))
    estimate = one.profile.skill(trait)
    doubt = math.hypot(SCATTER_DOUBT, SCATTER_PER_TRAIT * math.sqrt(estimate.variance))
    return OurScatter(factor=scatter_factor(estimate.level, plays), log_sd=doubt, estimate=estimate)


@dataclass(frozen=True, slots=True, kw_only=True)
class Leaves:
    """Our chance to win the rally after a ball as meant, and after one that is merely in play."""

    meant: float
    loose: float

    def after(self, aim: Aim) -> float:
        """Our chance to win the rally with this shot."""
        meant = min(aim.meant, aim.legal)
        return meant * self.meant + (aim.legal - meant) * self.loose


def points_over(chance: float, level: float) -> float:
    """A chance to win the rally as declared points away from another."""
    return (logit(chance) - logit(level)) / LOGIT_PER_POINT


def success_points(
    chance_at: Callable[[float], float], scatter: OurScatter, *, level: float
) -> Points:
    """A shot's points against `level` by its chance to win the rally at a factor of scatter.

    The doubt is half of what one standard deviation of scatter to either side moves it.
    """
    mean = points_over(chance_at(scatter.factor), level)
    tight, wild = (points_over(chance_at(end), level) for end in scatter.ends)
    return Points(mean=mean, sd=abs(tight - wild) / 2)


def success_effect(
    on: OptionId,
    points: Points,
    scatter: OurScatter,
    *,
    because: str,
    one: OnCourt | None = None,
    states: str | None = None,
    name: str = "success",
    mechanism: Mechanism = Mechanism.OUR_ERROR,
    source: Source = SUCCESS,
) -> Effect:
    """The effect of a shot's success on one option; the notes behind its scatter go with it.

    A rule of thumb of the same `states` is replaced by it outright.
    """
    return Effect(
        id=EffectId(f"{name}:{on}"),
        on=frozenset({on}),
        points=points,
        mechanism=mechanism,
        because=because,
        source=source,
        scale=_noted(one, scatter),
        states=states,
    )


def _noted(one: OnCourt | None, scatter: OurScatter) -> TraitScale | None:
    """A full scale that carries the notes: their size and doubt are in the points already."""
    estimate = scatter.estimate
    if one is None or estimate is None or not estimate.evidence:
        return None
    carried = TraitEstimate(
        level=1.0,
        variance=0.0,
        evidence=estimate.evidence,
        says_yes=estimate.says_yes,
        says_no=estimate.says_no,
        newest_day=estimate.newest_day,
        rallies=estimate.rallies,
        logged=estimate.logged,
    )
    return TraitScale(estimate=carried, towards=1, player=one.player)


def of_ten(chance: float) -> int:
    """How many of ten, for words: never none and never all, since nobody is that sure."""
    return min(9, max(1, round(10 * chance)))
