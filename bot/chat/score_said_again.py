"""A score said again after a slip of the tongue: "twelve all, no i mean twelve eleven us"."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.score_groups import score_group
from bot.chat.words import Word

_SLIPS = (("no", "i", "mean"), ("no", "wait"), ("wait", "no"), ("i", "mean"), ("no", "sorry"))


def after_slip(said: Sequence[Word]) -> Sequence[Word]:
    """The words from the last slip on, if a score follows it; else all of them."""
    folded = tuple(word.folded for word in said)
    for at in reversed(range(1, len(said))):
        is_slip = any(folded[at : at + len(slip)] == slip for slip in _SLIPS)
        if is_slip and score_group(said[at:]) is not None:
            return said[at:]
    return said
