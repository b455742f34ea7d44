"""The chance to win a game from each of its states, exactly: backward from the end, score by score.

Each score is solved in closed form (serve_loop), the tie too (tie); nothing is iterated to
convergence and nothing simulated. The same sweep counts the rallies still to come.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import lru_cache
from typing import Generic, TypeAlias, cast

from knowledge.chances.rates import (
    EndlessGameError,
    Number,
    checked,
    never_scores,
    within_0_and_1,
)
from knowledge.chances.serve_loop import (
    Cell,
    Counting,
    EveryRally,
    FrozenGamePoint,
    OneServer,
    ServeLoop,
    TwoServers,
)
from knowledge.chances.tie import tie_of_every_rally, tie_of_one_server, tie_of_two_servers
from knowledge.dataclass import dataclass
from knowledge.game import GameFormat, GameState, Scoring, after, faults

CACHED_TABLES = 64
"""Tables of single rates kept in memory, about 20 kB each to 11; one takes 70 µs."""

Loop: TypeAlias = (
    TwoServers[Number] | OneServer[Number] | EveryRally[Number] | FrozenGamePoint[Number]
)


class StateError(ValueError):
    """A state that no game reaches; the message lists every fault."""


def checked_state(state: GameState) -> None:
    """StateError, with every fault, unless a game reaches the state."""
    wrong = faults(state)
    if wrong:
        raise StateError(" ".join(wrong))


@dataclass(frozen=True, slots=True, kw_only=True)
class GameTable(Generic[Number]):
    """A value for each state of a game; for `game_table` our chance to win it.

    `rows[k][m]` is the score where we need k + 1 more points to win and they m + 1, if nobody
    has to win by two; `beyond` holds the scores between the tie and a cap.
    """

    format: GameFormat
    rows: Sequence[Sequence[Cell[Number]]]
    beyond: Mapping[tuple[int, int], Cell[Number]]
    won: Cell[Number]
    lost: Cell[Number]
    counts_rallies: bool = False

    def win_chance(self, state: GameState) -> Number:
        """The value at a state, that of the end if it is over.

        StateError for a state that no game of this format reaches.
        """
        if state.format != self.format:
            raise StateError(f"a game {state.format} is no game {self.format}")
        checked_state(state)
        return self.at(state)

    def at(self, state: GameState) -> Number:
        """The same for a state that is known to be sound."""
        if state.we_won is not None:
            return (self.won if state.we_won else self.lost)[0]
        cell = self._cell(state.ours, state.theirs)
        serves = 0 if state.we_serve else len(cell) // 2
        value = cell[serves + (state.server == 2)]
        return value if self.counts_rallies else within_0_and_1(value)

    def _cell(self, ours: int, theirs: int) -> Cell[Number]:
        if (ours, theirs) in self.beyond:
            return self.beyond[ours, theirs]
        last = len(self.rows) - 1
        # Past the tie only the difference counts: 13-12 is 10-9 again.
        past = max(0, max(ours, theirs) - last)
        return self.rows[last - ours + past][last - theirs + past]

    def rally_weight(self, state: GameState) -> Number:
        """What the next rally swings: the value after winning it less that after losing it.

        StateError as in `win_chance`; GameOverError where no rally follows.
        """
        checked_state(state)
        return self.at(after(state, won_by_us=True)) - self.at(after(state, won_by_us=False))


def game_table(format: GameFormat, serving: Number, receiving: Number) -> GameTable[Number]:
    """Our chance to win a game from each state, at these rally chances (or arrays of them).

    RateError for a chance outside 0 to 1, EndlessGameError where the game could never end.
    """
    if isinstance(serving, float) and isinstance(receiving, float):
        return cast("GameTable[Number]", _remembered(format, serving, receiving))
    return solved(format, serving, receiving)


@lru_cache(maxsize=CACHED_TABLES)
def _remembered(format: GameFormat, serving: float, receiving: float) -> GameTable[float]:
    return solved(format, serving, receiving)


def solved(
    format: GameFormat,
    serving: Number,
    receiving: Number,
    *,
    counts_rallies: bool = False,
) -> GameTable[Number]:
    """The sweep, for our chance to win or, with nothing to win, for the rallies still to come."""
    checked(serving, receiving)
    if never_scores(serving, receiving) and _needs_a_serve_won(format):
        raise EndlessGameError("if the serving side loses every rally, this game never ends")
    zero = serving * 0 + receiving * 0
    ways = 4 if format.has_two_servers else 2
    won, lost = (zero if counts_rallies else zero + 1,) * ways, (zero,) * ways
    loop = loop_of(format, serving, receiving, won=won, lost=lost, per_rally=int(counts_rallies))
    rallies = loop.rallies_to_a_point() if counts_rallies else lost
    tie, beyond = tie_and_beyond(format, loop, won, lost, rallies)
    sweep = counting(loop) if counts_rallies else loop
    length = points_needed(format)
    row = [tie, *sweep.row([won] * (length - 1), tie)]
    rows = [row]
    for _ in range(length - 1):
        row = sweep.row(row, lost)
        rows.append(row)
    return GameTable(
        format=format, rows=rows, beyond=beyond, won=won, lost=lost, counts_rallies=counts_rallies
    )


def counting(loop: Loop[Number]) -> ServeLoop[Number]:
    """The loop with every rally counted; a frozen one counts by itself."""
    return loop if isinstance(loop, FrozenGamePoint) else Counting(loop)


def points_needed(format: GameFormat) -> int:
    """Points at which the first score stands where two in a row, or one, end the game, plus one.

    That is the target, but two where it is one and must be won by two.
    """
    needed = max(format.target, format.win_by)
    return needed if format.cap is None else min(needed, format.cap)


def loop_of(
    format: GameFormat,
    serving: Number,
    receiving: Number,
    *,
    won: Cell[Number],
    lost: Cell[Number],
    per_rally: int = 0,
) -> Loop[Number]:
    """How the serve goes round in that format."""
    if format.has_two_servers:
        return TwoServers(serving, receiving)
    if format.scoring is Scoring.SIDE_OUT:
        return OneServer(serving, receiving)
    if format.freeze_on_serve:
        return FrozenGamePoint(serving, receiving, won=won, lost=lost, per_rally=per_rally)
    return EveryRally(serving, receiving)


def _needs_a_serve_won(format: GameFormat) -> bool:
    """Whether no game ends while the serving side loses every rally."""
    if format.scoring is Scoring.SIDE_OUT or format.freeze_on_serve:
        return True
    return format.win_by == 2 and format.cap is None


def tie_and_beyond(
    format: GameFormat,
    loop: Loop[Number],
    won: Cell[Number],
    lost: Cell[Number],
    rallies: Cell[Number],
) -> tuple[Cell[Number], dict[tuple[int, int], Cell[Number]]]:
    """The last level score before the game may end, and the scores from there to a cap.

    `rallies` is what is added until each next point, by how the serve stands.
    """
    level = points_needed(format) - 1
    if format.win_by == 2 and format.cap is None:
        return _tie(loop, won[0], lost[0], rallies), {}
    top = level if format.win_by == 1 or format.cap is None else format.cap - 1
    sweep = loop if rallies is lost else counting(loop)
    tie = sweep.row([won], lost)[0]
    beyond = {}
    for points in range(top, level, -1):
        beyond[points, points] = tie
        up = beyond[points, points - 1] = sweep.row([won], tie)[0]
        down = beyond[points - 1, points] = sweep.row([tie], lost)[0]
        tie = sweep.row([up], down)[0]
    return tie, beyond


def _tie(loop: Loop[Number], won: Number, lost: Number, rallies: Cell[Number]) -> Cell[Number]:
    if isinstance(loop, TwoServers):
        return tie_of_two_servers(loop, won, lost, rallies)
    if isinstance(loop, OneServer):
        return tie_of_one_server(loop, won, lost, rallies)
    return tie_of_every_rally(loop, won, lost, rallies)
