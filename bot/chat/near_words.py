"""A slip of one of a few words that are waited for: "reveiw", "scoutng"."""

from __future__ import annotations

from collections.abc import Collection

from rapidfuzz.distance import DamerauLevenshtein

from bot.chat.common_words import is_common

SHORTEST = 4
"""Letters from which a word may have a slip."""

TWO_SLIPS = 7
"""Letters from which it may have two."""


def mended(word: str, spelt: Collection[str]) -> str:
    """The word that was meant; one that means something else is left alone."""
    if word in spelt or len(word) < SHORTEST or is_common(word):
        return word
    for right in sorted(spelt):
        slips = 2 if len(right) >= TWO_SLIPS else 1
        if DamerauLevenshtein.distance(word, right) <= slips:
            return right
    return word
