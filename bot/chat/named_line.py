"""A message's words with one N for each name, so that a form can say where names stand."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from bot.chat.said import Mention
from bot.chat.words import Word

NAME = "N"
"""What stands for a name or a pronoun."""


def named_line(said: Sequence[Word], mentions: Sequence[Mention]) -> str:
    """The folded words in one line."""
    return " ".join(_words(said, mentions))


def _words(said: Sequence[Word], mentions: Sequence[Mention]) -> Iterator[str]:
    begun: set[tuple[int, int]] = set()
    for word in said:
        span = next((one.span for one in mentions if _stands_in(word, one)), None)
        if span is None:
            yield word.folded
        elif span not in begun:
            begun.add(span)
            yield NAME


def _stands_in(word: Word, mention: Mention) -> bool:
    return mention.span[0] <= word.span[0] < mention.span[1]
