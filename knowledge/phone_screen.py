"""What a phone shows of a reply beside its buttons: how wide a line is, and how many there are."""

from __future__ import annotations

import textwrap
from collections.abc import Iterable
from functools import lru_cache
from typing import Final

PHONE_CHARACTERS: Final = 40
"""In a line of a chat on a phone: common practice, no source."""

MOST_LINES: Final = 9
"""What one screen of a chat shows beside its buttons: common practice, no source."""

MOST_LIST_LINES: Final = 11
"""An answer that is a list by nature, a report or a plan, is read in calm and may be scrolled."""


def wrapped(lines: Iterable[str]) -> int:
    """How many lines of a phone these take."""
    return sum(map(_lines_of, lines))


@lru_cache(maxsize=4096)
def _lines_of(line: str) -> int:
    return len(textwrap.wrap(line, PHONE_CHARACTERS))
