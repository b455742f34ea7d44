"""Quantiles of a beta belief without scipy: the regularised incomplete beta function, inverted."""

from __future__ import annotations

from functools import lru_cache
from math import exp, inf, lgamma, log

KEPT_INTERVALS = 4096
"""Intervals kept in memory: a warm answer asks for those of the same estimates again."""

_STEPS = 200
_ROUNDS = 100
"""Terms of the fraction and steps to a quantile: more than any counts up to thousands need."""

_SMALLEST = 1e-300
_CLOSE = 1e-13
"""A change below this ends either, in parts of 1."""


def beta_cdf(x: float, a: float, b: float) -> float:
    """The chance that a beta(a, b) variable is at most x.

    The continued fraction 26.5.8 of Abramowitz and Stegun (1964), summed by Lentz's method
    (from memory), on the side of the mean where it converges fast.
    """
    if x <= 0.0:
        return 0.0
    if x >= 1.0:
        return 1.0
    log_front = lgamma(a + b) - lgamma(a) - lgamma(b) + a * log(x) + b * log(1.0 - x)
    front = exp(log_front)
    if x < (a + 1.0) / (a + b + 2.0):
        return front * _fraction(x, a, b) / a
    return 1.0 - front * _fraction(1.0 - x, b, a) / b


def _fraction(x: float, a: float, b: float) -> float:
    """1. start with the first term; 2. fold in an even and an odd one until nothing changes."""
    c, d = 1.0, 1.0 / _away_from_zero(1.0 - (a + b) * x / (a + 1.0))
    sum_ = d
    for m in range(1, _STEPS):
        even = m * (b - m) * x / ((a + 2 * m - 1) * (a + 2 * m))
        odd = -(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1))
        for term in (even, odd):
            d = 1.0 / _away_from_zero(1.0 + term * d)
            c = _away_from_zero(1.0 + term / c)
            sum_ *= c * d
        if abs(c * d - 1.0) < _CLOSE:
            break
    return sum_


def _away_from_zero(value: float) -> float:
    return value if abs(value) > _SMALLEST else _SMALLEST


def beta_quantile(part: float, a: float, b: float) -> float:
    """The value below which `part` of a beta(a, b) lies; ValueError outside 0 to 1.

    Newton's steps inside a bracket, halved where a step would leave it.
    """
    if not 0.0 < part < 1.0 or not (0.0 < a < inf and 0.0 < b < inf):
        raise ValueError(f"no quantile {part} of a beta with {a} and {b}")
    log_scale = lgamma(a + b) - lgamma(a) - lgamma(b)
    low, high, x = 0.0, 1.0, a / (a + b)
    for _ in range(_ROUNDS):
        missing = part - beta_cdf(x, a, b)
        low, high = (x, high) if missing > 0 else (low, x)
        slope = exp(log_scale + (a - 1.0) * log(x) + (b - 1.0) * log(1.0 - x))
        following = x + missing / slope if slope > _SMALLEST else low
        if not low < following < high:
            following = (low + high) / 2
        if abs(following - x) < _CLOSE or following >= 1.0 or following <= 0.0:
            break
        x = following
    return x


@lru_cache(maxsize=KEPT_INTERVALS)
def beta_interval(coverage: float, a: float, b: float) -> tuple[float, float]:
    """The values between which the middle `coverage` of a beta(a, b) lies."""
    tail = (1.0 - coverage) / 2
    return beta_quantile(tail, a, b), beta_quantile(1.0 - tail, a, b)


def beta_of_moments(mean: float, variance: float) -> tuple[float, float] | None:
    """The two counts of the beta with this mean (0 to 1) and variance; None where none has them."""
    spread = mean * (1.0 - mean)
    if not 0.0 < variance < spread:
        return None
    total = spread / variance - 1.0
    return total * mean, total * (1.0 - mean)
