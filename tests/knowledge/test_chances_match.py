"""Matches of best of one, three and five, against every way the games can fall.

Source of the order of serve: the initial service changes sides after each game (from memory; our
facts do not say). Rates stay the same from game to game, by assumption.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from itertools import product
from typing import Any

import numpy as np
import pytest
from chance_elimination import eliminated
from chance_formats import COMMON, rates
from chance_oracles import chain_of, expected_payoff, folded
from hypothesis import given, settings
from hypothesis import strategies as st

from knowledge.chances import EndlessGameError, RateError, match_chance
from knowledge.game import Discipline, GameFormat, GameState, MatchState, Scoring, after, start

CLOSE = 1e-12
KINDS = [
    COMMON,
    GameFormat(target=15),
    GameFormat(discipline=Discipline.SINGLES),
    GameFormat(scoring=Scoring.RALLY),
]
formats = st.builds(
    lambda kind, best_of: replace(kind, best_of=best_of),
    st.sampled_from(KINDS),
    st.sampled_from([1, 3, 5]),
)


def brute_force(match: MatchState, now: float, first: float, second: float) -> float:
    """Sum over every fall of the games: `now` is this game's chance, `first` ours when we start.

    All games are imagined played, the match being decided by who has more of all of them.
    """
    left = match.format.best_of - match.games_ours - match.games_theirs
    we_start = match.game.we_started
    total = 0.0
    for wins in product((True, False), repeat=left):
        chance = 1.0
        for n, won in enumerate(wins):
            same = n % 2 == 0
            game = now if n == 0 else (first if we_start is same else second)
            chance *= game if won else 1 - game
        if match.games_ours + sum(wins) > match.format.best_of / 2:
            total += chance
    return total


def expected(match: MatchState, serving: float, receiving: float) -> float:
    chain = chain_of(match.format)
    values = expected_payoff(chain, serving, receiving)
    first, second = (chain.at(values, start(match.format, we_serve=us)) for us in (True, False))
    return brute_force(match, chain.at(values, match.game), first, second)


@st.composite
def matches(draw: st.DrawFn) -> MatchState:
    """A match at any of its scores, in a game that some rallies have been played of."""
    format = draw(formats)
    needed = format.best_of // 2
    game = start(format, we_serve=draw(st.booleans()))
    for won in draw(st.lists(st.booleans(), max_size=40)):
        following = after(game, won_by_us=won)
        if following.is_over:
            break
        game = following
    return MatchState(
        game=game,
        games_ours=draw(st.integers(0, needed)),
        games_theirs=draw(st.integers(0, needed)),
    )


@settings(max_examples=60, deadline=None)
@given(matches(), rates, rates)
def test_a_match_is_every_fall_of_its_games(
    match: MatchState, serving: float, receiving: float
) -> None:
    chance = match_chance(match, serving, receiving)
    assert chance == pytest.approx(expected(match, serving, receiving), abs=CLOSE)


def opening(best_of: int, *, we_serve: bool) -> MatchState:
    return MatchState(game=start(replace(COMMON, best_of=best_of), we_serve=we_serve))


@pytest.mark.parametrize("we_serve", [True, False])
def test_best_of_three_in_letters(we_serve: bool) -> None:
    """a starts, then b, then a: ab + a(1 − b)a + (1 − a)ba, with exact fractions."""
    p, q = Fraction(42, 100), Fraction(63, 100)
    chain = chain_of(replace(COMMON, best_of=3))
    values = eliminated(chain, p, q)
    a, b = (
        values[chain.index[folded(start(COMMON, we_serve=us))]] for us in (we_serve, not we_serve)
    )
    letters = a * b + a * (1 - b) * a + (1 - a) * b * a
    assert match_chance(opening(3, we_serve=we_serve), p, q) == letters
    floats = match_chance(opening(3, we_serve=we_serve), 0.42, 0.63)
    assert floats == pytest.approx(float(letters), abs=CLOSE)


@settings(max_examples=40, deadline=None)
@given(rates, rates)
def test_one_game_is_the_match(serving: float, receiving: float) -> None:
    chain = chain_of(replace(COMMON, best_of=1))
    match = opening(1, we_serve=True)
    alone = chain.at(expected_payoff(chain, serving, receiving), match.game)
    assert match_chance(match, serving, receiving) == pytest.approx(alone, abs=CLOSE)


@settings(max_examples=40, deadline=None)
@given(matches(), rates, rates)
def test_a_match_is_the_mean_of_what_the_next_rally_brings(
    match: MatchState, serving: float, receiving: float
) -> None:
    """The game's end included: what follows is the next game's start, or the match's end."""
    chance = serving if match.game.we_serve else receiving
    won, lost = (
        match_chance(replace(match, game=after(match.game, won_by_us=won)), serving, receiving)
        for won in (True, False)
    )
    value = match_chance(match, serving, receiving)
    assert value == pytest.approx(chance * won + (1 - chance) * lost, abs=CLOSE)


