"""The solver against published numbers, two earlier computations and exact fractions.

Sources: the origin lines of `chances_published.toml`; DeFord and Ethier 2023, arXiv 2303.02942
(abstract, read). Fractions are worked out by `chance_elimination`, too.
"""

from __future__ import annotations

import tomllib
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest
from chance_elimination import eliminated
from chance_formats import COMMON, SHORT_FORMATS, SINGLES
from chance_oracles import chain_of, folded, walk
from hypothesis import given, settings
from hypothesis import strategies as st

from knowledge.chances import expected_rallies, game_table, serve_first_worth
from knowledge.game import GameFormat, GameState, start

CASES = tomllib.loads(
    (Path(__file__).parents[1] / "cases" / "chances_published.toml").read_text("utf-8")
)
HALF = Fraction(1, 2)
FLOAT_CLOSE = 1e-13


def state_of(case: dict[str, Any]) -> GameState:
    ours, theirs, who, number = case["state"]
    return GameState(
        format=COMMON if number else SINGLES,
        ours=ours,
        theirs=theirs,
        we_serve=who == "us",
        server=number or None,
    )


def rates_of(case: dict[str, Any]) -> tuple[Fraction, Fraction]:
    return Fraction(case["p"]), Fraction(case["q"])


def has_digits(value: float | Fraction, digits: str) -> bool:
    """Whether the value rounds to the digits printed."""
    places = len(digits.partition(".")[2])
    return f"{float(value):.{places}f}" == digits


@pytest.mark.parametrize("case", CASES["value"], ids=lambda case: str(case["name"]))
def test_values_in_fractions(case: dict[str, Any]) -> None:
    """Exact rates give an exact value: the one that was published, and the second method's."""
    state, (serving, receiving) = state_of(case), rates_of(case)
    table = game_table(state.format, serving, receiving)
    value = table.win_chance(state)
    assert isinstance(value, Fraction)
    chain = chain_of(state.format)
    assert value == eliminated(chain, serving, receiving)[chain.index[folded(state)]]
    assert "exact" in case or "digits" in case
    if "exact" in case:
        assert value == Fraction(case["exact"])
    if "digits" in case:
        assert has_digits(value, case["digits"])
    if "weight" in case:
        assert has_digits(table.rally_weight(state), case["weight"])


@pytest.mark.parametrize("case", CASES["value"], ids=lambda case: str(case["name"]))
def test_the_same_values_in_floats(case: dict[str, Any]) -> None:
    state, (serving, receiving) = state_of(case), rates_of(case)
    exact = game_table(state.format, serving, receiving).win_chance(state)
    table = game_table(state.format, float(serving), float(receiving))
    assert table.win_chance(state) == pytest.approx(float(exact), abs=FLOAT_CLOSE)


@pytest.mark.parametrize("case", CASES["rallies"], ids=lambda case: str(case["name"]))
def test_expected_rallies_as_published(case: dict[str, Any]) -> None:
    state, (serving, receiving) = state_of(case), rates_of(case)
    assert has_digits(expected_rallies(state, float(serving), float(receiving)), case["digits"])


def test_shares_of_a_hundred_are_exact_in_every_state() -> None:
    serving, receiving = Fraction(42, 100), Fraction(63, 100)
    chain = chain_of(COMMON)
    table = game_table(COMMON, serving, receiving)
    exact = eliminated(chain, serving, receiving)
    assert [table.win_chance(state) for state in chain.playing] == exact


fractions = st.fractions(Fraction(1, 20), Fraction(19, 20), max_denominator=20)


@settings(max_examples=25, deadline=None)
@given(st.sampled_from(SHORT_FORMATS), fractions, fractions)
def test_any_fractions_are_exact_in_any_format(
    format: GameFormat, serving: Fraction, receiving: Fraction
) -> None:
    chain = chain_of(format)
    exact = eliminated(chain, serving, receiving)
    table = game_table(format, serving, receiving)
    for row in range(0, len(exact), 7):
        assert table.win_chance(chain.playing[row]) == exact[row]


@pytest.mark.parametrize("target", [2, 3, 5, 11, 15, 21])
def test_the_walk_finds_as_many_states_as_published(target: int) -> None:
    """DeFord and Ethier 2023: the doubles game to n is a chain of 4n² + 10 states.

    This is the oracle's own check. Counted as they must have: four servers at each of the n²
    scores below n (level scores beyond n − 1 counted as n − 1 each), four at each of the two
    scores one point ahead of that tie, and one state each for won and lost: 4n² + 8 + 2.
    """
    format = GameFormat(target=target)
    chain = walk([start(format, we_serve=True)])
    assert len(chain.playing) + len({end.we_won for end in chain.ends}) == 4 * target**2 + 10


def test_serving_first_is_slightly_worse_to_11_and_slightly_better_to_15() -> None:
    """DeFord and Ethier 2023, between equal sides; "very slightly": under one in a million."""
    to_11 = serve_first_worth(GameFormat(target=11), HALF, HALF)
    to_15 = serve_first_worth(GameFormat(target=15), HALF, HALF)
    assert -1e-6 < to_11 < 0 < to_15 < 1e-6


def test_serving_first_is_worth_the_difference_of_the_two_starts() -> None:
    """Twice what is missing to one half between equal sides; in singles it is something."""
    start_of_doubles = Fraction(820159908044849, 1640319824218750)
    assert serve_first_worth(COMMON, HALF, HALF) == 2 * start_of_doubles - 1
    singles = Fraction(1029410239, 1937102445)
    assert serve_first_worth(SINGLES, HALF, HALF) == 2 * singles - 1
