"""A rally that was played: the state it was played at, and whose it was."""

from __future__ import annotations

from collections.abc import Sequence

from knowledge.dataclass import dataclass
from knowledge.game.state import GameState, after


@dataclass(frozen=True, slots=True, kw_only=True)
class PlayedRally:
    """The state before the rally, who won it, and what it was tagged with when it was logged.

    `games` are the games won before this one in the match, ours and theirs; `after_timeout`
    says that a time-out came right before it.
    """

    before: GameState
    won_by_us: bool
    tags: tuple[str, ...] = ()
    games: tuple[int, int] = (0, 0)
    after_timeout: bool = False

    @property
    def next(self) -> GameState:
        """The state it led to; GameOverError if the game was over before it."""
        return after(self.before, won_by_us=self.won_by_us)


def lost_in_a_row(played: Sequence[PlayedRally]) -> int:
    """How many rallies we have lost since we last won one, since a break, or since points were
    told that nobody tapped."""
    count = 0
    following: PlayedRally | None = None
    for rally in reversed(played):
        if rally.won_by_us or (following is not None and not _led_to(rally, following)):
            break
        count += 1
        following = rally
    return count


def _led_to(rally: PlayedRally, following: PlayedRally) -> bool:
    """Whether the one rally came right after the other."""
    came, began = rally.next, following.before
    same = (came.ours, came.theirs, came.we_serve) == (began.ours, began.theirs, began.we_serve)
    return same and rally.games == following.games and not following.after_timeout
