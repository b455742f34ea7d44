"""Words that the first two shots, serve and return, share."""

from __future__ import annotations

import math
from collections.abc import Iterable

NO_NOTES_DECIDE = "General rule: no notes on them that change it."
NOBODY_NAMED = "General rule: name the pair and I use your notes."

REASON_LIMIT = 50
"""Characters of a reason that a phone shows in little more than a line."""

SUN_CAUTION = "Sun: cap and eyewear; never look into it."


def short(candidates: Iterable[str]) -> str:
    """The first that fits a reason; the last one, which names nobody, has to."""
    said = ""
    for said in candidates:
        if len(said) <= REASON_LIMIT:
            return said
    raise ValueError(f"nothing fits a reason, not even {said!r}")


def deep_pays(shot: str, misses: float) -> str:
    """Up to how many extra misses depth is worth it: whole ones, never rounded up."""
    return f"A deep {shot} pays up to {math.floor(misses)} extra misses in 100."


def rallies(points: float) -> str:
    """A gain in plain words."""
    whole = round(points)
    if whole < 1:
        return "Little between them: under 1 rally in 100."
    return f"Worth about {whole} {'rally' if whole == 1 else 'rallies'} in 100."
