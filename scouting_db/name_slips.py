"""The names one wrong letter away from what was typed, found without comparing every name."""

from __future__ import annotations

from collections.abc import Iterator
from string import ascii_lowercase

from scouting_db.name_forms import Strength
from scouting_db.name_keys import HOLDERS, NameKeys

SHORTEST_SLIPPED = 5
"""Letters of a word in which one wrong letter still leaves the name to be told."""

_LONGEST_SLIPPED = 24
"""Letters beyond which nobody's name is looked for by its slips, so that noise costs little.
Common practice, no source."""


def one_letter_off(keys: NameKeys, key: str) -> set[int]:
    """Whose name is typed by one wrong letter: `ashly`, which sounds as Ashley, may be Ashby."""
    if not SHORTEST_SLIPPED <= len(key) <= _LONGEST_SLIPPED:
        return set()
    return {
        position
        for near in _with_one_letter_changed(key)
        for strength, position in keys.held(near)[:HOLDERS]
        if strength is not Strength.INITIALS
    }


def _with_one_letter_changed(key: str) -> Iterator[str]:
    for at in range(len(key)):
        yield from (f"{key[:at]}{letter}{key[at + 1 :]}" for letter in ascii_lowercase)
