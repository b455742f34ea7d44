"""Who is only told to ask: "Inge asks who takes the middle" is a question about none of them."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.said import Mention
from bot.chat.words import Word
from knowledge.regex import regex

_ASKS = regex(
    r"(?: (?:also|just|now|and))*"
    r" (?:asks|asked|is asking|was asking|keeps asking|wonders|wondered|is wondering"
    r"|(?:wants|wanted|would like|likes) to know)(?: me| us)?"
    r" (?:who|whom|whose|what|whats|where|when|which|how|why|if|whether|should|shall|do|can)\b"
)
"""Behind the name, up to the word that the question begins with."""


def without_who_asks(
    said: Sequence[Word], mentions: Sequence[Mention], ours: Sequence[Mention]
) -> tuple[Mention, ...]:
    """The mentions a question is about; one of us who asks is spoken of by "he" behind it."""
    return tuple(one for one in mentions if one in ours or not _only_asks(one, said))


def _only_asks(one: Mention, said: Sequence[Word]) -> bool:
    behind = "".join(f" {word.folded}" for word in said if word.span[0] >= one.span[1])
    return not one.pronoun and _ASKS.match(behind) is not None
