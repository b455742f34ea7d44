"""Which of our two misses fewer serves, where a question says so of both: "me (5% miss) or soren
(20%)"."""

from __future__ import annotations

import re

from knowledge.regex import regex
from knowledge.situation import OnCourt

_MISSED = regex(r"\bmiss\w*|\bfaults?\b")
_PER = r"(\d{1,3})\s*(?:%|percent|pct|(?:of|in|out of)\s*(\d{1,3}))"


def misses_fewer(words: str, pair: tuple[OnCourt, OnCourt]) -> OnCourt | None:
    """The one of the two; None where it isn't said of both, or is the same."""
    said = words.casefold().replace("’", "'")
    if _MISSED.search(said) is None:
        return None
    rates = [_rate(said, re.escape(one.name.casefold())) for one in pair]
    mine = _rate(said, r"(?:me|i|i'm|im|my)")
    if mine is not None and rates.count(None) == 1:
        rates[rates.index(None)] = mine
    first, second = rates
    if first is None or second is None or first == second:
        return None
    return pair[0] if first < second else pair[1]


def _rate(said: str, who: str) -> float | None:
    """The share that somebody misses, said right behind them."""
    found = re.search(rf"\b{who}\b[^,;?]*?{_PER}", said)
    if found is None:
        return None
    return int(found[1]) / max(1, int(found[2] or 100))
