"""Whether a name of a message can only be somebody of the running match."""

from __future__ import annotations

from bot.chat.said import Certainty, Mention
from bot.chat.view import ChatView


def is_of_one_side(mention: Mention, chat: ChatView) -> bool:
    """Whether everybody who may be meant plays on the same side of the match.

    While nobody has said whom we play, all but ours may be theirs.
    """
    players = set(mention.players)
    if not players or mention.certainty is Certainty.NOBODY:
        return False
    if players <= set(chat.ours):
        return True
    return not players & set(chat.ours) and (not chat.theirs or bool(players & set(chat.theirs)))
