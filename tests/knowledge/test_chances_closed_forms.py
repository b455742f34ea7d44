"""The solver against closed forms that need no chain at all.

Derived by hand and checked by a second exact method; where a form is published it is named beside
the check. f = 1 − p is the chance that we lose a rally on our serve.
"""

from __future__ import annotations

import pytest
from chance_formats import SINGLES, rates
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.stats import binom

from knowledge.chances import game_table, shutout_chance
from knowledge.game import Discipline, GameFormat, GameState, Scoring, start

CLOSE = 1e-12
quickly = settings(max_examples=50, deadline=None)
NEXT_POINT = GameFormat(target=1, win_by=1)
NEXT_POINT_SINGLES = GameFormat(target=1, win_by=1, discipline=Discipline.SINGLES)


def next_point(serving: float, receiving: float, *, we_serve: bool, server: int) -> float:
    """A game to 1, win by 1, is the next point."""
    state = GameState(format=NEXT_POINT, we_serve=we_serve, server=server)
    return float(game_table(NEXT_POINT, serving, receiving).win_chance(state))


@quickly
@given(rates, rates)
def test_the_next_point_with_two_servers(p: float, q: float) -> None:
    """By hand: D = 1 − f²q²; summed over turns of serve as a geometric series."""
    f = 1 - p
    d = 1 - f * f * q * q
    we_serve_first = p * (1 + f) / d
    assert next_point(p, q, we_serve=True, server=1) == pytest.approx(we_serve_first, abs=CLOSE)
    expected = p + f * q * q * p * (1 + f) / d
    assert next_point(p, q, we_serve=True, server=2) == pytest.approx(expected, abs=CLOSE)
    expected = q * q * p * (1 + f) / d
    assert next_point(p, q, we_serve=False, server=1) == pytest.approx(expected, abs=CLOSE)
    expected = q * p * (1 + f) / d
    assert next_point(p, q, we_serve=False, server=2) == pytest.approx(expected, abs=CLOSE)


@quickly
@given(rates, rates)
def test_the_next_point_with_one_server(p: float, q: float) -> None:
    """By hand: a = p / (1 − fq) serving, q·a receiving."""
    table = game_table(NEXT_POINT_SINGLES, p, q)
    a = p / (1 - (1 - p) * q)
    ours = table.win_chance(start(NEXT_POINT_SINGLES, we_serve=True))
    theirs = table.win_chance(start(NEXT_POINT_SINGLES, we_serve=False))
    assert [ours, theirs] == pytest.approx([a, q * a], abs=CLOSE)


@quickly
@given(rates, rates, st.sampled_from([11, 15, 21]))
def test_a_shutout_with_one_server(p: float, q: float, target: int) -> None:
    """By hand: aⁿ serving first, q·aⁿ receiving first."""
    format = GameFormat(target=target, discipline=Discipline.SINGLES)
    a = p / (1 - (1 - p) * q)
    first = shutout_chance(start(format, we_serve=True), p, q, ours=True)
    second = shutout_chance(start(format, we_serve=False), p, q, ours=True)
    assert first == pytest.approx(a**target, abs=CLOSE)
    assert second == pytest.approx(q * a**target, abs=CLOSE)


@quickly
@given(rates, rates, st.sampled_from([11, 15]))
def test_a_shutout_with_two_servers_is_a_run_of_next_points(
    p: float, q: float, target: int
) -> None:
    """From 0-0-2: the first point as number 2; whoever scores stays server 1 or 2 of that turn.

    Our own: two values, by the server who scored, carried n − 1 points on by the shares of the
    next point scored by server 1 and by server 2 of the serving side.
    """
    f = 1 - p
    d = 1 - f * f * q * q
    by_first, by_second = (p / d, f * p / d), (f * q * q * p / d, p + f * q * q * f * p / d)
    scored = by_second
    for _ in range(target - 1):
        scored = (
            scored[0] * by_first[0] + scored[1] * by_second[0],
            scored[0] * by_first[1] + scored[1] * by_second[1],
        )
    chance = shutout_chance(start(GameFormat(target=target), we_serve=True), p, q, ours=True)
    assert chance == pytest.approx(sum(scored), abs=CLOSE)


