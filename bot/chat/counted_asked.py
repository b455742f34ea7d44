"""Whose the rally just told was, asked behind it: "is that our point" after their fault was told.

With no rally told last, and no question of rules before it, nothing tells what happened: then it is
the rulebook's, which asks.
"""

from __future__ import annotations

from bot.chat.message import Message
from bot.chat.said import RemarkSaid, ScoreRemark
from bot.chat.view import ChatView
from knowledge.rulebook.whose_point import asks_only_whose


def counted_asked(message: Message, chat: ChatView) -> RemarkSaid | None:
    """The request how it was counted; None unless nothing else is said, and a rally came last."""
    if not chat.match_on or chat.forwarded or chat.asked_last:
        return None
    if not asks_only_whose(message.text):
        return None
    return RemarkSaid(text=message.text, remark=ScoreRemark.COUNTED_AS)
