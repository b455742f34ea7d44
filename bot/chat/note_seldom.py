"""Counts that say seldom: who misses 1 serve in 20 serves well, who lobs 1 of 8 lobs rarely."""

from __future__ import annotations

from dataclasses import replace

from bot.chat.forms import word_set
from bot.chat.note_figures import Counted, counted
from bot.chat.note_line import NoteLine
from bot.chat.said import Claim
from knowledge.vocabulary import Value

_SELDOM = 0.2
"""Of all their chances: from here down a habit is none. Common practice, no source."""

_HARDLY_MISSED = 0.1
"""A serve or a return is in nine times of ten among good players; who misses less is not weak in
it. Common practice, no source."""

_FEWEST_MISSABLE = 8
"""Of fewer balls a single miss says nothing. Common practice, no source."""

_MISSES = word_set("missing") | {"fault", "faults", "faulted", "double"}
_NEAR = 3
"""Words between a claim and its count: "lobs maybe 1 of 8". Common practice, no source."""


def seldom(claim: Claim, note: NoteLine) -> Claim | None:
    """The claim as the count beside it says it: rarely, or a weakness denied."""
    if claim.denied or claim.value not in (Value.OFTEN, Value.WEAKNESS):
        return claim
    start, stop = claim.span
    own = [at for at, word in enumerate(note.said) if start <= word.span[0] < stop]
    if not own:
        return claim
    for one in counted(note.line):
        gap = max(own[0] - one.stop, one.start - own[-1] - 1)
        if gap < _NEAR and _is_seldom(claim, one, note, own):
            is_habit = claim.value is Value.OFTEN
            return replace(claim, value=Value.RARELY) if is_habit else replace(claim, denied=True)
    return claim


def _is_seldom(claim: Claim, count: Counted, note: NoteLine, own: list[int]) -> bool:
    if claim.value is Value.OFTEN:
        return count.share <= _SELDOM
    first, last = min(count.start, own[0]), max(count.stop, own[-1] + 1)
    around = note.line[max(0, first - 1) : last + 1]
    is_missed = bool(_MISSES & set(around))
    return is_missed and count.share <= _HARDLY_MISSED and count.balls >= _FEWEST_MISSABLE
