"""How names are written by ears of other languages: `sjimizoe` of Shimizu, `bibian` of Vivian.

A few spellings of Dutch and Spanish, from memory, no source. Others are heard by `name_ear`.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import lru_cache

from rapidfuzz.distance import DamerauLevenshtein

from knowledge.regex import regex
from scouting_db.name_ear import likeness

_DUTCH = {
    "dzj": "j",
    "tsj": "ch",
    "tsch": "ch",
    "sch": "sh",
    "sj": "sh",
    "zj": "zh",
    "dj": "j",
    "tj": "ch",
    "ij": "ai",
    "ie": "i",
    "oe": "u",
    "ou": "au",
    "aa": "a",
    "ee": "e",
    "oo": "o",
    "uu": "u",
    "w": "v",
    "j": "y",
}
_SPANISH = {
    "ll": "y",
    "ii": "y",
    "qu": "k",
    "gu": "w",
    "v": "b",
    "j": "h",
    "z": "s",
    "h": "",
    "y": "i",
    "w": "gu",
}


def _said(sounds: Mapping[str, str]) -> Callable[[str], str]:
    """Puts a word's letters into sounds, the longest first, from left to right."""
    letters = regex("|".join(sorted(sounds, key=len, reverse=True)))
    return lambda word: letters.sub(lambda found: sounds[found[0]], word)


_in_dutch, _in_spanish = _said(_DUTCH), _said(_SPANISH)


@lru_cache(maxsize=1 << 10)
def foreign_likeness(typed: str, name: str) -> float:
    """From 0 to 1, how much alike two folded words are to the one ear or the other."""
    spoken = _in_spanish(typed), _in_spanish(name)
    by_spanish = DamerauLevenshtein.normalized_similarity(*spoken)
    return max(likeness(_in_dutch(typed), name), by_spanish)
