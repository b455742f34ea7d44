"""Everyday English and the game's own words, and the typos of them."""

from __future__ import annotations

from functools import cache, lru_cache
from importlib.resources import files

from rapidfuzz import process
from rapidfuzz.distance import DamerauLevenshtein

_SHORTEST_REPAIRED = 5
_LETTERS_PER_TYPO = 7
"""One slip in a word of five letters, two from this many on (engineering notes 3.1)."""


def is_common(folded: str) -> bool:
    """Whether a folded word is everyday English or the game's, so hardly a name."""
    return folded in _common_words() or folded.isdigit()


_FORMS = ("s", "es", "ed", "d", "ing")


def is_form_of_common(folded: str) -> bool:
    """Whether it is a common word as it is inflected by rule: "meets", "dinked"."""
    return any(
        folded.endswith(end) and folded.removesuffix(end) in _common_words() for end in _FORMS
    )


@lru_cache(maxsize=1 << 12)
def respelled(folded: str) -> str:
    """The common word that a word was meant to be, or the word itself where that is unsure."""
    if folded.endswith("in") and f"{folded}g" in _common_words():
        return f"{folded}g"
    is_plural = folded.endswith("s") and folded[:-1] in _common_words()
    if len(folded) < _SHORTEST_REPAIRED or not folded.isalpha() or is_plural:
        return folded
    slips = 2 if len(folded) > _LETTERS_PER_TYPO else 1
    found = process.extract(
        folded, _repairable(), scorer=DamerauLevenshtein.distance, score_cutoff=slips, limit=2
    )
    unsure = len(found) > 1 and found[0][1] == found[1][1]
    return folded if not found or unsure or found[0][0][0] != folded[0] else found[0][0]


@cache
def _repairable() -> tuple[str, ...]:
    return tuple(sorted(word for word in _common_words() if len(word) >= _SHORTEST_REPAIRED))


def common_words() -> frozenset[str]:
    """All of them, folded."""
    return _common_words()


@cache
def _common_words() -> frozenset[str]:
    text = files("bot.chat.data").joinpath("common_words.txt").read_text(encoding="utf-8")
    lines = [line for line in text.splitlines() if not line.startswith("#")]
    return frozenset(" ".join(lines).split())
