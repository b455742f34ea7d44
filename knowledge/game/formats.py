"""Formats: what a game is played to, how it scores, and what a match is made of."""

from __future__ import annotations

from enum import StrEnum

from knowledge.dataclass import dataclass


class Scoring(StrEnum):
    """Side-out: only the serving side scores. Rally: every rally scores."""

    SIDE_OUT = "side_out"
    RALLY = "rally"


class Discipline(StrEnum):
    DOUBLES = "doubles"
    SINGLES = "singles"


class RallyRotation(StrEnum):
    """Who serves from where in doubles rally scoring; printed sources differ, so it is named.

    `SWAP_ON_OWN_SERVE`: partners swap courts when they win a rally on their own serve; after a
    side-out the one standing in the court of the score's parity serves (right if even).
    `NEVER_SWAP`: partners keep their courts for the whole game; whoever stands in the court of
    the score's parity serves.
    """

    SWAP_ON_OWN_SERVE = "swap_on_own_serve"
    NEVER_SWAP = "never_swap"


class FormatError(ValueError):
    """A format that cannot be played; the message names the number and what was expected."""


_END_CHANGE_AT = {11: 6, 15: 8, 21: 11}
"""A deciding or single game changes ends at 6 to 11, 8 to 15, 11 to 21 (2025 edition, 5.B)."""

_TIMEOUTS = {11: 2, 15: 2, 21: 3}
"""Time-outs a side has in a game to 11 or 15, and to 21 (2025 edition, 10.A)."""

_TIMEOUTS_EACH = range(4)

_SHORT_GAME, _LONG_GAME = 15, 21
"""Other targets up to 15 have the time-outs of a game to 15, longer ones those of one to 21: our
reading, since the rulebook names only these three; the event decides."""


@dataclass(frozen=True, slots=True, kw_only=True)
class GameFormat:
    """How a game is played; the common one is doubles side-out to 11, win by 2, best of three.

    `cap`: the first side to reach it wins, by one if need be. `freeze_on_serve`: in rally
    scoring the game point counts only on one's own serve (provisional rule of the 2025
    edition; the 2026 edition drops it). FormatError for a format that cannot be played.
    """

    target: int = 11
    win_by: int = 2
    cap: int | None = None
    scoring: Scoring = Scoring.SIDE_OUT
    discipline: Discipline = Discipline.DOUBLES
    best_of: int = 3
    freeze_on_serve: bool = False
    rally_rotation: RallyRotation = RallyRotation.SWAP_ON_OWN_SERVE
    timeouts_each: int | None = None
    """Time-outs of a side in a game as the event has it; None is the rulebook's number."""

    def __post_init__(self) -> None:
        if self.target < 1:
            raise FormatError(f"a game is played to at least 1, not {self.target}")
        if self.win_by not in (1, 2):
            raise FormatError(f"a game is won by 1 or 2, not {self.win_by}")
        if self.cap is not None and self.cap < self.target:
            raise FormatError(f"a cap of {self.cap} lies below the target {self.target}")
        if self.best_of not in (1, 3, 5):
            raise FormatError(f"a match is best of 1, 3 or 5, not {self.best_of}")
        if self.timeouts_each is not None and self.timeouts_each not in _TIMEOUTS_EACH:
            raise FormatError(f"a side has 0 to 3 time-outs a game, not {self.timeouts_each}")
        if self.freeze_on_serve and self.scoring is Scoring.SIDE_OUT:
            raise FormatError("in side-out scoring every point is won on serve already")

    @property
    def has_two_servers(self) -> bool:
        """Doubles side-out: both partners serve before the serve changes sides."""
        return self.discipline is Discipline.DOUBLES and self.scoring is Scoring.SIDE_OUT

    @property
    def games_needed(self) -> int:
        """Games that win the match."""
        return self.best_of // 2 + 1

    @property
    def end_change_at(self) -> int:
        """Points at which a deciding game changes ends; half the target, rounded up, where the
        rulebook names none (our reading; the event decides)."""
        return _END_CHANGE_AT.get(self.target, (self.target + 1) // 2)

    @property
    def timeouts(self) -> int:
        """Time-outs each side has in one game."""
        if self.timeouts_each is not None:
            return self.timeouts_each
        named = self.target if self.target in _TIMEOUTS else None
        return _TIMEOUTS[named or (_SHORT_GAME if self.target <= _SHORT_GAME else _LONG_GAME)]

    def is_won(self, winner: int, loser: int) -> bool:
        """Whether `winner` points against `loser` end the game."""
        if self.cap is not None and winner >= self.cap:
            return winner > loser
        return winner >= self.target and winner - loser >= self.win_by

    def __str__(self) -> str:
        name = "rally scoring" if self.scoring is Scoring.RALLY else "side-out"
        return f"{self.discipline} to {self.target}, {name}, win by {self.win_by}"
