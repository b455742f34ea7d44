"""Whose names they are: our players' as "we", all others' as "they"."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from bot.chat.said import Mention
from bot.chat.words import Word


def cast(said: Sequence[Word], ours: Sequence[Mention], theirs: Sequence[Mention]) -> list[Word]:
    """The words with our players' names as "we" and all others' as "they"."""
    told: list[Word] = []
    for word in said:
        who = _cast_as(word, ours, "we") or _cast_as(word, theirs, "they")
        if who is None:
            told.append(word)
        elif not told or told[-1].folded != who:
            told.append(replace(word, folded=who))
    return told


def _cast_as(word: Word, mentions: Sequence[Mention], role: str) -> str | None:
    return role if any(one.span[0] <= word.span[0] < one.span[1] for one in mentions) else None
