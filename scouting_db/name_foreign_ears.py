"""How names are written by ears of other languages: `sjimizoe` of Shimizu, `bibian` of Vivian.

A few spellings of Dutch and Spanish, from memory, no source. Others are heard by `name_ear`.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache

from rapidfuzz.distance import DamerauLevenshtein

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


@lru_cache(maxsize=1 << 10)
def foreign_likeness(typed: str, name: str) -> float:
    """From 0 to 1, how much alike two folded words are to the one ear or the other."""
    in_dutch = likeness(_said(typed, _DUTCH_SOUNDS), name)
    spoken = _said(typed, _SPANISH_SOUNDS), _said(name, _SPANISH_SOUNDS)
    return max(in_dutch, DamerauLevenshtein.normalized_similarity(*spoken))


def _said(word: str, sounds: tuple[tuple[str, str], ...]) -> str:
    """The word with the longest of its letters first put into sounds, from left to right."""
    said, at = "", 0
    while at < len(word):
        letters, sound = next(
            (each for each in sounds if word.startswith(each[0], at)), (word[at], word[at])
        )
        said += sound
        at += len(letters)
    return said


def _longest_first(sounds: Mapping[str, str]) -> tuple[tuple[str, str], ...]:
    return tuple(sorted(sounds.items(), key=lambda each: -len(each[0])))


_DUTCH_SOUNDS, _SPANISH_SOUNDS = _longest_first(_DUTCH), _longest_first(_SPANISH)
