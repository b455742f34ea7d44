"""A clock time right before a court, "two fifteen court one": when we play, and no score."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from bot.chat.numbers import number
from bot.chat.words import Word, words_in

_COURT = words_in("court crt ct cort centre center stadium")
_BETWEEN = words_in("on at the")
LAST_HOUR = 12
_MINUTES = range(15, 60, 5)
"""Minutes that matches are put at, past those that are points of a game to 11: "9 10 on court 2"
is a score. Common practice.
"""


def time_places(said: Sequence[Word]) -> frozenset[int]:
    """Where such times stand."""
    numbers = [number(word) for word in said]
    return frozenset(
        place
        for at, (hour, minutes) in enumerate(pairwise(numbers))
        if hour in range(1, LAST_HOUR + 1) and minutes in _MINUTES and _court_at(said, at + 2)
        for place in (at, at + 1)
    )


def _court_at(said: Sequence[Word], at: int) -> bool:
    while at < len(said) and said[at].folded in _BETWEEN:
        at += 1
    return at < len(said) and said[at].folded in _COURT
