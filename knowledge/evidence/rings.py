"""Rings of evidence: this one, those alike, everybody else, each without the inner ones.

What happened against others says where to begin with these two, not how sure to be of them:
pairs differ. So the outer rings move the mean of a prior and leave its weight.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from enum import StrEnum
from types import MappingProxyType
from typing import Final

from knowledge.dataclass import dataclass


class Ring(StrEnum):
    """How near evidence about others is to the one asked about."""

    ALIKE = "alike"
    OTHERS = "others"


RING_PART: Final[Mapping[Ring, float]] = MappingProxyType({Ring.ALIKE: 0.4, Ring.OTHERS: 0.15})
"""What a rally against others counts beside one against these. Common practice, no source."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RingCount:
    """How often it happened there, of how many, and the chance that was `expected` there.

    The counts are after age; `part` is what one of them counts for the inner ring.
    """

    made: float
    of: float
    expected: float
    part: float

    @property
    def excess(self) -> float:
        """How many more than expected."""
        return self.made - self.of * self.expected


def moved_mean(mean: float, weight: float, rings: Iterable[RingCount]) -> float:
    """A prior's mean after what others say, `weight` being the prior's in counts.

    The excess over what was expected there is pooled, not the counts: with n = sum of part times
    counts and x = sum of part times excess, (weight * mean + n * mean + x) / (weight + n). Where
    the same was expected everywhere, that is the mean of a beta after those counts.
    """
    counts = tuple(rings)
    pooled = sum(one.part * one.of for one in counts)
    excess = sum(one.part * one.excess for one in counts)
    moved = mean + excess / (weight + pooled)
    return min(max(moved, _LEAST), 1 - _LEAST)


_LEAST: Final = 0.01
"""No prior begins nearer to never or always."""
