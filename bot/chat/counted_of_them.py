"""What was counted of one of them: "okafor 60% drop 40% drive", "hale 3 of 5 lobs long"."""

from __future__ import annotations

from bot.chat.message import Message, opponents
from bot.chat.view import ChatView
from bot.chat.words import folded_line
from knowledge.regex import regex

_COUNT = regex(r"\d ?%|\b\d{1,3} ?(?:of|out of|/) ?\d{1,3}\b")


_OF_OURS = regex(
    r"(?:about |only |just |like |so )*\d{1,3} (?:of|out of|in) (?:my |our |the |last )*\d{1,3}"
    r" (?:of )?(?:my |our |the )*(?:balls?|dinks?|thirds?|3rds?|drops?|drives?|lobs?|returns?"
    r"|serves?|shots?|speed ?ups?|spd ?ups?|ones)\b"
)
"""`4 of 9 balls i sped at okafor came back`: what became of ours against them."""


def counts_theirs(message: Message, chat: ChatView) -> bool:
    """Whether a name of theirs opens it and shares follow, or a count of our balls at them, with
    nothing asked: it is to be kept, and how we should play that ball is asked otherwise."""
    named = opponents(message.mentions[:1], chat)
    begins = bool(named) and message.said[0].span[0] == named[0].span[0]
    is_counted = begins or (bool(named) and _OF_OURS.match(folded_line(message.said)) is not None)
    return is_counted and not message.asks and _COUNT.search(message.text) is not None
