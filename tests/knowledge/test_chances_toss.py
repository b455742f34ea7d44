"""What the toss is worth: serving first, and the end that is better to play at.

Against the walked chain with rates that change where the ends do (5.B of the 2025 edition: after
each game, and in a deciding or single game at 6, 8 or 11), and every fall of the games.
"""

from __future__ import annotations

from itertools import product

import numpy as np
import pytest
from chance_formats import COMMON, SINGLES, rates
from chance_oracles import chain_of, solved
from hypothesis import given, settings
from hypothesis import strategies as st

from knowledge.chances import RallyRates, game_across_ends, game_table, toss_worth
from knowledge.game import GameFormat, Scoring, start

CLOSE = 1e-12
POINT = 0.01
FORMATS = (
    COMMON,
    SINGLES,
    GameFormat(target=15, best_of=1),
    GameFormat(target=21, best_of=1),
    GameFormat(best_of=5),
    GameFormat(scoring=Scoring.RALLY),
    GameFormat(cap=13),
    GameFormat(target=7, best_of=1),
)
drawn_rates = st.builds(RallyRates, serving=rates, receiving=rates)


CHANGES_AT = {7: 4, 11: 6, 15: 8, 21: 11}
"""5.B of the 2025 edition; the one to 7 is our reading, since it names none."""

UNEVEN = RallyRates(serving=0.55, receiving=0.62)


def across(format: GameFormat, first: RallyRates, then: RallyRates, *, we_serve: bool) -> float:
    """The chain with `then` in every state at or past the end change."""
    chain = chain_of(format)
    late = [max(one.ours, one.theirs) >= CHANGES_AT[format.target] for one in chain.playing]
    chance = np.where(
        late,
        chain.win_rally(then.serving, then.receiving),
        chain.win_rally(first.serving, first.receiving),
    )
    return chain.at(solved(chain, chance), start(format, we_serve=we_serve))


@settings(max_examples=40, deadline=None)
@given(st.sampled_from(FORMATS), drawn_rates, drawn_rates, st.booleans())
def test_a_game_across_ends(
    format: GameFormat, first: RallyRates, then: RallyRates, we_serve: bool
) -> None:
    chance = game_across_ends(format, first, then, we_serve=we_serve)
    assert chance == pytest.approx(across(format, first, then, we_serve=we_serve), abs=CLOSE)


@settings(max_examples=30, deadline=None)
@given(st.sampled_from(FORMATS), drawn_rates)
def test_ends_that_are_alike_change_nothing(format: GameFormat, at: RallyRates) -> None:
    plain = game_table(format, at.serving, at.receiving).win_chance(start(format, we_serve=True))
    assert game_across_ends(format, at, at, we_serve=True) == pytest.approx(plain, abs=CLOSE)


def _shifted(at: RallyRates, points: float) -> RallyRates:
    by = POINT * points
    return RallyRates(serving=at.serving + by, receiving=at.receiving + by)


def match_from_the_toss(
    format: GameFormat, at: RallyRates, *, end_points: float, better_first: bool, we_serve: bool
) -> float:
    """Every fall of the games; ends and first serve change sides after each."""
    better, worse = _shifted(at, end_points / 2), _shifted(at, -end_points / 2)
    games = []
    for n in range(format.best_of):
        here, there = (better, worse) if (n % 2 == 0) is better_first else (worse, better)
        serves = (n % 2 == 0) is we_serve
        then = there if n == format.best_of - 1 else here
        games.append(across(format, here, then, we_serve=serves))
    total = 0.0
    for wins in product((True, False), repeat=format.best_of):
        if sum(wins) > format.best_of / 2:
            chances = (game if won else 1 - game for game, won in zip(games, wins, strict=True))
            total += float(np.prod(list(chances)))
    return total


@pytest.mark.parametrize("at", [RallyRates(serving=0.44, receiving=0.56), UNEVEN], ids=str)
@pytest.mark.parametrize("end_points", [0, 3, -2])
@pytest.mark.parametrize("format", FORMATS, ids=str)
def test_the_toss_against_every_fall_of_the_games(
    format: GameFormat, end_points: float, at: RallyRates
) -> None:
    """The end as the mean of both first serves, the serve with ends alike."""
    worth = toss_worth(format, at, end_points=end_points)
    starts = [
        match_from_the_toss(format, at, end_points=0, better_first=True, we_serve=serves)
        for serves in (True, False)
    ]
    ends = [
        sum(
            match_from_the_toss(
                format, at, end_points=end_points, better_first=first, we_serve=serves
            )
            for serves in (True, False)
        )
        / 2
        for first in (True, False)
    ]
    alike = [across(format, at, at, we_serve=serves) for serves in (True, False)]
    assert worth.serve_first_game == pytest.approx(alike[0] - alike[1], abs=CLOSE)
    assert worth.serve_first_match == pytest.approx(starts[0] - starts[1], abs=CLOSE)
    assert worth.better_end_first == pytest.approx(ends[0] - ends[1], abs=1e-9)


def test_the_better_end_is_best_kept_for_the_finish_of_a_single_game() -> None:
    """Common practice, no source: the bad end first means the good end for the heavier rallies."""
    at = RallyRates(serving=0.44, receiving=0.56)
    single = toss_worth(GameFormat(target=15, best_of=1), at, end_points=2)
    three = toss_worth(GameFormat(best_of=3), at, end_points=2)
    assert single.better_end_first < 0
    assert abs(three.better_end_first) < abs(single.better_end_first)


def test_serving_first_matters_in_singles_and_hardly_in_doubles() -> None:
    """About nothing in doubles to 11 (DeFord and Ethier 2023, arXiv 2303.02942, abstract read)."""
    at = RallyRates(serving=0.5, receiving=0.5)
    assert abs(toss_worth(COMMON, at, end_points=0).serve_first_game) < 1e-8
    assert toss_worth(SINGLES, at, end_points=0).serve_first_game > 0.05
