"""Where the claims of a note, read from a message written out, stand in the words that are stored.

A note keeps the words that were typed. Taken up again once a name is settled it is read with that
name in full ("Dario Fenn is righty" of "dario is righty"), and so are the places of its claims.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from difflib import SequenceMatcher

from bot.chat.said import Claim, NoteSaid
from knowledge.regex import regex

_WORD = regex(r"[^\s,;.!?:]+")
"""Without the mark behind it: a quote goes on to the end of the clause that its claim ends in."""

Span = tuple[int, int]


def placed_in(kept: str, said: NoteSaid) -> NoteSaid:
    """The same claims and offers, each with its place in the stored words `kept`."""
    if kept == said.text or not (said.claims or said.offered):
        return said
    places = _Places(said.text, kept)
    return replace(said, claims=places.of(said.claims), offered=places.of(said.offered))


class _Places:
    """Places of one text in another that has most of its words."""

    def __init__(self, read: str, kept: str) -> None:
        self._read, self._kept = _words(read), _words(kept) or [(0, len(kept))]
        matcher = SequenceMatcher(
            None,
            [read[start:stop] for start, stop in self._read],
            [kept[start:stop] for start, stop in self._kept],
            autojunk=False,
        )
        self._runs = matcher.get_opcodes()

    def of(self, claims: Sequence[Claim]) -> tuple[Claim, ...]:
        return tuple(replace(one, span=self._place(one.span)) for one in claims)

    def _place(self, span: Span) -> Span:
        """From the first to the last word that the span touches; all of them where it has none."""
        touched = [
            n for n, word in enumerate(self._read) if word[0] < span[1] and span[0] < word[1]
        ]
        stood = [place for n in touched for place in self._stood(n)]
        if not stood:
            return self._kept[0][0], self._kept[-1][1]
        first, last = self._kept[min(stood)], self._kept[max(stood)]
        return first[0], last[1]

    def _stood(self, n: int) -> range:
        """The stored words in whose place the n-th word read stands."""
        for how, start, stop, begins, ends in self._runs:
            if start <= n < stop:
                same = begins + n - start
                return range(same, same + 1) if how == "equal" else range(begins, ends)
        return range(0)


def _words(text: str) -> list[Span]:
    return [one.span() for one in _WORD.finditer(text)]
