"""A message's words with one N for each name, so that a form can say where names stand."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterator, Sequence

from bot.chat.said import Mention
from bot.chat.words import Word

NAME = "N"
"""What stands for a name or a pronoun."""

Span = tuple[int, int]


def named_line(said: Sequence[Word], mentions: Sequence[Mention]) -> str:
    """The folded words in one line."""
    return " ".join(_words(said, mentions))


def _words(said: Sequence[Word], mentions: Sequence[Mention]) -> Iterator[str]:
    named = _spans_of(said, mentions)
    begun: set[Span] = set()
    for at, word in enumerate(said):
        span = named.get(at)
        if span is None:
            yield word.folded
        elif span not in begun:
            begun.add(span)
            yield NAME


def _spans_of(said: Sequence[Word], mentions: Sequence[Mention]) -> dict[int, Span]:
    """The first mention's span for each word that is part of one; each is looked up once."""
    starts = [word.span[0] for word in said]
    named: dict[int, Span] = {}
    for one in mentions:
        for at in range(bisect_left(starts, one.span[0]), bisect_left(starts, one.span[1])):
            named.setdefault(at, one.span)
    return named
