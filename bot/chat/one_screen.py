"""An answer kept to one screen of a phone; what is left out is told by "why"."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace

from knowledge.advice import CHANGE_UP, Advice, Reason
from knowledge.phone_screen import MOST_LINES, MOST_LIST_LINES, wrapped
from knowledge.sources import SourceKind
from knowledge.vocabulary import Topic


def to_one_screen(advice: Advice, lines_of: Callable[[Advice], Sequence[str]]) -> Advice:
    """The advice with less said until it fits; `lines_of` is how it is written.

    The call, one reason, what would change the call, the assumption and cautions always stay.
    """
    most = MOST_LIST_LINES if advice.lines else MOST_LINES
    shorter = advice
    for shorter in _ever_shorter(advice):
        if wrapped(lines_of(shorter)) <= most:
            break
    return shorter


_CLOSING = ("now", "number", "unless", "assumed")
"""The lines under the reasons, by their names in an advice, that a shorter form may leave out."""


def reasons_left_out(advice: Advice, shown: Advice) -> tuple[Reason, ...]:
    """The reasons, or lines of a list, that the shown form doesn't have."""
    full, seen = (one.lines or one.reasons for one in (advice, shown))
    return tuple(reason for reason in full if reason not in seen)


def lines_left_out(advice: Advice, shown: Advice) -> tuple[str, ...]:
    """What else the shown form doesn't have, a line each."""
    return tuple(
        getattr(advice, name)
        for name in _CLOSING
        if getattr(advice, name) and not getattr(shown, name)
    )


def _ever_shorter(advice: Advice) -> Iterator[Advice]:
    """The advice as it is, then with fewer reasons, then without its number and what to do now."""
    yield advice
    if advice.lines:
        for count in range(len(advice.lines) - 1, 0, -1):
            yield replace(advice, lines=advice.lines[:count])
        return
    kept = list(advice.reasons)
    while len(kept) > 1:
        kept.remove(_least_useful(kept, advice.topic))
        yield replace(advice, reasons=tuple(kept))
    yield replace(advice, reasons=tuple(kept), number=None)
    yield replace(advice, reasons=tuple(kept), number=None, now=None)


def _least_useful(reasons: Sequence[Reason], topic: Topic) -> Reason:
    """The last one; before it what the rules allow, unless they are the answer.

    Rules are looked up in calm. A change-up goes last of all: it is half of the call.
    """
    of_rules = [one for one in reasons if one.source.kind is SourceKind.RULEBOOK]
    plain = [one for one in reasons if not one.text.startswith(CHANGE_UP)]
    return ((topic is not Topic.RULES_QUESTION and of_rules) or plain or reasons)[-1]
