"""What playing better is worth: gains of this rally, of all rallies, and of a time-out.

Against difference quotients on the walked chain, value iteration, and the numbers of
`chances_coach.toml`, computed separately.
"""

from __future__ import annotations

import sys
import tomllib
from dataclasses import replace
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from chance_formats import COMMON, SINGLES, format_and_state, rates, short_formats
from chance_oracles import chain_of, expected_payoff, solved, weights, with_ends
from chance_timeouts import best_of, decided, lifted
from hypothesis import given, settings
from hypothesis import strategies as st

from knowledge.chances import (
    RallyRates,
    gain_if_kept,
    gain_this_rally,
    match_chance,
    timeout_worth,
    weight_to_come,
)
from knowledge.game import GameFormat, GameState, MatchState, start

CASES = tomllib.loads(
    (Path(__file__).parents[1] / "cases" / "chances_coach.toml").read_text("utf-8")
)
COACH = RallyRates(serving=0.44, receiving=0.56)
CLOSE = 1e-12
POINT = 0.01
drawn_rates = st.builds(RallyRates, serving=rates, receiving=rates)


def state_of(case: dict[str, Any]) -> GameState:
    """The case's state, in a game that the side serving at 0-0-2 started."""
    ours, theirs, who, server = case["state"]
    return GameState(
        format=replace(COMMON, target=case.get("target", 11)),
        ours=ours,
        theirs=theirs,
        we_serve=who == "us",
        server=server,
        we_started=True,
    )


@pytest.mark.parametrize("case", CASES["gain"], ids=lambda case: str(case["name"]))
def test_gains_the_review_computed(case: dict[str, Any]) -> None:
    """The numbers of `chances_coach.toml`, to the digit printed."""
    serving, receiving = case["points"]
    of_match = case.get("of_match", False)
    gain = gain_if_kept(
        MatchState(game=state_of(case)),
        COACH,
        serving_points=serving,
        receiving_points=receiving,
        of_match=of_match,
    )
    assert round(100 * gain, 1) == case["gain"]


def test_a_gain_in_one_rally_of_five() -> None:
    """`chances_coach.toml` prints +1.3: a fifth of 6.5 (1.30).

    Played out with the fifth added to both rates it is 1.38, as gains shrink on the way up.
    """
    match = MatchState(game=state_of(CASES["gain"][0]))
    whole = gain_if_kept(match, COACH, serving_points=2, receiving_points=2)
    fifth = gain_if_kept(match, COACH, serving_points=0.4, receiving_points=0.4)
    assert round(100 * whole / 5, 1) == 1.3
    assert round(100 * fifth, 2) == 1.38


@pytest.mark.parametrize("case", CASES["lift"], ids=lambda case: str(case["state"]))
def test_three_points_on_the_next_four_rallies(case: dict[str, Any]) -> None:
    """`chances_coach.toml`; where its print differs, the chain's own number stands."""
    state = state_of(case)
    worth = timeout_worth(state, COACH, points=3, rallies=4, left=1)
    chain = chain_of(COMMON)
    now, _, none = decided(chain, 0.44, 0.56, lift=0.03, rallies=4, left=1)
    expected = chain.at(now, state) - chain.at(none, state)
    assert worth.now - worth.none == pytest.approx(expected, abs=CLOSE)
    assert round(100 * (worth.now - worth.none), 1) == case["gain"]
    assert abs(case["printed"] - 100 * expected) < 0.1


@settings(max_examples=50, deadline=None)
@given(format_and_state(short_formats), drawn_rates, st.floats(-4, 4), st.floats(-4, 4))
def test_a_gain_if_kept_is_the_difference_of_two_games(
    drawn: tuple[GameFormat, GameState], at: RallyRates, serving: float, receiving: float
) -> None:
    """Rates stay within 0 and 1. Near their ends a game takes ever longer, and rounding errors grow
    as the chance of the rarest rally shrinks: by half an ulp over it."""
    format, state = drawn
    chain = chain_of(format)
    p = min(max(at.serving + POINT * serving, 1e-9), 1.0)
    q = min(max(at.receiving + POINT * receiving, 0.0), 1 - 1e-9)
    raised = chain.at(expected_payoff(chain, p, q), state)
    base = chain.at(expected_payoff(chain, at.serving, at.receiving), state)
    gain = gain_if_kept(
        MatchState(game=state), at, serving_points=serving, receiving_points=receiving
    )
    rarest = min(rate for rate in (p, 1 - q, at.serving, 1 - at.receiving) if rate > 0)
    rounding = 8 * sys.float_info.epsilon / rarest
    assert gain == pytest.approx(raised - base, abs=max(1e-8, rounding))


@settings(max_examples=50, deadline=None)
@given(format_and_state(short_formats), drawn_rates, st.floats(-2, 2))
def test_a_gain_this_rally_is_its_weight(
    drawn: tuple[GameFormat, GameState], at: RallyRates, points: float
) -> None:
    """V is linear in this rally's chance alone."""
    format, state = drawn
    chain = chain_of(format)
    weight = chain.at(weights(chain, at.serving, at.receiving), state)
    gain = gain_this_rally(MatchState(game=state), at, points)
    assert gain == pytest.approx(POINT * points * weight, abs=CLOSE)


