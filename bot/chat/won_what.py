"""A side that won, told with words that leave open what it won: a rally or the match."""

from __future__ import annotations

from bot.chat.message import Message
from bot.chat.results_brief import perhaps_won
from bot.chat.said import RemarkSaid, ScoreRemark
from bot.chat.view import ChatView
from bot.chat.words import folded_line


def won_what(message: Message, chat: ChatView) -> RemarkSaid | None:
    """ "They won cause he poached": it is asked which, since a match closed by mistake is lost."""
    if not chat.match_on or message.asks or message.note.claims:
        return None
    ours = perhaps_won(folded_line(message.told.words))
    if ours is None:
        return None
    return RemarkSaid(text=message.text, remark=ScoreRemark.RALLY_OR_MATCH, ours=ours)
