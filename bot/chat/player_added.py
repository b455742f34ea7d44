"""`add okafor`: a name for the book, where "add one to them" puts a rally to the score."""

from __future__ import annotations

from bot.chat.message import Message
from bot.chat.said import BookSaid, BookVerb
from knowledge.regex import regex

_ADDS = regex(
    r"(?:(?:please|ok|so|hey|and|can you|pls) )*(?:add|create)"
    r"(?: (?:a|the|new|player|players|opponent|opponents))*"
)
_BESIDE = frozenset(["and", "with", "to", "the", "my", "our", "book", "roster", "please", "too"])


def player_added(message: Message) -> BookSaid | None:
    """The message, if it adds whom it names and says nothing else."""
    named = [one for one in message.mentions if not one.pronoun]
    if not named or len(named) != len(message.mentions):
        return None
    before = [word for word in message.said if word.span[1] <= named[0].span[0]]
    if _ADDS.fullmatch(" ".join(word.folded for word in before)) is None:
        return None
    after = [word for word in message.said if word.span[0] >= named[0].span[0]]
    beside = [
        word.folded
        for word in after
        if not any(one.span[0] <= word.span[0] < one.span[1] for one in named)
    ]
    if not set(beside) <= _BESIDE:
        return None
    words = message.text[named[0].span[0] : named[-1].span[1]]
    return BookSaid(text=message.text, verb=BookVerb.ADD_PLAYER, words=words, mentions=tuple(named))
