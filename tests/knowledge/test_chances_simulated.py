"""The solver against 100,000 simulated games, by rules told a second time.

A share of games lies within four standard errors of its chance, and so does a mean; the generator
starts from a fixed number, so that the outcome is the same in every run.
"""

from __future__ import annotations

import math

import numpy as np
import pytest
from chance_formats import COMMON, SINGLES
from chance_simulation import Played, Rules, play

from knowledge.chances import expected_rallies, game_table, shutout_chance
from knowledge.game import GameFormat, GameState, Scoring, start

GAMES = 100_000
ERRORS = 4.0
FIRST_NUMBER = 20_250_621

RALLY = GameFormat(scoring=Scoring.RALLY)
CASES = {
    "doubles": (COMMON, Rules()),
    "doubles to 15": (GameFormat(target=15), Rules(target=15)),
    "doubles to 11, cap 13": (GameFormat(cap=13), Rules(cap=13)),
    "doubles to 11, win by 1": (GameFormat(win_by=1), Rules(margin=1)),
    "singles": (SINGLES, Rules(servers=1)),
    "rally": (RALLY, Rules(every_rally_scores=True)),
    "rally to 21, frozen": (
        GameFormat(target=21, scoring=Scoring.RALLY, freeze_on_serve=True),
        Rules(target=21, every_rally_scores=True, win_on_serve_only=True),
    ),
    "rally to 15, win by 1, frozen": (
        GameFormat(target=15, win_by=1, scoring=Scoring.RALLY, freeze_on_serve=True),
        Rules(target=15, margin=1, every_rally_scores=True, win_on_serve_only=True),
    ),
}


def simulated(
    rules: Rules,
    serving: float,
    receiving: float,
    *,
    score: tuple[int, int] = (0, 0),
    left: int = 1,
) -> Played:
    return play(
        rules,
        serving=serving,
        receiving=receiving,
        games=GAMES,
        random=np.random.default_rng(FIRST_NUMBER),
        ours=score[0],
        theirs=score[1],
        left=left,
    )


def is_near(share: float, chance: float) -> bool:
    return abs(share - chance) < ERRORS * math.sqrt(chance * (1 - chance) / GAMES)


@pytest.mark.parametrize("name", CASES)
def test_simulated_games(name: str) -> None:
    (format, rules), (serving, receiving) = CASES[name], (0.42, 0.55)
    opening = start(format, we_serve=True)
    games = simulated(rules, serving, receiving)
    chance = game_table(format, serving, receiving).win_chance(opening)
    assert is_near(games.we_won.mean(), chance)
    spread = games.rallies.std() / math.sqrt(GAMES)
    length = expected_rallies(opening, serving, receiving)
    assert abs(games.rallies.mean() - length) < ERRORS * spread


@pytest.mark.parametrize("name", ["doubles", "singles", "rally"])
def test_simulated_shutouts(name: str) -> None:
    format, rules = CASES[name]
    games = simulated(rules, 0.6, 0.7)
    chance = shutout_chance(start(format, we_serve=True), 0.6, 0.7, ours=True)
    assert is_near((games.we_won & (games.theirs == 0)).mean(), chance)


@pytest.mark.parametrize(("ours", "theirs", "server"), [(10, 9, 2), (4, 7, 1), (10, 10, 1)])
def test_simulated_from_the_middle_of_a_game(ours: int, theirs: int, server: int) -> None:
    state = GameState(format=COMMON, ours=ours, theirs=theirs, we_serve=True, server=server)
    games = simulated(Rules(), 0.42, 0.58, score=(ours, theirs), left=3 - server)
    assert is_near(games.we_won.mean(), game_table(COMMON, 0.42, 0.58).win_chance(state))
