"""A review asked for: of the last match, or how one against whoever is named ended."""

from __future__ import annotations

from bot.chat.answers.desk import Desk
from bot.chat.answers.last_meeting import last_meeting_told
from bot.chat.answers.names import by_pair, settled
from bot.chat.answers.review import review
from bot.chat.answers.reviewed import reviewed
from bot.chat.reply import Reply
from bot.chat.said import BookSaid


def reviewed_or_met(desk: Desk, said: BookSaid) -> Reply:
    """The review of the last match; of another one against whoever is named, how it ended."""
    players = settled(by_pair(desk, said.mentions))
    match = reviewed(desk)
    if not said.mentions or players == () or (match and players and {*players} <= {*match.theirs}):
        return review(desk)
    return last_meeting_told(desk, said)
