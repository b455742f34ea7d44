"""Which of us a sentence is about: by a name of the book, as "me", or as the partner.

Patterns match a line of such tokens, so that "tom is wide" and "my partner is wide" are one form.
"""

from __future__ import annotations

from collections.abc import Collection, Sequence

from bot.chat.said import Mention, OneOfUs
from bot.chat.words import Word
from knowledge.vocabulary import PlayerId

ONE = r"(?:@\d+|me|partner)"
"""The tokens that stand for one of us; a number is the place among our mentions."""


def token(
    word: Word, ours: Sequence[Mention], *, me: Collection[str], partner: Collection[str]
) -> str:
    """The word as patterns see it: one of `ONE` for one of us, else folded."""
    for at, one in enumerate(ours):
        if one.span[0] <= word.span[0] < one.span[1]:
            return f"@{at}"
    if word.folded in me:
        return "me"
    return "partner" if word.folded in partner else word.folded


def whom(one: str, ours: Sequence[Mention]) -> PlayerId | OneOfUs:
    """Whom such a token stands for."""
    if one.startswith("@"):
        return ours[int(one[1:])].players[0]
    return OneOfUs.ASKER if one == "me" else OneOfUs.PARTNER
