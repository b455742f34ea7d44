"""What the rally to be played leads to, won or lost: the next state and all that comes with it."""

from __future__ import annotations

from dataclasses import replace

from knowledge.dataclass import dataclass
from knowledge.game.match import MatchState
from knowledge.game.state import GameState, after


@dataclass(frozen=True, slots=True, kw_only=True)
class Outcome:
    """One way the rally may end.

    `is_second_server`: the serve passes to the partner. `ends_change` is None where only the
    game is known, since ends depend on the match.
    """

    next: GameState
    point_for_us: bool
    point_for_them: bool
    is_side_out: bool
    is_second_server: bool
    game_over: bool
    ends_change: bool | None = None

    @property
    def scores(self) -> bool:
        return self.point_for_us or self.point_for_them


@dataclass(frozen=True, slots=True, kw_only=True)
class Outcomes:
    """Both ways the rally may end."""

    if_won: Outcome
    if_lost: Outcome


def outcomes(now: GameState | MatchState) -> Outcomes:
    """What the next rally brings, won and lost by us; GameOverError if the game is over."""
    return Outcomes(if_won=_outcome(now, won_by_us=True), if_lost=_outcome(now, won_by_us=False))


def _outcome(now: GameState | MatchState, *, won_by_us: bool) -> Outcome:
    before = now.game if isinstance(now, MatchState) else now
    following = after(before, won_by_us=won_by_us)
    ends = None
    if isinstance(now, MatchState):
        ends = replace(now, game=following).changes_ends_after(before)
    return Outcome(
        next=following,
        point_for_us=following.ours > before.ours,
        point_for_them=following.theirs > before.theirs,
        is_side_out=following.we_serve is not before.we_serve,
        is_second_server=following.we_serve is before.we_serve
        and following.server != before.server,
        game_over=following.is_over,
        ends_change=ends,
    )