def _over(match: MatchState, *, ours: int, theirs: int) -> MatchState:
    return replace(match, game=replace(match.game, ours=ours, theirs=theirs))


@pytest.mark.parametrize(("outcome", "chance"), [(True, 1), (False, 0)])
@pytest.mark.parametrize("games", [0, 1])
def test_a_match_that_is_over(outcome: bool, chance: int, games: int) -> None:
    """Best of one, and the third game of three; at one all either side's game decides."""
    game = start(replace(COMMON, best_of=1 + 2 * games), we_serve=True)
    while not game.is_over:
        game = after(game, won_by_us=outcome)
    match = MatchState(game=game, games_ours=games, games_theirs=games)
    assert match_chance(match, 0.42, 0.63) == chance


def test_between_two_games_the_next_one_counts() -> None:
    """One game up after an 11-4 that we started: they start the second."""
    between = _over(opening(3, we_serve=True), ours=11, theirs=4)
    second = between.next_game(we_serve=False)
    assert match_chance(between, 0.42, 0.63) == pytest.approx(
        expected(second, 0.42, 0.63), abs=CLOSE
    )


@settings(max_examples=30, deadline=None)
@given(matches(), st.lists(st.tuples(rates, rates), min_size=1, max_size=4))
def test_many_rates_at_once(match: MatchState, pairs: list[tuple[float, float]]) -> None:
    serving, receiving = np.array(pairs).T
    many: Any = match_chance(match, serving, receiving)
    alone = [match_chance(match, p, q) for p, q in pairs]
    assert many == pytest.approx(alone, abs=1e-14)


@pytest.mark.parametrize("games", [(1, 0), (0, 1), (0, 0)])
def test_a_match_whose_first_server_is_not_known_is_the_mean_of_both(
    games: tuple[int, int],
) -> None:
    """Either side started as likely as not (common practice, no source)."""
    singles = GameFormat(discipline=Discipline.SINGLES)
    game = GameState(format=singles, ours=3, theirs=2, we_serve=True, server=None)
    match = MatchState(game=game, games_ours=games[0], games_theirs=games[1])
    both = [
        expected(replace(match, game=replace(game, we_started=us)), 0.6, 0.5)
        for us in (True, False)
    ]
    assert match_chance(match, 0.6, 0.5) == pytest.approx(sum(both) / 2, abs=CLOSE)


def test_a_match_passes_on_what_is_wrong() -> None:
    match = opening(3, we_serve=True)
    with pytest.raises(RateError):
        match_chance(match, 1.5, 0.5)
    with pytest.raises(EndlessGameError):
        match_chance(match, 0.0, 1.0)
    wrong = _over(match, ours=14, theirs=3)
    with pytest.raises(ValueError, match="14-3 can't happen"):
        match_chance(wrong, 0.42, 0.63)


def test_swapping_the_sides_of_a_match() -> None:
    """Their chance of the mirrored match is what is left of ours."""
    game = GameState(format=COMMON, ours=6, theirs=4, we_serve=True, server=1, we_started=True)
    match = MatchState(game=game, games_ours=1)
    there = MatchState(
        game=replace(game, ours=4, theirs=6, we_serve=False, we_started=False), games_theirs=1
    )
    ours = match_chance(match, 0.42, 0.63)
    assert match_chance(there, 1 - 0.63, 1 - 0.42) == pytest.approx(1 - ours, abs=CLOSE)
