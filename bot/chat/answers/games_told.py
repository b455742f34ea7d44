"""The finished games of the running match: asked for, or one of them told without its points."""

from __future__ import annotations

from bot.chat.answers.desk import Desk
from bot.chat.answers.scoreboard import scoreboard
from bot.chat.match_results import finished_games
from bot.chat.render import rows
from bot.chat.reply import Reply
from bot.chat.wording import wording
from scouting_db.values import MatchId


def games_so_far(desk: Desk, match: MatchId, *, then: str | None = None) -> Reply:
    """Each game's score, ours first, and `then`, or how the match stands now."""
    log = desk.log()
    games = finished_games(log)
    told = " ".join(f"{ours}-{theirs}" for ours, theirs in games)
    line = wording("score.games").format(games=told) if games else wording("score.no_games")
    stands, buttons = scoreboard(desk, match, ask_starters=True)
    if then is None and log.match.game.is_over and len(games) == 1:
        return Reply(text=stands, buttons=rows(buttons), about=("match", match))
    text = "\n".join([line, stands if then is None else then])
    return Reply(text=text, buttons=rows(buttons), about=("match", match))


def games_without_points(desk: Desk, match: MatchId, told: int | None) -> Reply:
    """The points are asked for, unless as many games as were told stand in the log already."""
    is_kept = told is not None and len(finished_games(desk.log())) >= told
    return games_so_far(desk, match, then=None if is_kept else wording("score.game_points"))
