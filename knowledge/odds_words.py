"""Chances as players say them: no decimals, and never surer than the number is."""

from __future__ import annotations

from fractions import Fraction
from math import floor

from knowledge.chances import Range

LITTLE_KNOWN = 0.35
"""A range this wide is said as knowing little. Our choice of words, no source."""

UNDER_IT = 0.0005
"""A difference below half a thousandth is said as none. Our choice of words, no source."""

TENTHS = 10
ANYTHING = "anything"

_ENDS = {
    ("under 1 in 10", "up to 1"): "about 1 in 10 at most",
    ("over 9 in 10", "9 or more"): "about 9 in 10 at least",
}
"""Where chance and range say the same: "under 1 in 10, could be up to 1" takes itself back."""

MOST_WINNERS = 5
"""How many winners pay for how many misses: with small numbers, as players count."""


def in_ten(chance: float) -> str:
    """A chance as players say it: "7 in 10", "even", or beyond the last full tenth."""
    tenths = floor(10 * chance + 0.5)
    if tenths in (0, 10):
        return "over 9 in 10" if tenths else "under 1 in 10"
    return "even" if tenths == 5 else f"{tenths} in 10"


def about(chance: float) -> str:
    """ "about 7 in 10", "about even", "over 9 in 10"."""
    said = in_ten(chance)
    return said if said.startswith(("over", "under")) else f"about {said}"


def about_with_range(chance: Range) -> str:
    """The chance with what it may be: "about 6 in 10, and I know little: 4 to 8"."""
    said, span = about(chance.chance), _span(chance)
    if span is None:
        return said
    if (said, span) in _ENDS:
        return _ENDS[said, span]
    if span != ANYTHING and (not said.endswith("in 10") or said.startswith("under")):
        span += " in 10"  # "under 1 in 10, could be up to 3" leaves open of what
    if chance.high - chance.low >= LITTLE_KNOWN:
        return f"{said}, and I know little: {span}"
    return f"{said}, could be {span}"


def _span(chance: Range) -> str | None:
    """The range in tenths; None if both ends are the same. Nothing uncertain is said to be sure."""
    low, high = floor(10 * chance.low + 0.5), floor(10 * chance.high + 0.5)
    if low == high:
        return None
    if low == 0 and high == TENTHS:
        return ANYTHING
    if low == 0:
        return f"up to {high}"
    return f"{low} or more" if high == TENTHS else f"{low} to {high}"


def in_hundred(points: float) -> str:
    """A difference of chances, given from 0 to 1: "14 in 100", "under 1 in 100", "0 in 100"."""
    size = floor(100 * abs(points) + 0.5)
    if size == 0:
        return "0 in 100" if abs(points) < UNDER_IT else "under 1 in 100"
    return f"{size} in 100"


def of_hundred(chance: float) -> str:
    """A rally chance without a fraction: "44"."""
    return str(floor(100 * chance + 0.5))


def winners_and_misses(misses_per_winner: float) -> tuple[int, int]:
    """Small whole numbers: so many clean winners pay for so many misses; 5 to 1 at the most."""
    few = min(misses_per_winner, 1 / misses_per_winner)
    ratio = Fraction(max(few, 1 / MOST_WINNERS)).limit_denominator(MOST_WINNERS)
    pair = ratio.denominator, ratio.numerator
    return pair if misses_per_winner <= 1 else pair[::-1]
