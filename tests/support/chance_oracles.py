"""Chances of a game as an absorbing Markov chain, walked by the rulebook and solved as one system.

The states are found by walking `knowledge.game.after`; the linear systems are solved by general
libraries: numpy (dense) and scipy (sparse). Nothing here knows a formula of the score.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from functools import cache
from typing import Any

import numpy as np
from numpy.typing import NDArray
from scipy import sparse
from scipy.sparse.linalg import splu

from knowledge.game import GameFormat, GameState, after, start

Floats = NDArray[np.float64]
Key = tuple[int, int, bool, int | None]
Payoff = Callable[[GameState], float]


def folded(state: GameState) -> Key:
    """What of a state decides the rest of the game, level scores beyond the target folded.

    A game won by 2 without a cap goes on alike from 10-10 and from 14-14. The fold keeps both
    sides above 0, so that what is still a shutout never looks like what is none.
    """
    format, ours, theirs = state.format, state.ours, state.theirs
    if format.win_by == 2 and format.cap is None:
        excess = max(0, min(ours, theirs) - max(format.target - 1, 1))
        ours, theirs = ours - excess, theirs - excess
    return ours, theirs, state.we_serve, state.server


@dataclass(frozen=True, slots=True, kw_only=True)
class Chain:
    """States in which the game is on, then its ends; `on_win` and `on_loss` are their indices.

    `we_serve`, `on_win` and `on_loss` have one entry per state of `playing`.
    """

    playing: tuple[GameState, ...]
    ends: tuple[GameState, ...]
    index: dict[Key, int]
    we_serve: NDArray[np.bool_]
    on_win: NDArray[np.intp]
    on_loss: NDArray[np.intp]

    def at(self, values: Floats, state: GameState) -> float:
        """The entry of `values` (one per state of `playing`) for any state of the chain."""
        return float(values[self.index[folded(state)]])

    def win_rally(self, serving: float, receiving: float) -> Floats:
        """Our chance to win the rally, in every state of `playing`."""
        return np.where(self.we_serve, serving, receiving)


def walk(openings: Sequence[GameState]) -> Chain:
    """Every state that rallies reach from the openings, breadth first."""
    found: dict[Key, GameState] = {}
    waiting = list(openings)
    while waiting:
        state = waiting.pop(0)
        key = folded(state)
        if key in found:
            continue
        ours, theirs, _, _ = key
        found[key] = replace(state, ours=ours, theirs=theirs)
        if not state.is_over:
            waiting += [after(found[key], won_by_us=won) for won in (True, False)]
    playing = [key for key, state in found.items() if not state.is_over]
    ends = [key for key, state in found.items() if state.is_over]
    index = {key: n for n, key in enumerate(playing + ends)}

    def following(won: bool) -> NDArray[np.intp]:
        nexts = (folded(after(found[key], won_by_us=won)) for key in playing)
        return np.array([index[key] for key in nexts], dtype=np.intp)

    return Chain(
        playing=tuple(found[key] for key in playing),
        ends=tuple(found[key] for key in ends),
        index=index,
        we_serve=np.array([found[key].we_serve for key in playing]),
        on_win=following(True),
        on_loss=following(False),
    )


@cache
def chain_of(format: GameFormat) -> Chain:
    """Every state of a game that either side starts."""
    return walk([start(format, we_serve=True), start(format, we_serve=False)])


def we_win(end: GameState) -> float:
    return float(end.we_won is True)


def shutout(*, ours: bool) -> Payoff:
    """1 where that side won and the other has no point."""
    return lambda end: float(end.we_won is ours and min(end.ours, end.theirs) == 0)


def _triplets(chain: Chain, chance: Floats) -> tuple[Floats, Any, Any]:
    """Chance, from and to of every step: our rally, then theirs."""
    rows = np.arange(len(chain.playing))
    return (
        np.concatenate([chance, 1 - chance]),
        np.concatenate([rows, rows]),
        np.concatenate([chain.on_win, chain.on_loss]),
    )


def system(
    chain: Chain, chance: Floats, payoff: Payoff, per_rally: float | Floats
) -> tuple[Any, Floats]:
    """I − Q (sparse) and the right side R·payoff + per_rally, as for any absorbing chain.

    `chance` is ours to win the rally in each state of `playing`.
    """
    chances, rows, columns = _triplets(chain, chance)
    size = len(chain.playing)
    steps = sparse.coo_array(
        (chances, (rows, columns)), shape=(size, size + len(chain.ends))
    ).tocsr()
    right = steps[:, size:] @ np.array([payoff(end) for end in chain.ends]) + per_rally
    return sparse.eye_array(size, format="csr") - steps[:, :size], right


def solved(
    chain: Chain, chance: Floats, payoff: Payoff = we_win, per_rally: float | Floats = 0.0
) -> Floats:
    """Expected payoff at the end plus `per_rally` for every rally, in every state; scipy."""
    matrix, right = system(chain, chance, payoff, per_rally)
    values: Floats = splu(matrix.tocsc()).solve(right)
    return values


def expected_payoff(
    chain: Chain, serving: float, receiving: float, payoff: Payoff = we_win
) -> Floats:
    """Expected payoff at the end, in every state, if our rally chances never change."""
    return solved(chain, chain.win_rally(serving, receiving), payoff)


def expected_payoff_dense(
    chain: Chain, serving: float, receiving: float, payoff: Payoff = we_win
) -> Floats:
    """The same by numpy's dense solver."""
    matrix, right = system(chain, chain.win_rally(serving, receiving), payoff, 0.0)
    return np.linalg.solve(matrix.toarray(), right)


def rallies_to_come(chain: Chain, serving: float, receiving: float) -> Floats:
    """Expected number of rallies until the game ends, in every state."""
    return solved(chain, chain.win_rally(serving, receiving), lambda _: 0.0, 1.0)


def with_ends(chain: Chain, values: Floats) -> Floats:
    """The values with 1 or 0 for each end behind them, so that every index of the chain counts."""
    return np.append(values, [we_win(end) for end in chain.ends])


def weights(chain: Chain, serving: float, receiving: float) -> Floats:
    """What the next rally swings our chance, in every state."""
    values = with_ends(chain, expected_payoff(chain, serving, receiving))
    return values[chain.on_win] - values[chain.on_loss]
