"""Logged rallies to rates: how many of how many, what a player's own rate is, and how sure.

A rate is a beta belief around what is usual: its prior counts are the usual rate, as heavy as
players of one level are alike, its mean moved by what others' rallies say. Conjugate, so the order
of the rallies does not matter and no rallies give the prior.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from math import asin, erf, log, pi, sqrt
from types import MappingProxyType
from typing import Final

from knowledge.dataclass import dataclass
from knowledge.evidence.estimates import TraitEstimate, level_and_variance
from knowledge.evidence.intervals import beta_interval
from knowledge.evidence.observation import age_factor
from knowledge.evidence.rings import RingCount, moved_mean
from knowledge.vocabulary import EvidenceId, PlayerId, Rate, Trait

USUAL_RATE: Final[Mapping[Rate, float]] = MappingProxyType(
    {
        Rate.SERVE_IN: 0.95,
        Rate.RETURN_IN: 0.93,
        Rate.RETURN_DEEP: 0.50,
        Rate.THIRD_FORWARD: 0.60,
        Rate.STEADY: 0.50,
    }
)
"""How often players of a level do it, of 1. Common practice, no source. A rally that a pair lost
by an error ends on one partner's paddle or on the other's: STEADY is half by definition."""

PLAYERS_DIFFER: Final = 0.5
"""How far players of one level stand apart in a rate: one standard deviation of its log-odds.
Common practice, no source: of a hundred returns the usual 93 make it, of a good returner 96."""

RATE_TRAIT: Final[Mapping[Rate, Trait]] = MappingProxyType(
    {
        Rate.SERVE_IN: Trait.SERVE,
        Rate.RETURN_IN: Trait.RETURN,
        Rate.RETURN_DEEP: Trait.RETURN_DEPTH,
        Rate.THIRD_FORWARD: Trait.THIRD_SHOT_DROP,
    }
)
"""The skill that a rate speaks of, one rate to a skill; on whose paddle errors end has none."""


FEWEST_RALLIES: Final = 3
"""Rallies below which a rate moves no call: one third dumped of one told is a bad ball and no weak
third shot. Our own choice."""

_LEAST_PLACE: Final = 0.01
"""Nobody is placed lower among a hundred, nor higher than this from the top."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RateTally:
    """What some rallies of one day say of one rate of a player; each rally stands in one tally.

    `made` and `missed` are the evidence of the rallies where they did it and did not.
    `is_settled`: of a game that is over, so that advice may rest on it. `logged` counts the
    rallies among which these are: the others tell nothing of this rate.
    """

    player: PlayerId
    rate: Rate
    day: int
    made: tuple[EvidenceId, ...] = ()
    missed: tuple[EvidenceId, ...] = ()
    is_settled: bool = True
    logged: int = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class RateEstimate:
    """A player's own rate: `made` of `of` rallies as counted, of so many `logged` in all.

    `alpha` and `beta` are the belief's two counts: the prior's, and the rallies' after age.
    `begun` are the prior's alone.
    """

    rate: Rate
    alpha: float
    beta: float
    begun: tuple[float, float]
    made: int = 0
    of: int = 0
    evidence: tuple[EvidenceId, ...] = ()
    newest_day: int | None = None
    logged: int = 0

    @property
    def mean(self) -> float:
        """Their rate as we believe it, 0 to 1."""
        return self.alpha / (self.alpha + self.beta)

    def interval(self, coverage: float) -> tuple[float, float]:
        """Between which values it lies with this chance."""
        return beta_interval(coverage, self.alpha, self.beta)

    @property
    def as_level(self) -> TraitEstimate:
        """The place as a trait's level, for a rate that speaks of no skill of its own."""
        level, variance = level_and_variance(*self.place)
        return TraitEstimate(
            level=level,
            variance=variance,
            evidence=self.evidence,
            newest_day=self.newest_day,
            rallies=self.of,
        )

    @property
    def place(self) -> tuple[float, float]:
        """The two counts of a beta belief about the place among players of their level, 0 to 1.

        Players' log-odds are normal around the prior's with variance s^2 = 1/alpha + 1/beta of
        the prior, PLAYERS_DIFFER's where no others moved it. Of this player they are believed to
        be normal with mean m = logit(mean) - logit(prior's) and variance v = 1/alpha + 1/beta,
        which without rallies is s^2. The place is Phi(log-odds/s), uniform where nothing is
        known, as a trait is without notes. It is one among those whose rallies are logged too:
        where misses are told more readily than what went in, everybody's rate looks low, and
        that marks nobody. Then
        1. its mean is Phi(m / sqrt(s^2 + v)), exactly; 2. its variance is that of two normals
        with correlation c = v / (s^2 + v) both falling below: at the middle asin(c) / (2 pi)
        (Sheppard 1899), so that a + b = pi / (2 asin c) - 1, which is 2 without rallies.
        """
        made, missed = self.begun
        shift = log(self.alpha / self.beta) - log(made / missed)
        doubt = 1 / self.alpha + 1 / self.beta
        both = 1 / made + 1 / missed + doubt
        mean = (1 + erf(shift / sqrt(2 * both))) / 2
        mean = min(max(mean, _LEAST_PLACE), 1 - _LEAST_PLACE)
        total = pi / (2 * asin(doubt / both)) - 1
        return total * mean, total * (1 - mean)


def usual_counts(rate: Rate) -> tuple[float, float]:
    """The prior: a beta around the usual rate r whose log-odds spread as players do.

    With n counts in all the spread is 1/sqrt(n r (1 - r)), so n = 1/(s^2 r (1 - r)).
    """
    usual = USUAL_RATE[rate]
    weight = 1 / PLAYERS_DIFFER**2
    return weight / (1 - usual), weight / usual


def estimate_rate(
    rate: Rate,
    tallies: Iterable[RateTally],
    *,
    today: int,
    others: Iterable[RingCount] = (),
) -> RateEstimate:
    """A player's rate from the rallies logged, as of day `today`; older ones count for less.

    What `others` did moves where the belief begins and not how much it weighs.
    """
    begun = _moved(usual_counts(rate), others)
    alpha, beta = begun
    made: list[EvidenceId] = []
    missed: list[EvidenceId] = []
    newest: int | None = None
    logged = 0
    for one in tallies:
        weight = age_factor(one.day, today=today)
        alpha += weight * len(one.made)
        beta += weight * len(one.missed)
        made += one.made
        missed += one.missed
        logged += one.logged
        newest = one.day if newest is None else max(newest, one.day)
    return RateEstimate(
        rate=rate,
        alpha=alpha,
        beta=beta,
        begun=begun,
        made=len(made),
        of=len(made) + len(missed),
        evidence=(*made, *missed),
        newest_day=newest,
        logged=logged,
    )


def _moved(counts: tuple[float, float], others: Iterable[RingCount]) -> tuple[float, float]:
    weight = sum(counts)
    mean = moved_mean(counts[0] / weight, weight, others)
    return weight * mean, weight * (1 - mean)
