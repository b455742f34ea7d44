"""What is believed about the rally chances, and what that makes of a score.

Betas against scipy; the range of a chance against a fine grid of both rates, 96 × 96 equally
likely pairs solved on the walked chain; one call's figures against each figure alone.
"""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest
from chance_elimination import eliminated
from chance_formats import COMMON, SINGLES, at, rates
from chance_oracles import chain_of, folded
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy import stats

from knowledge.chances import (
    Beta,
    RallyRates,
    RallyTally,
    RateBelief,
    StateError,
    base_rates,
    expected_rallies,
    game_table,
    learned_rates,
    match_chance,
    outlook,
    prior_rates,
    serve_first_worth,
    shutout_chance,
)
from knowledge.chances.outlook import _quantile
from knowledge.game import GameFormat, GameState, MatchState, after, start
from knowledge.vocabulary import Level

GRID = 96
RANGE_CLOSE = 0.01
"""One game in a hundred; a range is said as "4 to 8" of 10, so this is ten times finer."""

betas = st.builds(Beta, wins=st.floats(2, 300), losses=st.floats(2, 300))


def of_sd(mean: float, sd: float) -> Beta:
    """The beta of that mean and standard deviation."""
    weight = mean * (1 - mean) / sd**2 - 1
    return Beta(wins=mean * weight, losses=(1 - mean) * weight)


@given(betas)
def test_a_beta_is_scipys(belief: Beta) -> None:
    there = stats.beta(belief.wins, belief.losses)
    assert belief.mean == pytest.approx(there.mean())
    assert belief.sd == pytest.approx(there.std())
    assert belief.rallies == pytest.approx(belief.wins + belief.losses)


@given(betas, st.sampled_from([2, 8, 16, 17]))
def test_quantiles_are_scipys(belief: Beta, parts: int) -> None:
    """The middles of equally likely parts, to a tenth of a rally in a hundred."""
    middles = (np.arange(parts) + 0.5) / parts
    expected = stats.beta.ppf(middles, belief.wins, belief.losses)
    assert belief.quantiles(parts) == pytest.approx(expected, abs=1e-3)


def range_on_a_grid(state: GameState, belief: RateBelief) -> tuple[float, float, float]:
    """The 10 and 90 in 100 points and the average of the chance, over equally likely rates."""
    middles = (np.arange(GRID) + 0.5) / GRID
    assert isinstance(belief.serving, Beta)
    assert isinstance(belief.receiving, Beta)
    serving, receiving = np.meshgrid(
        *(
            stats.beta.ppf(middles, one.wins, one.losses)
            for one in (belief.serving, belief.receiving)
        )
    )
    chain = chain_of(state.format)
    solved = eliminated(chain, serving.ravel(), receiving.ravel())
    chances = solved[chain.index[folded(state)]]
    low, high = np.quantile(chances, [0.1, 0.9])
    return float(low), float(high), float(chances.mean())


FIVE_POINTS = RateBelief(serving=of_sd(0.44, 0.05), receiving=of_sd(0.56, 0.05))
BELIEFS = {
    "five points of doubt": FIVE_POINTS,
    "a prior": prior_rates(),
    "uneven": RateBelief(serving=Beta(wins=25, losses=25), receiving=Beta(wins=30, losses=20)),
    "many rallies": RateBelief(
        serving=Beta(wins=126, losses=174), receiving=Beta(wins=189, losses=111)
    ),
    "far apart": RateBelief(serving=Beta(wins=14, losses=6), receiving=Beta(wins=160, losses=40)),
}
STATES = [
    start(COMMON, we_serve=True),
    at(6, 4, we_serve=True, server=1),
    at(4, 9, we_serve=False, server=2),
]


@pytest.mark.parametrize("name", BELIEFS)
@pytest.mark.parametrize("state", STATES, ids=lambda state: str(state.call))
def test_the_range_is_that_of_a_fine_grid(state: GameState, name: str) -> None:
    """10 to 90 in 100 of what the chance may be."""
    low, high, average = range_on_a_grid(state, BELIEFS[name])
    found = outlook(MatchState(game=state), BELIEFS[name]).game
    assert found.low == pytest.approx(low, abs=RANGE_CLOSE)
    assert found.high == pytest.approx(high, abs=RANGE_CLOSE)
    assert found.average == pytest.approx(average, abs=RANGE_CLOSE / 2)


def test_five_points_of_doubt_about_both_rates() -> None:
    """0.26 to 0.73 from 0-0, computed separately beforehand (at which rates was not kept).

    At .44 and .56 the grid gives 0.256 to 0.744, at .5 and .5 it gives 0.271 to 0.729: the
    low end comes out of the first, the high end of the second, both within a point and a half.
    """
    low, high, _ = range_on_a_grid(STATES[0], FIVE_POINTS)
    printed = [0.26, 0.73]
    assert [low, high] == pytest.approx(printed, abs=0.015)
    found = outlook(MatchState(game=STATES[0]), FIVE_POINTS).game
    assert [found.low, found.high] == pytest.approx(printed, abs=0.015)


