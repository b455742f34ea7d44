"""By how much either side leads the running game, and what each still needs."""

from __future__ import annotations

from itertools import count

from bot.chat.answers.desk import Desk
from bot.chat.answers.scoreboard import scoreboard
from bot.chat.render import rows
from bot.chat.reply import Reply
from bot.chat.wording import wording
from knowledge.game import GameState
from scouting_db.values import MatchId


def lead_told(desk: Desk, match: MatchId) -> Reply:
    """How it stands, then the lead; the score alone where none is kept or the game is over."""
    text, buttons = scoreboard(desk, match, ask_starters=False)
    known = desk.match_state()
    lines = [text] if known is None or known.game.is_over else [text, _lead(known.game)]
    return Reply(text="\n".join(lines), buttons=rows(buttons), about=("match", match))


def _lead(game: GameState) -> str:
    by = game.ours - game.theirs
    key = "ahead" if by > 0 else "behind" if by < 0 else "level"
    return wording(f"score.lead.{key}").format(
        by=abs(by), ours=_missing(game, ours=True), theirs=_missing(game, ours=False)
    )


def _missing(game: GameState, *, ours: bool) -> int:
    """The fewest points that would win the game, the other side scoring no more."""
    own, other = (game.ours, game.theirs) if ours else (game.theirs, game.ours)
    return next(more for more in count(1) if game.format.is_won(own + more, other))
