"""Whose point it is after a fault, asked beside whether it is one: "tom foot fault, their pt?"."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from knowledge.regex import regex
from knowledge.rulebook.entry import Ruling

SIDE_OUT: Final = "Server's fault: no point. Receiver's fault: a point."
"""Only the serving side scores (2025 rulebook, side-out scoring)."""

RALLY: Final = "Rally scoring: a fault is the other side's point."

_ASKS_WHOSE = regex(
    r"\b(?:their|our|my|whose|who gets the) (?:pt|point)\b(?: (?:then|now|or not))*\s*\?*\s*$"
    r"|\b(?:do|does|did) (?:they|we|i|he|she) (?:get|score|win) (?:a |the |that )?(?:pt|point)\b"
)
_FAULT = "Fault"


def with_point(ruling: Ruling, words: str, *, rally_scoring: bool) -> Ruling:
    """The ruling, with whose point a fault makes it where that is asked."""
    if not ruling.call.startswith(_FAULT) or _ASKS_WHOSE.search(words.lower()) is None:
        return ruling
    return replace(ruling, now=RALLY if rally_scoring else SIDE_OUT)
