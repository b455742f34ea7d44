"""A rally that was played: the state it was played at, and whose it was."""

from __future__ import annotations

from collections.abc import Sequence

from knowledge.dataclass import dataclass
from knowledge.game.match import MatchState
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


def up_to_now(played: Sequence[PlayedRally], now: MatchState | None) -> Sequence[PlayedRally]:
    """The last of them without a gap in between, or up to `now` where that is known.

    A score or a game's end that was told instead leaves rallies out, and what they were is not
    known: nothing is said of "the last ten" across them.
    """
    if not played or (now is not None and not _goes_on(played[-1], now.game, _games_of(now))):
        return ()
    first = len(played) - 1
    while first and _goes_on(played[first - 1], played[first].before, played[first].games):
        first -= 1
    return played[first:]


def _games_of(match: MatchState) -> tuple[int, int]:
    return match.games_ours, match.games_theirs


def _goes_on(rally: PlayedRally, game: GameState, games: tuple[int, int]) -> bool:
    """Whether nothing was played between the rally and that state, which may be a new game's."""
    if games == rally.games:
        return _is_same(rally.next, game)
    ended = rally.next.is_over and sum(games) == sum(rally.games) + 1
    return ended and (game.ours, game.theirs) == (0, 0)


def _is_same(one: GameState, other: GameState) -> bool:
    return (one.ours, one.theirs, one.we_serve) == (other.ours, other.theirs, other.we_serve)


def lost_in_a_row(played: Sequence[PlayedRally], now: MatchState | None = None) -> int:
    """How many rallies we have lost since we last won one, since a break, or since points were
    told that nobody tapped; none where such points came last, as `now` shows."""
    count = 0
    following: PlayedRally | None = None
    for rally in reversed(up_to_now(played, now)):
        if rally.won_by_us or (following is not None and not _led_to(rally, following)):
            break
        count += 1
        following = rally
    return count


def _led_to(rally: PlayedRally, following: PlayedRally) -> bool:
    """Whether the one rally came right after the other."""
    same = _is_same(rally.next, following.before)
    return same and rally.games == following.games and not following.after_timeout
