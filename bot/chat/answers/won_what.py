"""Somebody won, and it was not said whether a rally or the match: a tap or a line tells."""

from __future__ import annotations

from bot.chat.answers.desk import Desk
from bot.chat.answers.scoreboard import score_buttons
from bot.chat.render import rows
from bot.chat.reply import Reply
from bot.chat.wording import wording
from scouting_db.values import MatchId


def won_what(desk: Desk, match: MatchId, *, ours: bool) -> Reply:
    """A tap counts the rally; the match is closed by words that name it."""
    our_rally, their_rally, *_ = score_buttons(match, desk.log().lines + 1)
    text = wording("score.we_won_what" if ours else "score.they_won_what")
    buttons = rows([our_rally if ours else their_rally])
    return Reply(text=text, buttons=buttons, about=("match", match))
