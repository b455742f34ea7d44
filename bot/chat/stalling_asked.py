"""Whether a message asks about play held up, which the rulebook's seconds answer."""

from __future__ import annotations

from bot.chat.message import Message, names_somebody
from bot.chat.words import folded_line
from knowledge.regex import regex

_STALLING = regex(
    r".*\b(?:stall(?:s|ing)?|(?:wast|kill)(?:es?|ing) time|slow(?:ing)? (?:it|play"
    r"|everything) down on"
    r" purpose|tak(?:es?|ing) (?:forever|ages)) ?(?:\w+ ){0,3}"
    r"(?:btwn|btw|between|before|to serve|b4)\b.*"
)
"""`hes stalling btwn points can i say smth`: the rulebook's seconds, whoever plays."""


def asks_of_stalling(message: Message) -> bool:
    """Whether play is held up; who is described beside it, and nothing asked, makes a note."""
    if _STALLING.fullmatch(folded_line(message.said)) is None:
        return False
    return message.asks or not (message.note.claims and names_somebody(message))