@pytest.mark.parametrize("state", STATES, ids=lambda state: str(state.call))
@pytest.mark.parametrize("games", [(0, 0), (1, 0)])
def test_one_call_gives_each_figure_alone(state: GameState, games: tuple[int, int]) -> None:
    match = MatchState(
        game=replace(state, we_started=True), games_ours=games[0], games_theirs=games[1]
    )
    found = outlook(match, FIVE_POINTS)
    p, q = found.rates.serving, found.rates.receiving
    table = game_table(state.format, p, q)
    assert [p, q] == pytest.approx([0.44, 0.56])
    assert not found.is_exact
    won, lost = (after(match.game, won_by_us=won) for won in (True, False))
    alone = {
        "rally_weight": table.rally_weight(state),
        "win_chance": table.win_chance(state),
        "match_chance": match_chance(match, p, q),
        "win_chance_if_won": table.win_chance(won),
        "win_chance_if_lost": table.win_chance(lost),
        "match_rally_weight": match_chance(replace(match, game=won), p, q)
        - match_chance(replace(match, game=lost), p, q),
        "expected_rallies": expected_rallies(state, p, q),
        "shutout_chance": shutout_chance(state, p, q, ours=True),
        "shutout_chance_theirs": shutout_chance(state, p, q, ours=False),
        "serve_first_worth": serve_first_worth(state.format, p, q),
    }
    numbers = found.numbers()
    assert {name: numbers[name] for name in alone} == pytest.approx(alone, abs=1e-12)


@given(rates, rates)
@settings(max_examples=25, deadline=None)
def test_rates_that_somebody_stated_have_no_range(serving: float, receiving: float) -> None:
    belief = RateBelief(serving=serving, receiving=receiving)
    found = outlook(MatchState(game=STATES[1]), belief)
    assert found.is_exact
    assert found.rates == RallyRates(serving=serving, receiving=receiving)
    assert found.game.low == found.game.high == found.game.chance
    assert found.match.low == found.match.high == found.match.chance


def test_an_outlook_on_an_impossible_score_lists_every_fault() -> None:
    wrong = at(-1, 3, we_serve=True, server=3)
    with pytest.raises(StateError, match=r"below zero.*1 or 2, not 3"):
        outlook(MatchState(game=wrong), FIVE_POINTS)


counts = st.integers(0, 200)
tallies = st.builds(
    RallyTally, served_won=counts, served_lost=counts, received_won=counts, received_lost=counts,
    weight=st.floats(0, 1),
)  # fmt: skip


@given(st.lists(tallies, max_size=5))
def test_rallies_add_to_the_prior_in_any_order(seen: list[RallyTally]) -> None:
    """Beta and binomial are conjugate (textbook): counts add, each with its weight."""
    prior = prior_rates()
    found, reversed_ = learned_rates(prior, seen), learned_rates(prior, seen[::-1])
    parts = {
        "serving": ("served_won", "served_lost"),
        "receiving": ("received_won", "received_lost"),
    }
    for name, (won, lost) in parts.items():
        before, now, back = (getattr(one, name) for one in (prior, found, reversed_))
        wins = before.wins + sum(one.weight * getattr(one, won) for one in seen)
        losses = before.losses + sum(one.weight * getattr(one, lost) for one in seen)
        assert [now.wins, now.losses] == pytest.approx([wins, losses])
        assert [back.wins, back.losses] == pytest.approx([wins, losses])


@pytest.mark.parametrize(
    ("level", "receiving"),
    [(Level.L3_0, 53), (Level.L3_5, 53), (Level.L4_0, 54), (Level.L4_5, 55), (Level.L5_0, 57)],
)
@pytest.mark.parametrize("mixed", [False, True])
def test_the_prior_is_the_reviews_baseline(level: Level, receiving: int, mixed: bool) -> None:
    """Common practice, no source: 53, 54, 55, 56 to 58 in 100 by level, mixed 1 less.

    It is the same for both sides and weighs 100 rallies: each chance to five points up or down,
    as the review has it (1.3 and 2.0c; engineering notes 1.7 say 20).
    """
    belief = prior_rates(level=level, mixed=mixed)
    assert isinstance(belief.serving, Beta)
    expected = (receiving - mixed) / 100
    assert belief.rates.receiving == pytest.approx(expected)
    assert belief.rates.serving == pytest.approx(1 - expected)
    assert belief.serving.rallies == pytest.approx(100)
    assert belief.serving.sd == pytest.approx(0.05, abs=0.001)


def test_a_books_own_rates_make_a_prior() -> None:
    own = RallyRates(serving=0.41, receiving=0.57)
    belief = base_rates(own)
    assert belief.rates.serving == pytest.approx(own.serving)
    assert belief.rates.receiving == pytest.approx(own.receiving)
    assert not belief.is_exact


def test_more_rallies_narrow_the_range() -> None:
    match = MatchState(game=start(SINGLES, we_serve=True))
    prior = prior_rates()
    seen = RallyTally(served_won=44, served_lost=56, received_won=56, received_lost=44)
    many = learned_rates(prior, [seen] * 20)
    widths = [one.game.high - one.game.low for one in (outlook(match, prior), outlook(match, many))]
    assert widths[1] < widths[0] / 3
    assert all(math.isfinite(width) for width in widths)


def test_a_game_format_of_one_point_has_a_range_too() -> None:
    format = GameFormat(target=1, win_by=1)
    found = outlook(MatchState(game=start(format, we_serve=True)), FIVE_POINTS)
    low, high, _ = range_on_a_grid(start(format, we_serve=True), FIVE_POINTS)
    assert [found.game.low, found.game.high] == pytest.approx([low, high], abs=RANGE_CLOSE)


@given(st.lists(st.floats(0, 1) | st.sampled_from([0.0, 0.25, 1.0]), min_size=1, max_size=300))
def test_a_quantile_is_numpys_to_the_last_bit(values: list[float]) -> None:
    """Second method: numpy.quantile, linear."""
    for share in (0.0, 0.1, 0.5, 0.9, 1.0):
        assert _quantile(np.sort(values), share) == np.quantile(values, share)
