"""The words of a message, folded, each with its place in the text as typed."""

from __future__ import annotations

import re
from dataclasses import dataclass

from scouting_db.sounds import fold

READ_AT_MOST = 4_096
"""Characters read of one message: a Telegram text is never longer (Bot API, sendMessage)."""

_WORD = re.compile(r"[^\W_]+(?:['’‘`´][^\W_]+)*")
_POSSESSIVE = re.compile(r"['’‘`´]s$", re.IGNORECASE)


@dataclass(frozen=True, slots=True, kw_only=True)
class Word:
    """One word: folded, as typed, where it stands, and what separates it from the one before.

    A possessive `'s` belongs to the typed word but not to the folded one.
    """

    folded: str
    typed: str
    span: tuple[int, int]
    gap: str

    @property
    def is_capitalised(self) -> bool:
        return self.typed[0].isupper()

    @property
    def is_possessive(self) -> bool:
        return _POSSESSIVE.search(self.typed) is not None


def words(text: str) -> tuple[Word, ...]:
    """The words of the first READ_AT_MOST characters; marks and emoji are gaps."""
    found: list[Word] = []
    end = 0
    for match in _WORD.finditer(text[:READ_AT_MOST]):
        folded = fold(_POSSESSIVE.sub("", match[0])).replace(" ", "")
        if folded:
            gap = text[end : match.start()]
            found.append(Word(folded=folded, typed=match[0], span=match.span(), gap=gap))
            end = match.end()
    return tuple(found)
