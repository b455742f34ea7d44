"""Whether people of a name are mostly spoken of as he or as she: the best guess until we are told.

Source: US Census Bureau 1990, and some of other countries from memory: see data/README.md. Some
25 kB in memory, read at first use. Wrong for whoever bears a name that mostly others bear, so what
was said of a player counts before it.
"""

from __future__ import annotations

import gzip
from functools import lru_cache
from importlib.resources import files
from typing import Literal

from scouting_db.known_names import sorted_lines_hold
from scouting_db.sounds import fold

Call = Literal["he", "she"]


@lru_cache(maxsize=1 << 10)
def call_of_name(name: str) -> Call | None:
    """`she` for "Glenda Pruitt", `he` for "Walt"; None for a name of both, or none we know."""
    first = fold(name).partition(" ")[0]
    she, he = _lists()
    if sorted_lines_hold(she, first):
        return "she"
    return "he" if sorted_lines_hold(he, first) else None


@lru_cache(maxsize=1)
def _lists() -> tuple[bytes, bytes]:
    packed = files("scouting_db").joinpath("data", "called_names.txt.gz").read_bytes()
    she, he = gzip.decompress(packed).split(b"\n\n")
    return she, he
