"""Names that people commonly bear, so that another person is told from a slip of the thumb.

Source: US Census Bureau 1990, see data/README.md. Some 730 kB in memory, read at first use.
"""

from __future__ import annotations

import gzip
from enum import IntEnum
from functools import lru_cache
from importlib.resources import files


class Known(IntEnum):
    """How well known a word is as a name."""

    NO = 0
    RARELY = 1
    COMMONLY = 2


@lru_cache(maxsize=1 << 12)
def known_surname(word: str) -> Known:
    """How well a folded word is known as a surname; the rare ones look much like misspellings."""
    _, common, rare = _lists()
    if sorted_lines_hold(common, word):
        return Known.COMMONLY
    return Known.RARELY if sorted_lines_hold(rare, word) else Known.NO


@lru_cache(maxsize=1 << 12)
def known_first_name(word: str) -> Known:
    first, _, _ = _lists()
    return Known.COMMONLY if sorted_lines_hold(first, word) else Known.NO


def is_no_name(word: str) -> bool:
    """Whether a folded word is no first name and no surname that we know of."""
    return Known.NO is max(known_surname(word), known_first_name(word))


@lru_cache(maxsize=1)
def _lists() -> tuple[bytes, bytes, bytes]:
    packed = files("scouting_db").joinpath("data", "known_names.txt.gz").read_bytes()
    first, common, rare = gzip.decompress(packed).split(b"\n\n")
    return first, common, rare


def sorted_lines_hold(names: bytes, word: str) -> bool:
    """Whether sorted lines have the word: halved, since a set takes ten times the memory."""
    sought, low, high = word.encode(), 0, len(names)
    while low < high:
        start = names.rfind(b"\n", low, (low + high) // 2) + 1 or low
        end = names.find(b"\n", start)
        line = names[start : end if end >= 0 else len(names)].rstrip()
        if line == sought:
            return True
        low, high = (start + len(line) + 1, high) if line < sought else (low, start)
    return False
