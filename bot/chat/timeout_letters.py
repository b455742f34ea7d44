"""A time-out by its two letters with a mark or a blank between them: "t/o", "t.o.", "t/os"."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.words import Word

_MEANT = {"o": "timeout", "os": "timeouts"}
_GAPS = frozenset("/ .-")


def is_timeout_here(said: Sequence[Word], position: int) -> bool:
    """Whether the letters begin at this word."""
    if position + 1 >= len(said) or said[position].folded != "t":
        return False
    after = said[position + 1]
    return after.folded in _MEANT and len(after.gap) == 1 and after.gap in _GAPS


def meant_by(said: Sequence[Word], position: int) -> str:
    """The word that they stand for, in full."""
    return _MEANT[said[position + 1].folded]
