"""A reply about weather or a body kept to one screen; what is left out stands behind `why`."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import Final

from knowledge.advice import Advice, Reason
from knowledge.phone_screen import MOST_LINES, wrapped
from knowledge.sources import SourceKind

_SAID_BY_KIND: Final = (SourceKind.COMPUTED, SourceKind.COMMON_PRACTICE)


def to_one_screen(advice: Advice) -> Advice:
    """The advice with its least useful reasons left to `more` until it fits.

    The call, one reason, the number, what would change the call and the caution always stay.
    """
    kept, assumed = list(advice.reasons), advice.assumed
    short = advice
    while wrapped_lines(short) > MOST_LINES:
        if len(kept) > 1:
            kept.remove(_least_useful(kept))
        elif assumed is not None:
            assumed = None
        else:
            break
        short = replace(advice, reasons=tuple(kept), assumed=assumed)
    return short if short is advice else replace(short, more=_in_full(advice))


def wrapped_lines(advice: Advice) -> int:
    """How many lines of a phone the advice takes."""
    return wrapped(_lines(advice))


def _least_useful(reasons: list[Reason]) -> Reason:
    """What the rules allow is looked up in calm; of the rest the last."""
    of_rules = [one for one in reasons if one.source.kind is SourceKind.RULEBOOK]
    return (of_rules or reasons)[-1]


def _lines(advice: Advice) -> Iterator[str]:
    yield advice.call
    yield from (f"· {_told(reason)}" for reason in advice.reasons)
    closing = (advice.number, advice.unless, advice.assumed, advice.caution)
    yield from (line for line in closing if line)


def _told(reason: Reason) -> str:
    kind = reason.source.kind
    return f"{reason.text} ({kind.value if kind in _SAID_BY_KIND else reason.source})"


def _in_full(advice: Advice) -> tuple[str, ...]:
    told = tuple(_told(reason) for reason in advice.reasons)
    return (*told, *((advice.assumed,) if advice.assumed else ()), *advice.more)
