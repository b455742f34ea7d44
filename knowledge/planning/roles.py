"""Who of us does what in the rally to come: server, receiver, or the partner of either."""

from __future__ import annotations

from knowledge.dataclass import dataclass
from knowledge.game import Discipline, receiver, server
from knowledge.planning.line import Line, Phase
from knowledge.situation import OnCourt, Situation
from knowledge.vocabulary import PlayerId


@dataclass(frozen=True, slots=True, kw_only=True)
class Roles:
    """`bound` serves or receives, `free` is the partner; None where the score settles neither."""

    we_serve: bool
    bound: OnCourt | None = None
    free: OnCourt | None = None
    asks_free: bool = False

    def may_use(self, line: Line) -> bool:
        """Whether the line speaks to somebody who can use it in this rally."""
        return line.suits(we_serve=self.we_serve) and self._is_for(line.who, line)

    def _is_for(self, who: PlayerId | None, line: Line) -> bool:
        if who is None or self.bound is None:
            return True
        # Of a line for one of us: the receiver's returns, the server's serves, else either's.
        return who == self.bound.player or (line.we_serve is None and self.we_serve)

    def is_for_bound(self, line: Line) -> bool:
        """Whether it is the first ball, which only the one bound by the score plays."""
        return line.phase in (Phase.SERVE, Phase.RETURN)

    def fits_free(self, line: Line) -> bool:
        """Whether the partner can use it: every ball but the first one, and nobody else's line."""
        if self.is_for_bound(line) or (line.phase is Phase.OURS and not self._is_free(line)):
            return False
        return line.who is None or self._is_free(line)

    def _is_free(self, line: Line) -> bool:
        return self.free is not None and line.who == self.free.player


def roles_of(situation: Situation, *, we_serve: bool) -> Roles:
    """By the rulebook at the score; without names where nobody said who started where."""
    game = situation.game
    who = None
    if game is not None and not game.is_over and game.we_serve is we_serve:
        who = server(game) if we_serve else receiver(game)
    bound = next((one for one in situation.ours if one.player == who), None)
    free = None
    if bound is not None and game is not None and game.format.discipline is Discipline.DOUBLES:
        free = next((one for one in situation.ours if one.player != bound.player), None)
    return Roles(
        we_serve=we_serve,
        bound=bound,
        free=free,
        asks_free=free is not None and situation.asker == free.player,
    )
