"""What must hold of every state, whatever the format and the rates.

The definition itself (a value is the mean of what can follow), mirror symmetry and monotony
follow from the rulebook: rallies are won by us or by them, and a rally won is never worse.
"""

from __future__ import annotations

from fractions import Fraction

import numpy as np
import pytest
from chance_formats import (
    COMMON,
    FORMATS,
    SHORT_FORMATS,
    format_and_state,
    formats,
    label,
    mirrored,
    playing_states,
    rates,
    short_formats,
)
from chance_oracles import chain_of
from hypothesis import example, given, settings
from hypothesis import strategies as st

from knowledge.chances import expected_rallies, game_table, shutout_chance
from knowledge.game import GameFormat, GameState, after

CLOSE = 1e-12
ROUNDING = 1e-14


@settings(max_examples=50, deadline=None)
@example(GameFormat(target=21, cap=25), 0.5, 0.9765625)  # a chance came out just above 1 here
@given(formats, rates, rates)
def test_a_value_is_the_mean_of_what_follows(
    format: GameFormat, serving: float, receiving: float
) -> None:
    """V = chance · V(won) + (1 − chance) · V(lost), the weight their difference; all in [0, 1].

    Where a game is as good as won a weight is below what floats can tell from 0 (a few spacings
    of numbers near 1); that it is never 0 is checked in fractions below.
    """
    table = game_table(format, serving, receiving)
    for state in playing_states(format)[::7]:
        chance = serving if state.we_serve else receiving
        won, lost = (table.win_chance(after(state, won_by_us=won)) for won in (True, False))
        value = table.win_chance(state)
        assert value == pytest.approx(chance * won + (1 - chance) * lost, abs=CLOSE)
        assert table.rally_weight(state) == pytest.approx(won - lost, abs=CLOSE)
        assert table.rally_weight(state) > -ROUNDING
        assert 0 <= value <= 1


@settings(max_examples=50, deadline=None)
@given(format_and_state(), rates, rates)
def test_swapping_the_sides_gives_what_is_left(
    drawn: tuple[GameFormat, GameState], serving: float, receiving: float
) -> None:
    format, state = drawn
    ours = game_table(format, serving, receiving)
    theirs = game_table(format, 1 - receiving, 1 - serving)
    there = mirrored(state)
    assert theirs.win_chance(there) == pytest.approx(1 - ours.win_chance(state), abs=CLOSE)
    assert theirs.rally_weight(there) == pytest.approx(ours.rally_weight(state), abs=CLOSE)
    expected = expected_rallies(state, serving, receiving)
    assert expected_rallies(there, 1 - receiving, 1 - serving) == pytest.approx(expected)
    shut = shutout_chance(state, serving, receiving, ours=True)
    theirs_shut = shutout_chance(there, 1 - receiving, 1 - serving, ours=False)
    assert theirs_shut == pytest.approx(shut, abs=CLOSE)


@settings(max_examples=50, deadline=None)
@given(formats, rates, rates, st.floats(1e-4, 0.3))
def test_winning_more_rallies_wins_more_games(
    format: GameFormat, serving: float, receiving: float, more: float
) -> None:
    """Never less in any state (to rounding), and more from the start with both rates raised."""
    base = game_table(format, serving, receiving)
    on_serve = game_table(format, min(0.999, serving + more), receiving)
    on_return = game_table(format, serving, min(0.999, receiving + more))
    states = playing_states(format)
    for state in states[::9]:
        assert on_serve.win_chance(state) >= base.win_chance(state) - 1e-13
        assert on_return.win_chance(state) >= base.win_chance(state) - 1e-13
    both = game_table(format, min(0.999, serving + more), min(0.999, receiving + more))
    # Where the base is within a rounding of 1 there is nothing left to gain.
    if base.win_chance(states[0]) < 1 - 1e-9:
        assert both.win_chance(states[0]) > base.win_chance(states[0])


