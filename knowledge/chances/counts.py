"""What else the sweep over a game tells: its length, shutouts, what serving first is worth."""

from __future__ import annotations

from functools import lru_cache
from typing import cast

from knowledge.chances.game_table import (
    CACHED_TABLES,
    GameTable,
    checked_state,
    game_table,
    loop_of,
    points_needed,
    solved,
)
from knowledge.chances.rates import Number, checked, within_0_and_1
from knowledge.game import GameFormat, GameState, start


def expected_rallies(state: GameState, serving: Number, receiving: Number) -> Number:
    """Rallies still to come in this game, on average; errors as in `game_table`."""
    if isinstance(serving, float) and isinstance(receiving, float):
        return cast(Number, _lengths(state.format, serving, receiving).win_chance(state))
    return _counted(state.format, serving, receiving).win_chance(state)


def _counted(format: GameFormat, serving: Number, receiving: Number) -> GameTable[Number]:
    return solved(format, serving, receiving, counts_rallies=True)


@lru_cache(maxsize=CACHED_TABLES)
def _lengths(format: GameFormat, serving: float, receiving: float) -> GameTable[float]:
    return _counted(format, serving, receiving)


def shutout_chance(state: GameState, serving: Number, receiving: Number, *, ours: bool) -> Number:
    """The chance that we (or they) win this game with the other side still at 0.

    In one-server scoring it is aⁿ serving first and q aⁿ receiving, a = p/(1 - fq) (Keller
    1984, SIAM Review 26:267, for equal sides).
    """
    if not ours:
        return shutout_chance(_mirrored(state), 1 - receiving, 1 - serving, ours=True)
    checked(serving, receiving)
    checked_state(state)
    zero = serving * 0 + receiving * 0
    if state.theirs > 0 or state.we_won is False:
        return zero
    if state.we_won:
        return zero + 1
    ways = 4 if state.format.has_two_servers else 2
    won, spoilt = (zero + 1,) * ways, (zero,) * ways
    # A point of theirs spoils it but ends no game, unless one point does: no frozen one then.
    last = spoilt if points_needed(state.format) == 1 else ()
    loop = loop_of(state.format, serving, receiving, won=won, lost=last)
    column = won
    for _ in range(points_needed(state.format) - state.ours):
        column = loop.row([column], spoilt)[0]
    serves = 0 if state.we_serve else ways // 2
    return within_0_and_1(column[serves + (state.server == 2)])


def _mirrored(state: GameState) -> GameState:
    """The same game from the other side of the net."""
    return GameState(
        format=state.format,
        ours=state.theirs,
        theirs=state.ours,
        we_serve=not state.we_serve,
        server=state.server,
    )


def serve_first_worth(format: GameFormat, serving: Number, receiving: Number) -> Number:
    """How much likelier we win one game if we serve first than if they do."""
    table = game_table(format, serving, receiving)
    return table.at(start(format, we_serve=True)) - table.at(start(format, we_serve=False))
