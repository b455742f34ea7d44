"""The mix against one who learns our shares: the definition, a general solver, and its price.

Sources: scipy's SLSQP as the second method; the condition of an optimum on a simplex (Karush, Kuhn
and Tucker, any text on convex optimisation) as the definition.
"""

from __future__ import annotations

import random
from collections.abc import Sequence

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import minimize

from knowledge.effects import OptionId
from knowledge.mixing import (
    Guessable,
    Mix,
    mix_of,
    pattern_loss_of,
    unguessed_chances,
    watched_mix_of,
)
from knowledge.vocabulary import RallyChance

EXACT = 1e-9
SEED = 5


def options_of(*rows: tuple[float, float]) -> tuple[Guessable, ...]:
    """A chance and a cost each."""
    return tuple(
        Guessable(option=OptionId(f"o{place}"), chance=RallyChance(chance), cost=cost)
        for place, (chance, cost) in enumerate(rows)
    )


def shares(mix: Mix) -> list[float]:
    return [mix.shares[one.option] for one in mix.options]


def against_a_learner(options: Sequence[Guessable], played: Sequence[float]) -> float:
    """V of the module: our chance once each ball is waited for as often as we play it."""
    return sum(
        share * (unguessed - one.cost * share)
        for one, unguessed, share in zip(options, unguessed_chances(options), played, strict=True)
    )


rows = st.tuples(
    st.floats(min_value=0.3, max_value=0.7), st.one_of(st.just(0.0), st.floats(0.001, 0.2))
)
games = st.lists(rows, min_size=1, max_size=7)
costly = st.lists(st.tuples(st.floats(0.3, 0.7), st.floats(0.001, 0.2)), min_size=1, max_size=7)


@given(games)
def test_every_option_that_is_in_gains_alike_and_none_that_is_out_gains_more(
    game: list[tuple[float, float]],
) -> None:
    mix = watched_mix_of(options_of(*game))
    played = shares(mix)
    assert sum(played) == pytest.approx(1)
    assert all(share >= 0 for share in played)
    slopes = [
        chance - 2 * one.cost * share
        for chance, one, share in zip(
            unguessed_chances(mix.options), mix.options, played, strict=True
        )
    ]
    level = max(slopes)
    for slope, share in zip(slopes, played, strict=True):
        if share > EXACT:
            assert slope == pytest.approx(level, abs=1e-7)


def test_a_general_solver_finds_no_better() -> None:
    rng = random.Random(SEED)
    for _ in range(100):
        game = [(rng.uniform(0.4, 0.6), rng.uniform(0.01, 0.15)) for _ in range(rng.randint(2, 6))]
        mix = watched_mix_of(options_of(*game))
        unguessed = np.array(unguessed_chances(mix.options))
        cost = np.array([one.cost for one in mix.options])
        found = minimize(
            lambda f, a=unguessed, c=cost: -(f @ a - f**2 @ c),
            np.full(len(game), 1 / len(game)),
            bounds=[(0, 1)] * len(game),
            constraints={"type": "eq", "fun": lambda f: f.sum() - 1},
            method="SLSQP",
            options={"ftol": 1e-12, "maxiter": 500},
        )
        ours = against_a_learner(mix.options, shares(mix))
        assert ours >= -found.fun - EXACT, game
        assert ours == pytest.approx(-found.fun, abs=1e-6), game


@given(costly)
def test_it_does_no_worse_than_the_exact_mix_there_and_gives_a_best_guesser_an_eighth_at_most(
    game: list[tuple[float, float]],
) -> None:
    options = options_of(*game)
    mix, exact = watched_mix_of(options), mix_of(options)
    unguessed, played = unguessed_chances(options), shares(mix)
    assert against_a_learner(options, played) >= against_a_learner(options, shares(exact)) - EXACT
    assert against_a_learner(options, played) >= exact.value - EXACT
    average = sum(a * f for a, f in zip(unguessed, played, strict=True))
    worst = average - max(one.cost * f for one, f in zip(options, played, strict=True))
    assert exact.value - worst <= max(one.cost for one in options) / 8 + EXACT
    assert pattern_loss_of(mix, mix.shares) == pytest.approx(exact.value - worst)


def test_the_better_one_leads_by_its_lead() -> None:
    """Two of cost c: a half and lead / (4 c); every ball from a lead of 2 c on, by hand."""
    assert shares(watched_mix_of(options_of((0.5, 0.1), (0.5, 0.1)))) == pytest.approx([0.5, 0.5])
    assert shares(watched_mix_of(options_of((0.6, 0.1), (0.5, 0.1)))) == pytest.approx([0.75, 0.25])
    assert watched_mix_of(options_of((0.7, 0.1), (0.5, 0.1))).is_every_ball


def test_what_guessing_costs_nothing_takes_the_rest() -> None:
    """a = .54 and z = .52 of a guess-proof one: (a - z) / (2 c) = .02 / .08, by hand."""
    mix = watched_mix_of(options_of((0.52, 0.04), (0.52, 0.0)))
    assert shares(mix) == pytest.approx([0.25, 0.75])


@given(games)
def test_its_figures_are_those_against_the_best_reply(game: list[tuple[float, float]]) -> None:
    """Only the shares are for a learner: value, worth and losses are the exact solution's."""
    mix, exact = watched_mix_of(options_of(*game)), mix_of(options_of(*game))
    assert (mix.value, mix.worth) == (exact.value, exact.worth)
    assert (mix.pattern_loss, mix.guesses) == (exact.pattern_loss, exact.guesses)


def test_a_habit_gives_away_what_the_mix_is_worth() -> None:
    """Two alike of cost .1: one waits for the only ball that comes and takes a half of it back."""
    options = tuple(
        Guessable(option=OptionId(f"o{n}"), chance=RallyChance(0.5), cost=0.1, recent=recent)
        for n, recent in enumerate((20, 0))
    )
    mix = watched_mix_of(options)
    assert mix.worth == pytest.approx(0.05)
    assert mix.pattern_loss == pytest.approx(0.05)
    assert watched_mix_of(options_of((0.5, 0.1), (0.5, 0.1))).pattern_loss == 0
