"""Notes and rallies on a skill or habit to its estimate: a beta belief with weighted counts.

Closed form: the order of the evidence does not matter, and none gives the prior.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from knowledge.evidence.estimates import TraitEstimate, level_and_variance
from knowledge.evidence.observation import (
    A_DAY_AHEAD,
    Observation,
    one_per_author_and_day,
    standings,
)
from knowledge.evidence.rates import RateEstimate
from knowledge.vocabulary import EvidenceId, Tag


def estimate_trait(
    observations: Iterable[Observation],
    *,
    today: int,
    rate: RateEstimate | None = None,
) -> TraitEstimate:
    """Level of one skill or habit from its observations, as of day `today` (ordinal).

    `rate` is what logged rallies say of the same skill.

    Method: 1. keep the weightiest claim per author, day and condition, of those that say what
    the author said last that day; 2. weigh each by hearsay and age, 2^(-age / HALF_LIFE_DAYS), a
    future day counting as today, by CONDITION_PART where it holds under a condition only, and by
    TAKEN_BACK_WEIGHT if its author later said the opposite; 3. a = 1 + weights for, b = 1 +
    weights against; 4. with rallies, the 1 of either side, which stands for knowing nothing of
    the place among players of a level, gives way to what the rate says of that place; 5. level =
    (a - b) / (a + b), variance 4ab / ((a+b)^2 (a+b+1)), the beta distribution's moments stretched
    to (-1, 1).
    """
    kept = one_per_author_and_day(observations)
    a, b = (1.0, 1.0) if rate is None or not rate.of else rate.place
    yes = no = 0
    for one, stands in zip(kept, standings(kept), strict=True):
        weight = one.weight_on(today) * one.part_in_general * stands
        if one.speaks_for:
            a, yes = a + weight, yes + 1
        else:
            b, no = b + weight, no + 1
    days = [one.day for one in kept]
    if rate is not None and rate.newest_day is not None:
        days.append(rate.newest_day)
    level, variance = level_and_variance(a, b)
    return TraitEstimate(
        level=level,
        variance=variance,
        evidence=_behind(kept, rate),
        says_yes=yes,
        says_no=no,
        newest_day=max(days, default=None),
        rallies=_rallies(rate),
        logged=0 if rate is None else rate.logged,
        only_when=_shared_condition(kept),
        ahead=sum(one.day > today + A_DAY_AHEAD for one in kept),
        only_denied=bool(kept) and not _rallies(rate) and all(one.denied for one in kept),
    )


def _rallies(rate: RateEstimate | None) -> int:
    return 0 if rate is None else rate.of


def _behind(kept: Sequence[Observation], rate: RateEstimate | None) -> tuple[EvidenceId, ...]:
    notes = tuple(sorted(one.evidence for one in kept))
    return notes if rate is None else (*notes, *rate.evidence)


def _shared_condition(kept: Sequence[Observation]) -> Tag | None:
    """The condition under which all of it was seen; None where some of it holds in general."""
    conditions = {one.condition for one in kept}
    return conditions.pop() if len(conditions) == 1 else None
