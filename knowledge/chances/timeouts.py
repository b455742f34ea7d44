"""What a time-out is worth: now against later, by a small dynamic programme over the game.

The programme takes a time-out to lift our rally chance by some points for the next few rallies
and asks, state by state, whether to use one now or to keep it. That it does so at all is an
assumption (common practice, no source); the arithmetic on it is exact. A change of tactics
that lasts is no case for it: that is worth `gains.gain_if_kept`, and more the earlier.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import Final, TypeAlias

import numpy as np
from numpy.typing import NDArray

from knowledge.chances.game_table import game_table, points_needed
from knowledge.chances.rates import RallyRates
from knowledge.game import GameState, after
from knowledge.vocabulary import POINT

Values: TypeAlias = NDArray[np.float64]

CACHED_PROGRAMMES: Final = 64

WON, LOST = -1, -2
"""Places of the two ends: behind every state of the game."""


@dataclass(frozen=True, slots=True, kw_only=True)
class TimeoutWorth:
    """Our chance to win the game: using one now, keeping it for its best moment, using none.

    `now` counts what is left used at its best moments too.
    """

    now: float
    kept: float
    none: float

    @property
    def is_time(self) -> bool:
        """Whether now is the best moment for one."""
        return self.now >= self.kept


@lru_cache(maxsize=CACHED_PROGRAMMES)
def timeout_worth(
    state: GameState, rates: RallyRates, *, points: float, rallies: int, left: int
) -> TimeoutWorth:
    """The worth of `left` time-outs that each lift the next `rallies` rallies by `points`.

    ValueError for no time-out, a lift of no rally, or a game that is over.
    """
    if left < 1 or rallies < 1 or state.is_over:
        raise ValueError(f"nothing to weigh: {left} left, {rallies} rallies, at {state.call}")
    game_table(state.format, rates.serving, rates.receiving)  # raises for an endless game
    chain = _Chain.of(state, rates)
    kept = none = chain.stopped_at(np.full(len(chain.ours), -np.inf))
    for _ in range(left):
        now = kept
        for _ in range(rallies):
            now = chain.after_a_rally(now, lift=points * POINT)
        kept = chain.stopped_at(now)
    return TimeoutWorth(
        now=float(now[0]),
        kept=float(chain.after_a_rally(kept, lift=0.0)[0]),
        none=float(none[0]),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Chain:
    """The states from one on, first that one: where a rally leads, and our chance to win it."""

    ours: NDArray[np.int64]
    theirs: NDArray[np.int64]
    chance: Values

    @classmethod
    def of(cls, state: GameState, rates: RallyRates) -> _Chain:
        """Every state that rallies may lead to, the levels past the tie folded into one."""
        first = _folded(state)
        places, queue, links = {first: 0}, [first], []
        for one in queue:
            link = []
            for won in (True, False):
                following = after(one, won_by_us=won)
                link.append(_place(following, places, queue))
            links.append(link)
        chance = [rates.serving if one.we_serve else rates.receiving for one in queue]
        ours, theirs = np.array(links, dtype=np.int64).T
        return cls(ours=ours, theirs=theirs, chance=np.array(chance))

    def after_a_rally(self, values: Values, *, lift: float) -> Values:
        """What each state is worth if one rally is played from it, then `values` hold."""
        ended = np.concatenate((values, (0.0, 1.0)))
        chance = np.clip(self.chance + lift, 0.0, 1.0)
        return chance * ended[self.ours] + (1 - chance) * ended[self.theirs]

    def stopped_at(self, taken: Values) -> Values:
        """The worth of each state where one may play on or take `taken`, whichever is better.

        Optimal stopping by policy iteration (Howard 1960; from memory): each policy is solved
        exactly, none comes twice, so it ends with the best one.
        """
        stops = np.zeros(len(taken), dtype=bool)
        while True:
            values = self._playing_on(stops, taken)
            better = taken > self.after_a_rally(values, lift=0.0) + _ROUNDING
            if (better == stops).all():
                return values
            stops = better

    def _playing_on(self, stops: NDArray[np.bool_], taken: Values) -> Values:
        size = len(self.chance)
        moves, worth = np.eye(size), np.where(stops, taken, 0.0)
        for ends, share in ((self.ours, self.chance), (self.theirs, 1 - self.chance)):
            worth += np.where(~stops & (ends == WON), share, 0.0)
            inside = ~stops & (ends >= 0)
            np.subtract.at(moves, (np.flatnonzero(inside), ends[inside]), share[inside])
        return np.asarray(np.linalg.solve(moves, worth), dtype=np.float64)


_ROUNDING = 1e-13
"""Stopping must gain more than rounding, or two equal policies could take turns."""


def _place(state: GameState, places: dict[GameState, int], queue: list[GameState]) -> int:
    """The state's place in the chain, made if it is new."""
    if state.we_won is not None:
        return WON if state.we_won else LOST
    folded = _folded(state)
    if folded not in places:
        places[folded] = len(queue)
        queue.append(folded)
    return places[folded]


def _folded(state: GameState) -> GameState:
    """The state as the score sees it: no names, and past the tie only the difference."""
    format = state.format
    past = 0
    if format.cap is None:
        past = max(0, max(state.ours, state.theirs) - points_needed(format) + 1)
    return GameState(
        format=format,
        ours=state.ours - past,
        theirs=state.theirs - past,
        we_serve=state.we_serve,
        server=state.server,
    )
