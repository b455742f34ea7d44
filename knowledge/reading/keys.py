"""Keys of what a model sees of a message: a feature's name as 32 bits, tied to its tokens."""

from __future__ import annotations

from functools import lru_cache
from typing import Protocol
from zlib import crc32

SHORTEST_GRAM, LONGEST_GRAM = 3, 5

Place = tuple[int, int]
Group = dict[int, Place]
"""Keys of one group's features, each with the tokens [start, end) it came from."""


class Message(Protocol):
    """A message as a model sees it: its features by group."""

    @property
    def groups(self) -> tuple[Group, ...]: ...


@lru_cache(maxsize=1 << 12)
def key_of(name: str) -> int:
    """A feature's key: 32 bits, so that two of a hundred thousand features rarely share one."""
    return crc32(name.encode())


@lru_cache(maxsize=2048)
def character_keys(word: str) -> tuple[int, ...]:
    """The keys of a word's runs of 3 to 5 characters, edges marked."""
    edged = f"_{word}_"
    runs = {
        edged[at : at + length]
        for length in range(SHORTEST_GRAM, LONGEST_GRAM + 1)
        for at in range(max(1, len(edged) - length + 1))
    }
    return tuple(sorted({crc32(f"c:{run}".encode()) for run in runs}))
