"""Rates of exactly 0 or 1 and next to them, games that cannot end, and input that is wrong.

What must come out follows from the rules by reasoning, named beside each case; values close to a
limit are compared with exact fractions. Warnings are errors in our tests, so a division by zero
would show.
"""

from __future__ import annotations

import math
import re
from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction

import numpy as np
import pytest
from chance_elimination import eliminated
from chance_formats import COMMON, FORMATS, SINGLES, at, label, playing_states
from chance_oracles import chain_of

from knowledge.chances import (
    EndlessGameError,
    PlayedRally,
    RallyRates,
    RateBelief,
    RateError,
    expected_rallies,
    gain_if_kept,
    gain_this_rally,
    game_table,
    outlook,
    shutout_chance,
    swings,
    timeout_worth,
    toss_worth,
    weight_to_come,
)
from knowledge.game import GameFormat, GameState, MatchState, Scoring, after, faults, start

RALLY_21 = GameFormat(target=21, scoring=Scoring.RALLY)
RALLY_21_BY_1 = replace(RALLY_21, win_by=1)


def played_out(state: GameState, serving: float, receiving: float) -> GameState | None:
    """The end of a game whose rallies are certain; None if it comes back to where it was."""
    seen: set[GameState] = set()
    while not state.is_over:
        if state in seen or state.ours + state.theirs > 200:
            return None
        seen.add(state)
        state = after(state, won_by_us=(serving if state.we_serve else receiving) == 1)
    return state


CERTAIN = [(1.0, 1.0), (0.0, 0.0), (1.0, 0.0)]


