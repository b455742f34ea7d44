"""Normal beliefs on the log-odds scale: conversions, and the chance that one is the largest."""

from __future__ import annotations

import math
from collections.abc import Sequence
from functools import lru_cache
from typing import Final

KEPT_CHANCES: Final = 4096
"""How many sets of beliefs the chances are kept of; the same few are compared turn after turn."""


def chances_of_being_best(means: Sequence[float], variances: Sequence[float]) -> list[float]:
    """Chance that each of several independent normal beliefs is the largest.

    P(i best) = integral of phi_i(x) times the product of the others' Phi_j(x), by the trapezoid
    rule, which converges geometrically on a normal density: deterministic, no draws.
    """
    return list(_chances(tuple(means), tuple(variances)))


@lru_cache(maxsize=KEPT_CHANCES)
def _chances(means: tuple[float, ...], variances: tuple[float, ...]) -> tuple[float, ...]:
    sds = [math.sqrt(variance) for variance in variances]
    if len(means) == 2:
        first = normal_cdf((means[0] - means[1]) / math.hypot(*sds))
        return first, 1 - first
    raw = [_chance_largest(place, means, sds) for place in range(len(means))]
    total = sum(raw)
    return tuple(value / total for value in raw)


def _chance_largest(place: int, means: Sequence[float], sds: Sequence[float]) -> float:
    chance = 0.0
    for node, weight in _NODES:
        x = means[place] + sds[place] * node
        beats = 1.0
        for other, (mean, sd) in enumerate(zip(means, sds, strict=True)):
            if other != place:
                beats *= normal_cdf((x - mean) / sd)
        chance += weight * beats
    return chance


def _make_nodes(count: int = 41, reach: float = 5.0) -> tuple[tuple[float, float], ...]:
    """Evenly spaced nodes of the standard normal; within 2e-4 while no sd is five times another."""
    step = 2 * reach / (count - 1)
    nodes = [-reach + step * place for place in range(count)]
    weights = [math.exp(-node * node / 2) for node in nodes]
    total = sum(weights)
    return tuple((node, weight / total) for node, weight in zip(nodes, weights, strict=True))


_NODES = _make_nodes()


def logit(chance: float) -> float:
    """Log-odds of a chance strictly between 0 and 1; ValueError otherwise."""
    if not 0 < chance < 1:
        raise ValueError(f"a chance strictly between 0 and 1 has log-odds, not {chance}")
    return math.log(chance / (1 - chance))


def logistic(log_odds: float) -> float:
    """The chance with these log-odds."""
    return 1 / (1 + math.exp(-log_odds))


def normal_cdf(z: float) -> float:
    """Standard normal distribution function."""
    return 0.5 * (1 + math.erf(z / math.sqrt(2)))
