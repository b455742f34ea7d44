"""A rally that was played: the state it was played at, and whose it was."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from knowledge.game.state import GameState, after


@dataclass(frozen=True, slots=True, kw_only=True)
class PlayedRally:
    """The state before the rally, who won it, and what it was tagged with when it was logged.

    `games` are the games won before this one in the match, ours and theirs.
    """

    before: GameState
    won_by_us: bool
    tags: tuple[str, ...] = ()
    games: tuple[int, int] = (0, 0)

    @property
    def next(self) -> GameState:
        """The state it led to; GameOverError if the game was over before it."""
        return after(self.before, won_by_us=self.won_by_us)


def lost_in_a_row(played: Sequence[PlayedRally]) -> int:
    """How many rallies we have lost since we last won one."""
    count = 0
    for rally in reversed(played):
        if rally.won_by_us:
            break
        count += 1
    return count
