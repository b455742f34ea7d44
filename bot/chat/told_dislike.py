"""What one of them minds of our play, told with a pronoun: "he hates it when we lob him"."""

from __future__ import annotations

from bot.chat.message import Message
from knowledge.regex import regex

_MINDS = (
    r"(?:hates?|dislikes?|loves?|likes?|cant stand|can t stand|doesnt like|dont like|struggles?"
    r"|panics?|folds?|freezes?|melts?|falls apart|gets (?:mad|angry|lost|rattled|nervous))"
)
_TOLD = regex(
    rf"(?:(?:ok|so|and|but|btw|also|oh|lol) )*(?:he|she|they) (?:(?:really|just|always|both) )*"
    rf"{_MINDS}(?: it| that)? when(?:ever)? (?:we|i|you|u|my partner) \w+.*"
)
_ASKS = regex(
    r"\b(?:what|how|where|who|whom|which|why|should|shall|do (?:i|we)|can (?:i|we)|right|huh)\b"
)


def tells_of_a_dislike(message: Message) -> bool:
    """Whether that opens the message and nothing in it asks: our shot in it is no question of
    where to hit it. With a name it is a note already, whatever is answered beside it."""
    if "?" in message.text or not message.mentions:
        return False
    line = " ".join(word.folded for word in message.said)
    is_of_pronouns = all(one.pronoun for one in message.mentions)
    return is_of_pronouns and bool(_TOLD.fullmatch(line)) and not _ASKS.search(line)
