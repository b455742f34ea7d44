"""The solver against the same game as an absorbing Markov chain in general libraries.

The chain is walked state by state by the rulebook and solved as one linear system by numpy
(dense LU) and scipy (sparse LU), which know nothing of scores. Method: fundamental matrix of an
absorbing chain (Kemeny and Snell, Finite Markov Chains, 1960; from memory).
"""

from __future__ import annotations

import numpy as np
import pytest
from chance_formats import COMMON, FORMATS, SHORT_FORMATS, formats, label, playing_states, rates
from chance_oracles import (
    chain_of,
    expected_payoff,
    expected_payoff_dense,
    rallies_to_come,
    shutout,
    weights,
)
from hypothesis import given, settings

from knowledge.chances import expected_rallies, game_table, shutout_chance
from knowledge.game import GameFormat, GameState, start

CLOSE = 1e-11
"""Well inside the 1e-9 that is asked for; general solvers are good for about 1e-13 here."""


def worst_gap(format: GameFormat, serving: float, receiving: float) -> float:
    """The largest difference in win chance over all states of the format."""
    chain = chain_of(format)
    table = game_table(format, serving, receiving)
    ours = np.array([table.win_chance(state) for state in chain.playing])
    return float(np.abs(ours - expected_payoff(chain, serving, receiving)).max())


@pytest.mark.parametrize("format", FORMATS, ids=label)
def test_every_state_of_every_format_agrees_with_the_chain(format: GameFormat) -> None:
    assert worst_gap(format, 0.42, 0.63) < CLOSE


@settings(max_examples=30, deadline=None)
@given(formats, rates, rates)
def test_any_rates_agree_with_the_chain(
    format: GameFormat, serving: float, receiving: float
) -> None:
    assert worst_gap(format, serving, receiving) < CLOSE


@settings(max_examples=8, deadline=None)
@given(rates, rates)
def test_the_two_libraries_agree_with_each_other(serving: float, receiving: float) -> None:
    """The oracle itself: dense and sparse elimination order their steps differently."""
    chain = chain_of(COMMON)
    sparse = expected_payoff(chain, serving, receiving)
    dense = expected_payoff_dense(chain, serving, receiving)
    assert np.abs(sparse - dense).max() < CLOSE


@settings(max_examples=30, deadline=None)
@given(formats, rates, rates)
def test_expected_rallies_agree_with_the_chain(
    format: GameFormat, serving: float, receiving: float
) -> None:
    chain = chain_of(format)
    expected = rallies_to_come(chain, serving, receiving)
    for state in _some(format):
        ours = expected_rallies(state, serving, receiving)
        assert ours == pytest.approx(chain.at(expected, state), rel=1e-10)


@settings(max_examples=30, deadline=None)
@given(formats, rates, rates)
def test_shutouts_agree_with_the_chain(
    format: GameFormat, serving: float, receiving: float
) -> None:
    chain = chain_of(format)
    for ours in (True, False):
        expected = expected_payoff(chain, serving, receiving, shutout(ours=ours))
        for state in _some(format):
            chance = shutout_chance(state, serving, receiving, ours=ours)
            assert chance == pytest.approx(chain.at(expected, state), abs=CLOSE)


@pytest.mark.parametrize("format", SHORT_FORMATS, ids=label)
def test_expected_rallies_and_shutouts_from_the_start_of_every_format(format: GameFormat) -> None:
    chain = chain_of(format)
    rallies = rallies_to_come(chain, 0.44, 0.55)
    for we_serve in (True, False):
        state = start(format, we_serve=we_serve)
        assert expected_rallies(state, 0.44, 0.55) == pytest.approx(chain.at(rallies, state))
        for ours in (True, False):
            expected = chain.at(expected_payoff(chain, 0.44, 0.55, shutout(ours=ours)), state)
            chance = shutout_chance(state, 0.44, 0.55, ours=ours)
            assert chance == pytest.approx(expected, abs=CLOSE)


@settings(max_examples=30, deadline=None)
@given(formats, rates, rates)
def test_a_rally_weighs_what_its_two_outcomes_differ_by(
    format: GameFormat, serving: float, receiving: float
) -> None:
    chain = chain_of(format)
    expected = weights(chain, serving, receiving)
    table = game_table(format, serving, receiving)
    for state in _some(format):
        assert table.rally_weight(state) == pytest.approx(chain.at(expected, state), abs=CLOSE)


def _some(format: GameFormat) -> list[GameState]:
    """About a dozen states, spread over the walk: the first, early, late and tied ones."""
    states = playing_states(format)
    return [*states[:: max(1, len(states) // 10)], *states[-3:]]
