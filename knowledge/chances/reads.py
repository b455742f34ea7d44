"""What trying an unproven read of an opponent teaches, and so whether a rally is cheap for it."""

from __future__ import annotations

from functools import cache
from math import comb

import numpy as np
from numpy.typing import NDArray

from knowledge.dataclass import dataclass
from knowledge.normal import logit
from knowledge.vocabulary import LOGIT_PER_POINT


@dataclass(frozen=True, slots=True, kw_only=True)
class Read:
    """An unproven read: how it looks beside the usual ball, in rally points, and how surely.

    `doubt_points` is a standard deviation; `share` the part of the later rallies in which it
    could be used.
    """

    behind_points: float
    doubt_points: float
    share: float


MOST_TRIES = 6
"""A read is tried a few times, not for ever: the first points of a game. Common practice."""


def worth_of_a_try(read: Read, *, chance: float, later_weight: float) -> float:
    """Game (or match) chance that one try of a read is worth, in what it teaches for later.

    The value of sample information (Raiffa and Schlaifer 1961; from memory), exact for rallies
    that are won or lost: after n tries the read is used for good if it looks better than the
    usual ball, of rally chance `chance`, and what that gains in the later rallies, whose
    weights sum to `later_weight`, is shared by the n tries; of 1 to MOST_TRIES the best n
    counts. A try pays where this exceeds its cost, the rally's weight × behind_points × POINT.

    1. The read's chance x: logit x = logit(chance) + LOGIT_PER_POINT × (-behind + doubt z).
    2. Over nodes of z: the chance of k wins in n, and the mean gain x - chance given k.
    3. Only a gain is acted on; the sum over k is what n tries teach.
    """
    if not 0 < chance < 1:
        return 0.0
    nodes, share = _standard_normal()
    points = read.doubt_points * nodes - read.behind_points
    x = 1 / (1 + np.exp(-(logit(chance) + LOGIT_PER_POINT * points)))
    best = max(_learned(x, share, chance, tries) / tries for tries in range(1, MOST_TRIES + 1))
    return best * read.share * later_weight


_NODES = 31


@cache
def _standard_normal() -> tuple[NDArray[np.float64], NDArray[np.float64]]:
    """Nodes of a standard normal and their shares (Gauss and Hermite)."""
    nodes, weights = np.polynomial.hermite_e.hermegauss(_NODES)
    return nodes, weights / weights.sum()


def _learned(
    x: NDArray[np.float64], share: NDArray[np.float64], chance: float, tries: int
) -> float:
    """The expected gain per later rally, in chances, once so many tries are seen."""
    wins = np.arange(tries + 1)
    ways = np.array([comb(tries, k) for k in wins])
    seen = ways[:, None] * x ** wins[:, None] * (1 - x) ** (tries - wins[:, None])
    gains = seen @ (share * (x - chance))
    return float(gains[gains > 0].sum())
