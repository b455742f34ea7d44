"""A match: games won, when ends change, and time-outs left."""

from __future__ import annotations

from knowledge.dataclass import dataclass
from knowledge.game.formats import GameFormat
from knowledge.game.state import GameState, start


@dataclass(frozen=True, slots=True, kw_only=True)
class MatchState:
    """Games won so far, the game being played, and the time-outs taken in it."""

    game: GameState
    games_ours: int = 0
    games_theirs: int = 0
    timeouts_used_ours: int = 0
    timeouts_used_theirs: int = 0

    @property
    def format(self) -> GameFormat:
        return self.game.format

    @property
    def games_needed(self) -> int:
        return self.format.games_needed

    @property
    def is_deciding_game(self) -> bool:
        """A single game, or the last that the format allows."""
        return self.games_ours + self.games_theirs == self.format.best_of - 1

    @property
    def we_won(self) -> bool | None:
        """True or False once the match is over, counting the current game; None while it is on."""
        game = self.game.we_won
        if self.games_ours + (game is True) >= self.games_needed:
            return True
        return False if self.games_theirs + (game is False) >= self.games_needed else None

    @property
    def timeouts_left(self) -> tuple[int, int]:
        """Ours and theirs, in this game (2025 edition, 10.A)."""
        allowed = self.format.timeouts
        return (
            max(0, allowed - self.timeouts_used_ours),
            max(0, allowed - self.timeouts_used_theirs),
        )

    def changes_ends_after(self, before: GameState) -> bool:
        """Whether ends change now that `before` became the current game state.

        After every game, and in a deciding game when the first side reaches the end-change
        score (2025 edition, 5.B).
        """
        if self.game.is_over:
            return self.we_won is None and not before.is_over
        at = self.format.end_change_at
        reached = max(self.game.ours, self.game.theirs) == at
        return self.is_deciding_game and reached and max(before.ours, before.theirs) < at

    @property
    def we_serve_next_game(self) -> bool | None:
        """Which side serves the next game first; None where nobody said who began this one.

        The first serve changes sides with the ends (2025 edition, 5.B, from memory).
        """
        return None if self.game.we_started is None else not self.game.we_started

    def next_game(self, *, we_serve: bool) -> MatchState:
        """The match at its next game's start; ValueError during a game or after the match.

        The lineup is carried on, though a pair may start a game with the other partner.
        """
        won = self.game.we_won
        if won is None:
            raise ValueError(f"the game is still on at {self.game.ours}-{self.game.theirs}")
        if self.we_won is not None:
            raise ValueError("the match is over")
        return MatchState(
            game=start(self.format, we_serve=we_serve, lineup=self.game.lineup),
            games_ours=self.games_ours + won,
            games_theirs=self.games_theirs + (not won),
        )
