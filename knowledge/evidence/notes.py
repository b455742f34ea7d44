"""Notes on a skill or habit to its estimate: a beta belief whose counts are weighted claims.

Conjugate, so the order of the notes does not matter and no notes give the prior.
"""

from __future__ import annotations

from collections.abc import Iterable

from knowledge.evidence.estimates import TraitEstimate
from knowledge.evidence.observation import Observation, one_per_author_and_day, standings


def estimate_trait(observations: Iterable[Observation], *, today: int) -> TraitEstimate:
    """Level of one skill or habit from its observations, as of day `today` (ordinal).

    Method: 1. keep the weightiest claim per author and day, of those that say what the author
    said last that day; 2. weigh each by hearsay and age, 2^(-age / HALF_LIFE_DAYS), a future day
    counting as today, and by TAKEN_BACK_WEIGHT if its author later said the opposite;
    3. a = 1 + weights for,
    b = 1 + weights against; 4. level = (a - b) / (a + b), variance 4ab / ((a+b)^2 (a+b+1)),
    the beta distribution's moments stretched to (-1, 1).
    """
    kept = one_per_author_and_day(observations)
    a = b = 1.0
    yes = no = 0
    for one, stands in zip(kept, standings(kept), strict=True):
        weight = one.weight_on(today) * stands
        if one.speaks_for:
            a, yes = a + weight, yes + 1
        else:
            b, no = b + weight, no + 1
    total = a + b
    return TraitEstimate(
        level=(a - b) / total,
        variance=4 * a * b / (total**2 * (total + 1)),
        evidence=tuple(sorted(one.evidence for one in kept)),
        says_yes=yes,
        says_no=no,
        newest_day=max((one.day for one in kept), default=None),
    )
