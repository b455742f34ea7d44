"""What logged aims show, against scipy, full enumeration and Walker and Wooders' own numbers."""

from __future__ import annotations

import math
from itertools import pairwise, permutations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import stats

from knowledge.mixing import chi_square_tail, equal_win_rates, fits_shares, runs_of


@given(statistic=st.floats(0, 200), degrees=st.integers(1, 12))
def test_the_tail_is_scipys(statistic: float, degrees: int) -> None:
    expected = float(stats.chi2.sf(statistic, degrees))
    assert chi_square_tail(statistic, degrees) == pytest.approx(expected, rel=1e-9, abs=1e-15)


def test_the_published_statistic_of_a_final() -> None:
    """Walker and Wooders 2001 (numbers from memory): 70 serves left, 5 right, won 50 and 3."""
    found = equal_win_rates([(50, 70), (3, 5)])
    assert found is not None
    assert found.statistic == pytest.approx(0.294, abs=5e-4)
    assert found.degrees == 1
    assert found.chance == pytest.approx(float(stats.chi2.sf(found.statistic, 1)))


RESULTS = st.lists(
    st.integers(1, 60).flatmap(lambda played: st.tuples(st.integers(0, played), st.just(played))),
    min_size=2,
    max_size=6,
).filter(lambda rows: 0 < sum(won for won, _ in rows) < sum(played for _, played in rows))


@given(results=RESULTS)
def test_equal_win_rates_is_pearsons_test_of_the_table(results: list[tuple[int, int]]) -> None:
    found = equal_win_rates(results)
    table = [[won for won, _ in results], [played - won for won, played in results]]
    expected = stats.chi2_contingency(table, correction=False)
    assert found is not None
    assert found.statistic == pytest.approx(float(expected.statistic), abs=1e-9)
    assert found.degrees == expected.dof
    assert found.chance == pytest.approx(float(expected.pvalue), abs=1e-9)


def test_where_win_rates_cannot_be_compared() -> None:
    assert equal_win_rates([]) is None
    assert equal_win_rates([(3, 9)]) is None
    assert equal_win_rates([(3, 9), (0, 0)]) is None
    assert equal_win_rates([(4, 4), (9, 9)]) is None
    assert equal_win_rates([(0, 4), (0, 9)]) is None
    with pytest.raises(ValueError, match="between 0 and played"):
        equal_win_rates([(5, 4), (1, 2)])


@given(
    counts=st.lists(st.integers(1, 40), min_size=2, max_size=5),
    weights=st.lists(st.integers(1, 9), min_size=5, max_size=5),
)
def test_fits_shares_is_the_goodness_of_fit_test(counts: list[int], weights: list[int]) -> None:
    shares = [weight / sum(weights[: len(counts)]) for weight in weights[: len(counts)]]
    found = fits_shares(counts, shares)
    expected = stats.chisquare(counts, [sum(counts) * share for share in shares])
    assert found is not None
    assert found.statistic == pytest.approx(float(expected.statistic))
    assert found.chance == pytest.approx(float(expected.pvalue), abs=1e-9)


def test_a_choice_without_a_share_was_never_drawn() -> None:
    found = fits_shares([9, 9, 1], [0.5, 0.5, 0.0])
    assert found is not None
    assert found.chance == 0
    assert fits_shares([0, 0], [0.5, 0.5]) is None
    assert fits_shares([9, 0], [1.0, 0.0]) is None


@pytest.mark.parametrize("aims", ["aab", "aabb", "aaabb", "aabbc", "aaabbcc", "abcdd"])
def test_expected_runs_and_their_spread_by_full_enumeration(aims: str) -> None:
    """The definition: mean and standard deviation over every order of the same choices."""
    counted = [1 + sum(a != b for a, b in pairwise(one)) for one in permutations(aims)]
    mean = sum(counted) / len(counted)
    sd = math.sqrt(sum((one - mean) ** 2 for one in counted) / len(counted))
    found = runs_of(aims)
    assert found is not None
    assert (found.expected, found.sd) == pytest.approx((mean, sd))
    assert found.runs == 1 + sum(a != b for a, b in pairwise(aims))


@given(first=st.integers(1, 40), second=st.integers(1, 40))
def test_for_two_kinds_it_is_wald_and_wolfowitz(first: int, second: int) -> None:
    """1 + 2 n1 n2 / n and 2 n1 n2 (2 n1 n2 - n) / (n^2 (n - 1)) (Wald and Wolfowitz 1940)."""
    n, both = first + second, 2 * first * second
    found = runs_of("a" * first + "b" * second)
    if n < 3:
        assert found is None
        return
    assert found is not None
    assert found.expected == pytest.approx(1 + both / n)
    assert found.sd**2 == pytest.approx(both * (both - n) / (n**2 * (n - 1)))


def test_alternating_and_repeating_stand_on_either_side() -> None:
    alternating, repeating = runs_of("ab" * 20), runs_of("a" * 20 + "b" * 20)
    assert alternating is not None
    assert repeating is not None
    assert alternating.z > 3
    assert repeating.z < -3
    assert max(alternating.chance_as_far, repeating.chance_as_far) < 0.01
    assert alternating.switches == 39


@pytest.mark.parametrize("aims", ["", "a", "ab", "abc", "aaaaaaaa"])
def test_nothing_to_test(aims: str) -> None:
    assert runs_of(aims) is None