@pytest.mark.parametrize("format", FORMATS, ids=label)
def test_a_game_that_is_over_is_won_or_lost(format: GameFormat) -> None:
    table = game_table(format, 0.42, 0.63)
    for end in chain_of(format).ends:
        assert table.win_chance(end) == (1 if end.we_won else 0)
        assert expected_rallies(end, 0.42, 0.63) == 0
        for ours in (True, False):
            is_shutout = end.we_won is ours and min(end.ours, end.theirs) == 0
            assert shutout_chance(end, 0.42, 0.63, ours=ours) == (1 if is_shutout else 0)


@settings(max_examples=40, deadline=None)
@given(format_and_state(short_formats), rates, rates)
def test_expected_rallies_are_one_more_than_what_follows(
    drawn: tuple[GameFormat, GameState], serving: float, receiving: float
) -> None:
    """E = 1 + chance · E(won) + (1 − chance) · E(lost)."""
    _, state = drawn
    chance = serving if state.we_serve else receiving
    won, lost = (
        expected_rallies(after(state, won_by_us=won), serving, receiving) for won in (True, False)
    )
    expected = 1 + chance * won + (1 - chance) * lost
    assert expected_rallies(state, serving, receiving) == pytest.approx(expected, rel=1e-11)


@settings(max_examples=30, deadline=None)
@given(format_and_state(short_formats), st.lists(st.tuples(rates, rates), min_size=1, max_size=5))
def test_many_rates_at_once_are_each_rate_alone(
    drawn: tuple[GameFormat, GameState], pairs: list[tuple[float, float]]
) -> None:
    format, state = drawn
    serving, receiving = np.array(pairs).T
    many = game_table(format, serving, receiving)
    chances, weights = many.win_chance(state), many.rally_weight(state)
    lengths = expected_rallies(state, serving, receiving)
    shutouts = shutout_chance(state, serving, receiving, ours=True)
    assert np.shape(chances) == np.shape(weights) == np.shape(lengths) == (len(pairs),)
    for n, (p, q) in enumerate(pairs):
        alone = game_table(format, p, q)
        assert chances[n] == pytest.approx(alone.win_chance(state), abs=1e-14)
        assert weights[n] == pytest.approx(alone.rally_weight(state), abs=1e-14)
        assert lengths[n] == pytest.approx(expected_rallies(state, p, q), rel=1e-13)
        assert shutouts[n] == pytest.approx(shutout_chance(state, p, q, ours=True), abs=1e-14)


def test_a_grid_of_rates_keeps_its_shape() -> None:
    serving, receiving = np.meshgrid(np.linspace(0.3, 0.7, 4), np.linspace(0.3, 0.7, 3))
    state = playing_states(COMMON)[0]
    chances = game_table(COMMON, serving, receiving).win_chance(state)
    assert np.shape(chances) == (3, 4)
    alone = game_table(COMMON, serving[2, 1], receiving[2, 1]).win_chance(state)
    assert chances[2, 1] == pytest.approx(alone, abs=1e-14)


@pytest.mark.parametrize("format", SHORT_FORMATS, ids=label)
def test_every_rally_weighs_something(format: GameFormat) -> None:
    """Exactly, also for a side that is as good as beaten; in floats at rates as people have."""
    table = game_table(format, Fraction(1, 10), Fraction(1, 5))
    assert all(table.rally_weight(state) > 0 for state in playing_states(format)[::9])
    floats = game_table(format, 0.42, 0.63)
    assert all(floats.rally_weight(state) > 0 for state in playing_states(format))


@pytest.mark.parametrize("format", SHORT_FORMATS[::5], ids=label)
def test_floats_are_close_to_fractions_in_every_state(format: GameFormat) -> None:
    """How many digits floats are good for: all but the last two."""
    exact = game_table(format, Fraction(44, 100), Fraction(55, 100))
    floats = game_table(format, 0.44, 0.55)
    for state in playing_states(format)[::4]:
        assert abs(float(exact.win_chance(state)) - floats.win_chance(state)) < 5e-15
