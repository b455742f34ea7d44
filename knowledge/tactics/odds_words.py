"""Chances as players say them: no decimals, and never surer than the number is."""

from __future__ import annotations

from fractions import Fraction
from math import floor

from knowledge.chance_curve import in_ten
from knowledge.chances import Range

LITTLE_KNOWN = 0.35
"""A range this wide is said as knowing little."""

MOST_WINNERS = 5
"""How many winners pay for how many misses: with small numbers, as players count."""


def about(chance: float) -> str:
    """ "about 7 in 10", "about even", "over 9 in 10"."""
    said = in_ten(chance)
    return said if said.startswith(("over", "under")) else f"about {said}"


def about_with_range(chance: Range) -> str:
    """The chance with what it may be: "About 6 in 10, and I know little: 4 to 8"."""
    said = about(chance.chance)
    said = said[0].upper() + said[1:]
    low, high = _tenths(chance.low), _tenths(chance.high)
    if low == high:
        return said
    unit = " in 10" if "in 10" not in said else ""
    span = f"{low} to {high}{unit}"
    if chance.high - chance.low >= LITTLE_KNOWN:
        return f"{said}, and I know little: {span}"
    return f"{said}, could be {span}"


def _tenths(chance: float) -> int:
    """Whole tenths; nothing uncertain is said to be sure, so 1 to 9."""
    return min(9, max(1, floor(10 * chance + 0.5)))


def in_hundred(points: float) -> str:
    """A difference of chances, given from 0 to 1: "14 in 100", "under 1 in 100", "nothing"."""
    size = floor(100 * abs(points) + 0.5)
    if size == 0:
        return "nothing" if abs(points) < 0.0005 else "under 1 in 100"
    return f"{size} in 100"


def of_hundred(chance: float) -> str:
    """A rally chance without a fraction: "44"."""
    return str(floor(100 * chance + 0.5))


def winners_and_misses(misses_per_winner: float) -> tuple[int, int]:
    """Small whole numbers: so many clean winners pay for so many misses."""
    ratio = Fraction(misses_per_winner).limit_denominator(MOST_WINNERS)
    return ratio.denominator, ratio.numerator