@settings(max_examples=40, deadline=None)
@given(format_and_state(short_formats), drawn_rates)
def test_the_weight_to_come_is_the_slope_of_the_chance(
    drawn: tuple[GameFormat, GameState], at: RallyRates
) -> None:
    """As the sum of visits × weight on the chain, and as a central difference quotient."""
    format, state = drawn
    chain = chain_of(format)
    swings = weights(chain, at.serving, at.receiving)
    chance = chain.win_rally(at.serving, at.receiving)
    summed = chain.at(solved(chain, chance, lambda _: 0.0, swings), state)
    slope = weight_to_come(MatchState(game=state), at)
    assert slope == pytest.approx(summed, rel=1e-10, abs=CLOSE)
    step = 1e-5
    up, down = (
        chain.at(expected_payoff(chain, at.serving + d, at.receiving + d), state)
        for d in (step, -step)
    )
    assert slope == pytest.approx((up - down) / (2 * step), rel=1e-4, abs=1e-6)


LIFTS = [
    (COMMON, 3, 4, 1),
    (COMMON, 3, 4, 2),
    (COMMON, 8, 1, 2),
    (COMMON, -2, 4, 1),
    (SINGLES, 1, 3, 2),
    (replace(COMMON, cap=13), 3, 3, 2),
]
LATE = [(4, 7, True), (6, 9, False), (8, 8, False), (10, 10, True), (10, 9, True)]


@pytest.mark.parametrize(("format", "points", "rallies", "left"), LIFTS)
def test_time_outs_against_value_iteration(
    format: GameFormat, points: float, rallies: int, left: int
) -> None:
    chain = chain_of(format)
    lift = POINT * points
    now, kept, none = decided(chain, 0.44, 0.56, lift=lift, rallies=rallies, left=left)
    for ours, theirs, we_serve in LATE:
        state = start(format, we_serve=we_serve)
        state = replace(state, ours=ours, theirs=theirs, starter_serves=None)
        worth = timeout_worth(state, COACH, points=points, rallies=rallies, left=left)
        assert worth.now == pytest.approx(chain.at(now, state), abs=1e-10)
        assert worth.none == pytest.approx(chain.at(none, state), abs=CLOSE)
        assert worth.kept == pytest.approx(chain.at(kept, state), abs=1e-10)


@pytest.mark.parametrize(("ours", "theirs", "we_serve"), LATE)
@pytest.mark.parametrize("left", [1, 2])
def test_a_pause_that_is_worth_more_now(ours: int, theirs: int, we_serve: bool, left: int) -> None:
    """Out of breath, one now lifts 3 points where one at another moment would lift 1."""
    chain = chain_of(COMMON)
    state = start(COMMON, we_serve=we_serve)
    state = replace(state, ours=ours, theirs=theirs, starter_serves=None)
    worth = timeout_worth(state, COACH, points=1, points_now=3, rallies=4, left=left)
    _, kept, none = decided(chain, 0.44, 0.56, lift=0.01, rallies=4, left=left)
    spare = none if left == 1 else best_of(chain, 0.44, 0.56, lift=0.01, rallies=4, left=left - 1)
    raised = np.clip(chain.win_rally(0.44, 0.56) + 0.03, 0, 1)
    assert worth.now == pytest.approx(chain.at(lifted(chain, raised, spare, 4), state), abs=1e-10)
    assert worth.kept == pytest.approx(chain.at(kept, state), abs=1e-10)


def test_a_time_out_at_the_start_of_a_game() -> None:
    """The longest way to look ahead: two left, and every rally of the game to come."""
    state = start(COMMON, we_serve=True)
    worth = timeout_worth(state, COACH, points=3, rallies=4, left=2)
    chain = chain_of(COMMON)
    expected = decided(chain, 0.44, 0.56, lift=0.03, rallies=4, left=2)
    found = [worth.now, worth.kept, worth.none]
    assert found == pytest.approx([chain.at(one, state) for one in expected], abs=1e-10)


def test_a_lift_for_all_remaining_rallies_is_a_gain_if_kept() -> None:
    """A time-out whose lift outlasts the game is the same as a change that is kept."""
    state = state_of(CASES["gain"][-1])
    match = MatchState(game=state)
    kept = gain_if_kept(match, COACH, serving_points=2, receiving_points=2)
    worth = timeout_worth(state, COACH, points=2, rallies=400, left=1)
    assert worth.now - worth.none == pytest.approx(kept, abs=1e-10)
    chain = chain_of(COMMON)
    values = with_ends(chain, expected_payoff(chain, 0.44, 0.56))
    long = lifted(chain, chain.win_rally(0.46, 0.58), values, 400)
    assert chain.at(long, state) == pytest.approx(worth.now, abs=1e-10)


def test_a_match_gain_is_the_difference_of_two_matches() -> None:
    match = MatchState(game=state_of(CASES["gain"][0]), games_theirs=1)
    gain = gain_if_kept(match, COACH, serving_points=2, receiving_points=1, of_match=True)
    difference = match_chance(match, 0.46, 0.57) - match_chance(match, 0.44, 0.56)
    assert gain == pytest.approx(difference, abs=CLOSE)
