"""What a time-out is worth: now against later, by a small dynamic programme over the game.

The programme takes a time-out to lift our rally chance by some points for the next few rallies
and asks, state by state, whether to use one now or to keep it. That it does so at all is an
assumption (common practice, no source); the arithmetic on it is exact. A change of tactics
that lasts is no case for it: that is worth `gains.gain_if_kept`, and more the earlier.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from functools import lru_cache
from types import MappingProxyType
from typing import Final, TypeAlias

import numpy as np
from numpy.typing import NDArray

from knowledge.chances.game_table import game_table, points_needed
from knowledge.chances.rates import RallyRates
from knowledge.dataclass import dataclass
from knowledge.game import GameFormat, GameState, after, start
from knowledge.vocabulary import POINT

Values: TypeAlias = NDArray[np.float64]

CACHED_PROGRAMMES: Final = 64
CACHED_WALKS: Final = 16

Places: TypeAlias = NDArray[np.int64]

WON, LOST = -1, -2
"""Places of the two ends: behind every state of the game."""

_ENDS = (0.0, 1.0)
"""What they are worth, lost and won."""

_ROUNDING = 1e-13
"""Stopping must gain more than rounding, or two equal policies could take turns."""


@dataclass(frozen=True, slots=True, kw_only=True)
class TimeoutWorth:
    """Our chance to win the game: using one now, keeping it for its best moment, using none.

    `now` counts what is left used at its best moments too.
    """

    now: float
    kept: float
    none: float


@lru_cache(maxsize=CACHED_PROGRAMMES)
def timeout_worth(
    state: GameState,
    rates: RallyRates,
    *,
    points: float,
    points_now: float | None = None,
    rallies: int,
    left: int,
) -> TimeoutWorth:
    """The worth of `left` time-outs that each lift the next `rallies` rallies by `points`.

    `points_now` is what one would lift now, where that is more than at another moment.

    ValueError for no time-out, a lift of no rally, or a game that is over; StateError and
    EndlessGameError as in `game_table`.
    """
    if left < 1 or rallies < 1 or state.is_over:
        raise ValueError(f"nothing to weigh: {left} left, {rallies} rallies, at {state.call}")
    table = game_table(state.format, rates.serving, rates.receiving)
    none = table.win_chance(state)
    game = _Game(walk=_walked(state.format), rates=rates, begins=_folded(state))
    here = game.walk.places[_folded(state)]
    kept = np.array([table.at(one) for one in game.walk.states])
    for _ in range(left):
        without, kept = kept, game.stopped_at(game.lifted(kept, points, rallies))
    lift_now = points if points_now is None else points_now
    return TimeoutWorth(
        now=float(game.lifted(without, lift_now, rallies)[here]),
        kept=float(game.after_a_rally(kept, lift=0.0)[here]),
        none=none,
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Walk:
    """The states of a format and where a rally leads from each, the levels past the tie as one.

    `blocks` hold the places of states that lead to one another, none of which comes back once
    left: one score, or the tie with the scores next to it. They come from the game's end.
    """

    states: tuple[GameState, ...]
    places: Mapping[GameState, int]
    ours: Places
    theirs: Places
    we_serve: NDArray[np.bool_]
    blocks: tuple[tuple[tuple[int, int], Places], ...]


@lru_cache(maxsize=CACHED_WALKS)
def _walked(format: GameFormat) -> _Walk:
    queue = [_folded(start(format, we_serve=we_serve)) for we_serve in (True, False)]
    if format.has_two_servers:
        # 0-0-1 follows from no first serve but may be asked about all the same.
        queue += [replace(one, server=1) for one in queue]
    places = {one: place for place, one in enumerate(queue)}
    links = []
    for one in queue:
        following = (after(one, won_by_us=won) for won in (True, False))
        links.append([_place(each, places, queue) for each in following])
    ours, theirs = np.array(links, dtype=np.int64).T
    groups: dict[tuple[int, int], list[int]] = {}
    for place, one in enumerate(queue):
        groups.setdefault(_score_of(one), []).append(place)
    return _Walk(
        states=tuple(queue),
        places=MappingProxyType(places),
        ours=ours,
        theirs=theirs,
        we_serve=np.array([one.we_serve for one in queue]),
        blocks=tuple(
            (score, np.array(groups[score])) for score in sorted(groups, key=sum, reverse=True)
        ),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Game:
    """A walk with the rally chances, from one state on."""

    walk: _Walk
    rates: RallyRates
    begins: GameState

    @property
    def chance(self) -> Values:
        """Our chance to win the next rally, state by state."""
        return np.where(self.walk.we_serve, self.rates.serving, self.rates.receiving)

    def after_a_rally(self, values: Values, *, lift: float) -> Values:
        """What each state is worth if one rally is played from it, then `values` hold."""
        ended = np.concatenate((values, _ENDS))
        chance = np.clip(self.chance + lift, 0.0, 1.0)
        return chance * ended[self.walk.ours] + (1 - chance) * ended[self.walk.theirs]

    def lifted(self, values: Values, points: float, rallies: int) -> Values:
        """What each state is worth if the next rallies are played so many points better."""
        for _ in range(rallies):
            values = self.after_a_rally(values, lift=points * POINT)
        return values

    def stopped_at(self, taken: Values) -> Values:
        """The worth of each state where one may play on or take `taken`, whichever is better.

        Only scores that may still come are solved; the rest stays 0.
        """
        ended = np.concatenate((np.zeros(len(taken)), _ENDS))
        chance = self.chance
        for (ours, theirs), places in self.walk.blocks:
            if ours >= self.begins.ours and theirs >= self.begins.theirs:
                won, lost = self.walk.ours[places], self.walk.theirs[places]
                share = chance[places]
                moves = _inside(places, won, share) + _inside(places, lost, 1 - share)
                # The block's own values are 0 still, so this is what leaves it.
                leaves = share * ended[won] + (1 - share) * ended[lost]
                ended[places] = _stopped(moves, leaves, taken[places])
        return np.asarray(ended[:-2], dtype=np.float64)


def _inside(places: Places, ends: Places, share: Values) -> Values:
    """The chances of a rally that stays within the block."""
    return np.where(ends[:, None] == places, share[:, None], 0.0)


def _stopped(moves: Values, leaves: Values, taken: Values) -> Values:
    """Optimal stopping by policy iteration (Howard 1960; from memory).

    Each policy is solved exactly, a better one follows, none comes twice: so it ends, with the
    best one, after a few.
    """
    stops = np.zeros(len(taken), dtype=bool)
    while True:
        inside = np.where(stops[:, None], 0.0, moves)
        worth = np.where(stops, taken, leaves)
        values = np.linalg.solve(np.eye(len(taken)) - inside, worth)
        better = taken > moves @ values + leaves + _ROUNDING
        if (better == stops).all():
            return np.asarray(values, dtype=np.float64)
        stops = better


def _score_of(state: GameState) -> tuple[int, int]:
    """The block of a state: its score, or the tie with the two scores next to it."""
    format = state.format
    tie = points_needed(format) - 1
    by_two = format.win_by == 2 and format.cap is None
    if (
        by_two
        and min(state.ours, state.theirs) >= tie - 1
        and state.ours + state.theirs >= 2 * tie - 1
    ):
        return tie, tie
    return state.ours, state.theirs


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
