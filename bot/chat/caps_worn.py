"""Whether a cap is what somebody wears, and no cap of points."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.numbers import number
from bot.chat.words import Word


def is_worn(said: Sequence[Word]) -> bool:
    """ "The red cap, 9:20": what a mark parts from its number, or a clock, caps no game."""
    caps = [at for at, word in enumerate(said) if word.folded in ("cap", "capped")]
    numbers = [at for at, word in enumerate(said) if caps and at > caps[0] and number(word)]
    if not numbers:
        return False
    is_clock = any(":" in word.gap for word in said[numbers[0] + 1 : numbers[0] + 2])
    return is_clock or any(
        set(word.gap) & set(",;.") for word in said[caps[0] + 1 : numbers[0] + 1]
    )