@pytest.mark.parametrize("format", FORMATS, ids=label)
def test_certain_rallies_give_certain_games(format: GameFormat) -> None:
    """With p = 1 and q = 0 whoever serves keeps the serve and scores to the end."""
    states = playing_states(format)
    for serving, receiving in CERTAIN:
        table = game_table(format, serving, receiving)
        for state in states[:: 1 + len(states) // 15]:
            end = played_out(state, serving, receiving)
            assert end is not None
            assert table.win_chance(state) == (1 if end.we_won else 0)
            assert 0 <= table.rally_weight(state) <= 1


@pytest.mark.parametrize(("serving", "receiving", "rallies"), [(1, 1, 11), (0, 0, 12), (1, 0, 11)])
def test_rallies_of_a_certain_doubles_game(serving: int, receiving: int, rallies: int) -> None:
    """We start and win 11 in a row; or lose the serve and then 11 in a row."""
    opening = start(COMMON, we_serve=True)
    assert expected_rallies(opening, float(serving), float(receiving)) == rallies


@pytest.mark.parametrize(
    ("serving", "receiving", "ours", "theirs"),
    [(1, 1, 1, 0), (0, 0, 0, 1), (1, 0, 1, 0), (0, 0.5, 0, 1), (0.5, 1, 1, 0)],
)
def test_shutouts_at_the_limits(serving: float, receiving: float, ours: int, theirs: int) -> None:
    """p = 0: in side-out we never score; q = 1: they never do."""
    opening = start(COMMON, we_serve=True)
    assert shutout_chance(opening, serving, receiving, ours=True) == ours
    assert shutout_chance(opening, serving, receiving, ours=False) == theirs


@pytest.mark.parametrize("receiving", [0.0, 0.3, 0.5, 0.999])
@pytest.mark.parametrize("format", [COMMON, SINGLES])
def test_who_never_wins_a_rally_on_serve_never_scores(format: GameFormat, receiving: float) -> None:
    """Side-out: 0 from every state, since what stays unfinished cannot be won."""
    table = game_table(format, 0.0, receiving)
    assert all(table.win_chance(state) == 0 for state in playing_states(format))


@pytest.mark.parametrize("serving", [0.001, 0.5, 1.0])
def test_who_wins_every_rally_on_return_loses_no_point(serving: float) -> None:
    """Side-out with q = 1: they never score, so we win from everywhere."""
    table = game_table(COMMON, serving, 1.0)
    values = [table.win_chance(state) for state in playing_states(COMMON)]
    assert values == pytest.approx([1.0] * len(values), abs=1e-14)


ENDLESS = [format for format in FORMATS if played_out(start(format, we_serve=True), 0, 1) is None]
ENDING = [format for format in FORMATS if format not in ENDLESS]


def test_which_games_cannot_end() -> None:
    """Side-out: nobody ever scores. Rally: they alternate, up to a cap or a win by 1."""
    assert all(format in ENDLESS for format in FORMATS if format.scoring is Scoring.SIDE_OUT)
    assert RALLY_21 in ENDLESS
    assert replace(RALLY_21, cap=25) in ENDING
    assert RALLY_21_BY_1 in ENDING
    assert replace(RALLY_21_BY_1, freeze_on_serve=True) in ENDLESS


@pytest.mark.parametrize("format", ENDLESS, ids=label)
def test_a_game_that_cannot_end_is_named_as_such(format: GameFormat) -> None:
    opening = start(format, we_serve=True)
    with pytest.raises(EndlessGameError):
        game_table(format, 0.0, 1.0).win_chance(opening)
    with pytest.raises(EndlessGameError):
        expected_rallies(opening, 0.0, 1.0)
    with pytest.raises(EndlessGameError):
        game_table(format, np.array([0.5, 0.0]), np.array([0.5, 1.0])).win_chance(opening)


@pytest.mark.parametrize("format", ENDING, ids=label)
def test_a_game_that_ends_all_the_same_is_answered(format: GameFormat) -> None:
    """The serve's loser wins every rally, so points alternate until the game is over."""
    table = game_table(format, 0.0, 1.0)
    for we_serve in (True, False):
        opening = start(format, we_serve=we_serve)
        end = played_out(opening, 0, 1)
        assert end is not None
        assert table.win_chance(opening) == (1 if end.we_won else 0)
        assert expected_rallies(opening, 0.0, 1.0) == end.ours + end.theirs


EDGES = [Fraction(1, 10**12), 1 - Fraction(1, 10**12), Fraction(1, 2)]


@pytest.mark.parametrize("receiving", EDGES, ids=str)
@pytest.mark.parametrize("serving", EDGES, ids=str)
@pytest.mark.parametrize("format", [COMMON, SINGLES, RALLY_21], ids=str)
def test_next_to_the_limits_values_stay_accurate(
    format: GameFormat, serving: Fraction, receiving: Fraction
) -> None:
    """Against exact fractions of the very floats that go in; 1e-9 as asked for everywhere.

    Where p is next to 0 and q next to 1, 1 − f²q² loses digits if it is computed as written.
    """
    p, q = float(serving), float(receiving)
    chain = chain_of(format)
    states = range(0, len(chain.playing), 9)
    exact = eliminated(chain, Fraction(p), Fraction(q))
    table = game_table(format, p, q)
    worst = max(abs(float(exact[n]) - table.win_chance(chain.playing[n])) for n in states)
    assert worst < 1e-9


@pytest.mark.parametrize("wrong", [-0.01, 1.01, math.nan, math.inf, -math.inf, 42])
def test_a_rate_that_is_none_is_refused(wrong: float) -> None:
    opening = start(COMMON, we_serve=True)
    for p, q in ((wrong, 0.5), (0.5, wrong)):
        with pytest.raises(RateError):
            RallyRates(serving=p, receiving=q)
        with pytest.raises(RateError):
            game_table(COMMON, p, q)
        with pytest.raises(RateError):
            game_table(COMMON, np.array([0.5, p]), np.array([0.5, q]))
        with pytest.raises(RateError):
            expected_rallies(opening, p, q)
        with pytest.raises(RateError):
            shutout_chance(opening, p, q, ours=True)


def test_gains_in_a_game_that_cannot_end() -> None:
    """The same error from everything that weighs a score, not a division by zero."""
    state, rates = start(COMMON, we_serve=True), RallyRates(serving=0.0, receiving=1.0)
    match = MatchState(game=state)
    answers: tuple[Callable[[], object], ...] = (
        lambda: gain_if_kept(match, rates, serving_points=1),
        lambda: gain_this_rally(match, rates, 1),
        lambda: weight_to_come(match, rates),
        lambda: timeout_worth(state, rates, points=3, rallies=4, left=1),
        lambda: toss_worth(COMMON, rates, end_points=0),
        lambda: swings([PlayedRally(before=state, won_by_us=True)], rates),
        lambda: outlook(match, RateBelief(serving=0.0, receiving=1.0)),
    )
    for answer in answers:
        with pytest.raises(EndlessGameError):
            answer()


def test_a_refused_rate_is_named() -> None:
    """Errors name the input and what was expected."""
    with pytest.raises(RateError, match=r"1\.2"):
        RallyRates(serving=1.2, receiving=0.5)


IMPOSSIBLE = [
    at(14, 3, we_serve=True, server=1),
    at(-1, 3, we_serve=True, server=3),
    replace(at(3, 3, we_serve=True, server=1), server=None),
    at(5, -2, we_serve=False, server=0),
    at(30, 12, we_serve=False, server=7),
    replace(at(3, 3, we_serve=True), server=2),
]


@pytest.mark.parametrize("state", IMPOSSIBLE, ids=lambda state: str(state.call))
def test_an_impossible_state_is_refused_with_every_fault(state: GameState) -> None:
    table = game_table(state.format, 0.42, 0.63)
    answers: tuple[Callable[[], float], ...] = (
        lambda: table.win_chance(state),
        lambda: table.rally_weight(state),
        lambda: expected_rallies(state, 0.42, 0.63),
        lambda: shutout_chance(state, 0.42, 0.63, ours=True),
    )
    assert faults(state)
    for answer in answers:
        with pytest.raises(ValueError, match=re.escape(faults(state)[0])) as refused:
            answer()
        assert all(fault in str(refused.value) for fault in faults(state))
