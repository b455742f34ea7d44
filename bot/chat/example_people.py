"""Whom an example speaks of: the people of this chat, so that it may be sent as it stands."""

from __future__ import annotations

from dataclasses import replace

from bot.chat.asked import Asked
from bot.chat.book_view import BookView
from bot.chat.context import Context
from knowledge.vocabulary import Topic


def with_example(asked: Asked, context: Context, view: BookView) -> Asked:
    """Small talk as asked about an opponent of the match, one spoken of, or one in the book."""
    if asked.topic is not Topic.SMALLTALK_OR_UNKNOWN:
        return asked
    theirs = [row.player for row in view.roster if not row.ours]
    likely = [player for player in (*context.theirs, *context.focus) if player in theirs]
    return replace(asked, about=tuple((likely or theirs)[:1]))
