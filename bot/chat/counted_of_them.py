"""What was counted of one of them: "okafor 60% drop 40% drive", "hale 3 of 5 lobs long"."""

from __future__ import annotations

from bot.chat.message import Message, opponents
from bot.chat.view import ChatView
from knowledge.regex import regex

_COUNT = regex(r"\d ?%|\b\d{1,3} ?(?:of|out of|/) ?\d{1,3}\b")


def counts_theirs(message: Message, chat: ChatView) -> bool:
    """Whether a name of theirs opens it and shares follow, with nothing asked: it is to be kept,
    and how we should play that ball ourselves is asked otherwise."""
    named = opponents(message.mentions[:1], chat)
    begins = bool(named) and message.said[0].span[0] == named[0].span[0]
    return begins and not message.asks and _COUNT.search(message.text) is not None