def _keller(p: float) -> float:
    """Chance of a shutout to 21 for one player, a coin deciding who serves first."""
    format = GameFormat(target=21, discipline=Discipline.SINGLES)
    starts = (start(format, we_serve=we_serve) for we_serve in (True, False))
    return sum(float(shutout_chance(state, p, p, ours=True)) for state in starts) / 2


@quickly
@given(rates)
def test_the_published_chance_of_a_shutout_to_21(p: float) -> None:
    """Keller 1984, Probability of a shutout in racquetball, SIAM Review 26:267 (second-hand)."""
    published = (1 + p) / 2 * (p / (1 - p + p * p)) ** 21
    assert _keller(p) == pytest.approx(published, abs=CLOSE)


def test_the_published_rate_at_which_a_shutout_is_even() -> None:
    """Keller 1984 (second-hand): one half at p = 0.842304791, to the nine digits printed."""
    assert _keller(0.8423047905) < 0.5 < _keller(0.8423047915)


@quickly
@given(rates, rates, st.sampled_from([1, 2, 11, 15, 21]))
def test_rally_scoring_win_by_1_is_a_binomial_sum(p: float, q: float, target: int) -> None:
    """By hand: P(Bin(N, p) + Bin(N − 1, q) ≥ N) serving first.

    Each side's rallies on its own serve can be drawn beforehand, N for the first server and
    N − 1 for the other; who is first to N does not depend on their order (Anderson 1977,
    Note on the advantage of first serve, J. Combinatorial Theory A 23:363; from memory).
    """
    format = GameFormat(target=target, win_by=1, scoring=Scoring.RALLY)
    table = game_table(format, p, q)
    serving_first = _at_least(target, target, p, target - 1, q)
    receiving_first = _at_least(target, target - 1, p, target, q)
    ours = table.win_chance(start(format, we_serve=True))
    theirs = table.win_chance(start(format, we_serve=False))
    assert ours == pytest.approx(serving_first, abs=CLOSE)
    assert theirs == pytest.approx(receiving_first, abs=CLOSE)


def _at_least(wins: int, first: int, p: float, second: int, q: float) -> float:
    """P(Bin(first, p) + Bin(second, q) ≥ wins), by scipy's binomial."""
    return float(
        sum(binom.pmf(k, first, p) * binom.sf(wins - k - 1, second, q) for k in range(first + 1))
    )


@quickly
@given(rates, rates, st.sampled_from([2, 11, 21]), st.integers(0, 9))
def test_the_tie_in_rally_scoring(p: float, q: float, target: int, later: int) -> None:
    """By hand: p² / ((1 − q)² + pq(1 − q + p)) serving; mirrored when they serve."""
    format = GameFormat(target=target, scoring=Scoring.RALLY)
    table = game_table(format, p, q)
    points = target - 1 + later
    values = [
        table.win_chance(
            GameState(format=format, ours=points, theirs=points, we_serve=we_serve, server=None)
        )
        for we_serve in (True, False)
    ]
    assert values[0] == pytest.approx(_tie(p, q), abs=CLOSE)
    assert values[1] == pytest.approx(1 - _tie(1 - q, 1 - p), abs=CLOSE)


def _tie(p: float, q: float) -> float:
    return p * p / ((1 - q) ** 2 + p * q * (1 - q + p))


@quickly
@given(rates, rates)
def test_the_tie_in_singles(p: float, q: float) -> None:
    """Our own: two points in a row either way, a and qa the chances of the next point."""
    a = p / (1 - (1 - p) * q)
    b = q * a
    state = GameState(format=SINGLES, ours=10, theirs=10, we_serve=True, server=None)
    value = game_table(SINGLES, p, q).win_chance(state)
    assert value == pytest.approx(_singles_tie(a, b), abs=CLOSE)


def _singles_tie(a: float, b: float) -> float:
    """From level, we serve: us, us wins; us, them is level with them serving; and so on.

    x (we serve) = a·(a + (1 − a)·y) + (1 − a)·b·x and, when they serve,
    y = b·(a + (1 − a)·y) + (1 − b)·b·x; solved for x by Cramer's rule.
    """
    top = a * a * (1 - b * (1 - a)) + a * (1 - a) * a * b
    bottom = (1 - (1 - a) * b) * (1 - b * (1 - a)) - a * (1 - a) * (1 - b) * b
    return top / bottom
