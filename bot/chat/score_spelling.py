"""Mistyped words of the score ("theri srve", "pointttt", "forthem"), as they were meant."""

from __future__ import annotations

from functools import cache, lru_cache

from rapidfuzz.distance import DamerauLevenshtein

from bot.chat.common_words import is_common
from bot.chat.forms import short_forms, word_set
from knowledge.regex import regex

_SHORTEST_MENDED = 3
_SHORTEST_LETTERS_LOST = 5
"""Letters of a word that may have a wrong or missing one; in a shorter one two may be swapped."""

_SHORTEST_TWO_SLIPS = 8


@lru_cache(maxsize=1 << 12)
def as_meant(folded: str) -> str:
    """The word of the score that a mistyped word stands for; any other word as it is."""
    if not folded.isalpha() or len(folded) < _SHORTEST_MENDED or _is_known(folded):
        return folded
    short = _held_down(folded)
    return short if short != folded and _is_known(short) else _nearest(short)


@lru_cache(maxsize=1 << 12)
def run_together(folded: str) -> tuple[str, ...]:
    """The words typed without a space between them, "forthem"; none where it is one word."""
    if not folded.isalpha() or _is_known(folded):
        return ()
    for at in range(2, len(folded) - 1):
        parts = folded[:at], folded[at:]
        if all(part in word_set("run_together") for part in parts):
            return parts
        rest = run_together(parts[1]) if parts[0] in word_set("run_together") else ()
        if rest:
            return (parts[0], *rest)
    return ()


def _is_known(folded: str) -> bool:
    return folded in _meant() or folded in short_forms() or is_common(folded)


_HELD_DOWN = regex(r"(\w)\1{2,}")
"""The same letter three times or more in a row, which no word has."""


def _held_down(folded: str) -> str:
    """The word without the letters of a key held down: "ours" for "oursss", "all" for "alllll"."""
    for kept in (r"\1", r"\1\1"):
        typed = _HELD_DOWN.sub(kept, folded)
        if typed in _meant() or is_common(typed):
            return typed
    return folded


def _nearest(folded: str) -> str:
    slips = 2 if len(folded) >= _SHORTEST_TWO_SLIPS else 1
    near = [(_slips(folded, word), word) for word in _meant() if _may_be(folded, word)]
    near = sorted(one for one in near if one[0] <= slips)
    unsure = len(near) > 1 and near[0][0] == near[1][0]
    return folded if not near or unsure else near[0][1]


def _slips(folded: str, word: str) -> int:
    return int(DamerauLevenshtein.distance(folded, word))


def _may_be(folded: str, word: str) -> bool:
    """Letters swapped in any word; another letter, or one too few, only in a long one."""
    if sorted(folded) == sorted(word):
        return True
    return len(word) >= _SHORTEST_LETTERS_LOST and folded[0] == word[0]


@cache
def _meant() -> frozenset[str]:
    return word_set("score_spelling")
