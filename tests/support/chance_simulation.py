"""Games played out by chance, many at a time, by a second telling of the rules.

Written from the rulebook's statements without `knowledge.game`: points, who serves and how many
servers the serving side has left are arrays, one entry per simulated game.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

Bools = NDArray[np.bool_]
Ints = NDArray[np.int64]


@dataclass(frozen=True, slots=True, kw_only=True)
class Rules:
    """`servers`: 2 in doubles side-out, 1 in singles; `every_rally_scores`: rally scoring."""

    target: int = 11
    margin: int = 2
    cap: int | None = None
    servers: int = 2
    every_rally_scores: bool = False
    win_on_serve_only: bool = False

    def has_won(self, points: Ints, against: Ints) -> Bools:
        ahead = (points >= self.target) & (points - against >= self.margin)
        return ahead if self.cap is None else ahead | (points >= self.cap)


@dataclass(frozen=True, slots=True, kw_only=True)
class Played:
    """One entry per game."""

    we_won: Bools
    rallies: Ints
    ours: Ints
    theirs: Ints


@dataclass(slots=True, kw_only=True)
class _Games:
    """Running games; `left` counts the serving side's servers still to lose a rally."""

    ours: Ints
    theirs: Ints
    we_serve: Bools
    left: Ints
    rallies: Ints


def play(
    rules: Rules,
    *,
    serving: float,
    receiving: float,
    games: int,
    random: np.random.Generator,
    ours: int = 0,
    theirs: int = 0,
    we_serve: bool = True,
    left: int = 1,
) -> Played:
    """`games` games from one score to their end; a doubles game starts with one server left."""
    run = _Games(
        ours=np.full(games, ours),
        theirs=np.full(games, theirs),
        we_serve=np.full(games, we_serve),
        left=np.full(games, left),
        rallies=np.zeros(games, dtype=np.int64),
    )
    on = np.arange(games)
    while on.size:
        chance = np.where(run.we_serve[on], serving, receiving)
        _rally(rules, run, on, random.random(on.size) < chance)
        over = rules.has_won(run.ours[on], run.theirs[on])
        over |= rules.has_won(run.theirs[on], run.ours[on])
        on = on[~over]
    return Played(
        we_won=rules.has_won(run.ours, run.theirs),
        rallies=run.rallies,
        ours=run.ours,
        theirs=run.theirs,
    )


def _rally(rules: Rules, run: _Games, on: Ints, we_won: Bools) -> None:
    run.rallies[on] += 1
    server_won = we_won == run.we_serve[on]
    scores = np.ones_like(we_won) if rules.every_rally_scores else server_won
    ours = run.ours[on] + (scores & we_won)
    theirs = run.theirs[on] + (scores & ~we_won)
    if rules.win_on_serve_only:
        ends = rules.has_won(ours, theirs) | rules.has_won(theirs, ours)
        void = ends & ~server_won
        ours, theirs = ours - (void & we_won), theirs - (void & ~we_won)
    run.ours[on], run.theirs[on] = ours, theirs
    left = run.left[on] - ~server_won
    if rules.every_rally_scores:
        left = np.where(server_won, 1, 0)
    passes = left == 0
    run.we_serve[on] = np.where(passes, ~run.we_serve[on], run.we_serve[on])
    run.left[on] = np.where(passes, 1 if rules.every_rally_scores else rules.servers, left)
