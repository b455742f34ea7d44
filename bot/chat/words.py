"""The words of a message, folded, each with its place in the text as typed."""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import lru_cache

from bot.chat.lookalikes import INVISIBLE, as_latin
from knowledge.dataclass import dataclass
from knowledge.regex import regex
from scouting_db.sounds import fold

READ_AT_MOST = 4_096
"""Characters looked at of one message: a Telegram text is never longer (Bot API, sendMessage)."""

WORDS_READ_AT_MOST = 256
"""Words read of one message, some 1,400 characters: a note is said by then, and every later
step costs per word. The rest is kept with the note, as typed."""

LONGEST_WORD = 40
"""Letters read of one word: longer than any name or word of the game."""

_WORD = regex(rf"[^\W_]+(?:(?:['’‘`´]|[{INVISIBLE}]+)[^\W_]+)*")
_HIDDEN = regex(f"[{INVISIBLE}]+")
_POSSESSIVE = regex(r"['’‘`´]s$", re.IGNORECASE)


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


def words_in(row: str) -> frozenset[str]:
    """The words of a list written in one row."""
    return frozenset(row.split())


WORDS_KEPT_OF = 256
"""Texts whose words are kept: one message is asked for its words by several readers."""


@lru_cache(maxsize=WORDS_KEPT_OF)
def words(text: str) -> tuple[Word, ...]:
    """The first WORDS_READ_AT_MOST words; marks, emoji and other scripts' words are gaps."""
    found: list[Word] = []
    end = 0
    for match in _WORD.finditer(text[:READ_AT_MOST]):
        folded = _folded(match[0][:LONGEST_WORD])
        if folded:
            gap = text[end : match.start()]
            found.append(Word(folded=folded, typed=match[0], span=match.span(), gap=gap))
            end = match.end()
        if len(found) == WORDS_READ_AT_MOST:
            break
    return tuple(found)


def _folded(typed: str) -> str:
    shown = typed if typed.isascii() else as_latin(_HIDDEN.sub("", typed))
    return fold(_POSSESSIVE.sub("", shown)).replace(" ", "")


_ASKING_SHORT = frozenset(["who", "when"])


def folded_line(said: Sequence[Word]) -> str:
    """The folded words with single spaces, for expressions over a whole message.

    "Who's" owns nothing: it reads as "whos" does.
    """
    return " ".join(map(_in_line, said))


def _in_line(word: Word) -> str:
    is_short = word.folded in _ASKING_SHORT and word.is_possessive
    return f"{word.folded}s" if is_short else word.folded
