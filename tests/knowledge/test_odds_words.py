"""Chances in words: as players say them, and never surer than the number."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from knowledge.chances import Range
from knowledge.odds_words import about, about_with_range, in_hundred, winners_and_misses

chances = st.floats(0, 1)


def ranged(low: float, chance: float, high: float) -> Range:
    return Range(chance=chance, low=low, high=high, average=chance)


@pytest.mark.parametrize(
    ("chance", "said"),
    [
        (0.0, "under 1 in 10"),
        (0.04, "under 1 in 10"),
        (0.06, "about 1 in 10"),
        (0.5, "about even"),
        (0.64, "about 6 in 10"),
        (0.96, "over 9 in 10"),
    ],
)
def test_a_chance_in_tenths(chance: float, said: str) -> None:
    assert about(chance) == said


@pytest.mark.parametrize(
    ("low", "chance", "high", "said"),
    [
        (0.42, 0.61, 0.78, "about 6 in 10, and I know little: 4 to 8"),
        (0.36, 0.5, 0.64, "about even, could be 4 to 6 in 10"),
        (0.002, 0.042, 0.258, "under 1 in 10, could be up to 3 in 10"),
        (0.002, 0.042, 0.08, "about 1 in 10 at most"),
        (0.7, 0.9, 0.98, "about 9 in 10, could be 7 or more"),
        (0.01, 0.5, 0.99, "about even, and I know little: anything"),
        (0.72, 0.72, 0.72, "about 7 in 10"),
    ],
)
def test_a_range_in_tenths(low: float, chance: float, high: float, said: str) -> None:
    assert about_with_range(ranged(low, chance, high)) == said


@given(chances, chances, chances)
def test_a_range_never_contradicts_its_chance(one: float, two: float, three: float) -> None:
    low, chance, high = sorted((one, two, three))
    said = about_with_range(ranged(low, chance, high))
    if said.startswith("under"):
        assert "or more" not in said
        assert " to 1" not in said.replace("up to", "")
        assert said.endswith(("in 10", "anything"))
    assert "0 to" not in said
    assert "to 10" not in said


@pytest.mark.parametrize(
    ("points", "said"),
    [(0.0, "0 in 100"), (0.0004, "0 in 100"), (0.004, "under 1 in 100"), (-0.146, "15 in 100")],
)
def test_a_difference_in_hundredths(points: float, said: str) -> None:
    assert in_hundred(points) == said


@given(st.floats(0.01, 0.99))
def test_winners_pay_for_misses_in_small_numbers(rally_chance: float) -> None:
    """(1 - v)/v misses a winner (facts of the game, section 3), as players would count them."""
    exact = (1 - rally_chance) / rally_chance
    winners, misses = winners_and_misses(exact)
    assert winners >= 1
    assert misses >= 1
    assert min(winners, misses) <= 5
    fewer = min(exact, 1 / exact)
    nearest = min(abs(Fraction(a, b) - fewer) for b in range(1, 6) for a in range(1, b + 1))
    said = Fraction(min(winners, misses), max(winners, misses))
    assert abs(said - fewer) == pytest.approx(nearest)
    assert (misses <= winners) is (exact <= 1) or misses == winners
