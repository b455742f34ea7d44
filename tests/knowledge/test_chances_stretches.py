"""How often chance alone gives a bad stretch, against counting every sequence and known runs."""

from __future__ import annotations

from itertools import product
from math import prod

import pytest
from hypothesis import given
from hypothesis import strategies as st

from knowledge.chances import stretch_chance


def _by_counting(lose: list[float], lost: int, of: int) -> float:
    """Every sequence of results, weighed: the definition."""
    total = 0.0
    for results in product((0, 1), repeat=len(lose)):
        share = prod(p if r else 1 - p for p, r in zip(lose, results, strict=True))
        windows = range(len(results))
        if any(sum(results[max(0, end - of + 1) : end + 1]) >= lost for end in windows):
            total += share
    return total


@given(
    lose=st.lists(st.floats(0, 1), min_size=1, max_size=9),
    size=st.tuples(st.integers(1, 5), st.integers(1, 5)),
)
def test_it_is_the_sum_over_every_sequence(lose: list[float], size: tuple[int, int]) -> None:
    lost, of = sorted(size)
    assert stretch_chance(lose, lost=lost, of=of) == pytest.approx(_by_counting(lose, lost, of))


def test_a_run_of_three_in_ten_fair_tosses() -> None:
    """504 of the 1024 sequences of ten tosses hold no run of three heads, a tribonacci number

    (de Moivre's runs problem, as in Feller, Introduction to Probability, XIII; from memory).
    """
    assert stretch_chance([0.5] * 10, lost=3, of=3) == pytest.approx(520 / 1024)


@pytest.mark.parametrize(("p", "r", "rallies"), [(0.45, 4, 43), (0.8, 30, 90)])
def test_a_run_follows_fellers_recurrence(p: float, r: int, rallies: int) -> None:
    """u(n) = u(n-1) + (1 - u(n-r-1)) q p^r for a first run of r (Feller XIII.7, from memory).

    A long run has as few states as it has rallies; every outcome kept apart, it would not end.
    """
    u = [0.0] * r + [p**r]
    for n in range(r + 1, rallies + 1):
        u.append(u[n - 1] + (1 - u[n - r - 1]) * (1 - p) * p**r)
    assert stretch_chance([p] * rallies, lost=r, of=r) == pytest.approx(u[rallies])


def test_more_rallies_make_a_stretch_likelier_and_a_worse_one_is_rarer() -> None:
    short, long = ([0.5] * n for n in (20, 50))
    assert stretch_chance(short, lost=4, of=5) < stretch_chance(long, lost=4, of=5)
    assert stretch_chance(short, lost=5, of=5) < stretch_chance(short, lost=4, of=5)


@pytest.mark.parametrize(("lost", "of"), [(0, 3), (4, 3)])
def test_a_stretch_that_cannot_be_is_refused(lost: int, of: int) -> None:
    with pytest.raises(ValueError, match="no stretch"):
        stretch_chance([0.5], lost=lost, of=of)


def test_a_chance_beyond_one_is_refused() -> None:
    with pytest.raises(ValueError, match="between 0 and 1"):
        stretch_chance([1.5], lost=1, of=1)
