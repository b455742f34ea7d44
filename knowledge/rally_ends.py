"""How a rally ended, as one short tag: whose winner or error, and with which stroke.

A winner is hit by the side that won the rally, an error made by the side that lost it, so who
won settles whose it was.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from knowledge.vocabulary import Ending, Stroke

STROKES: Mapping[Stroke, str] = MappingProxyType(
    {
        Stroke.SERVE: "serves",
        Stroke.RETURN: "returns",
        Stroke.THIRD: "thirds",
        Stroke.DRIVE: "drives",
        Stroke.DROP: "drops",
        Stroke.DINK: "dinks",
        Stroke.SPEED_UP: "speed-ups",
        Stroke.COUNTER: "counters",
        Stroke.RESET: "resets",
        Stroke.VOLLEY: "volleys",
        Stroke.OVERHEAD: "overheads",
        Stroke.LOB: "lobs",
    }
)
"""Each stroke as a tag and a sentence name several of them."""


def end_tag(*, won_by_us: bool, ending: Ending, stroke: Stroke | None) -> str:
    """ "our missed returns", "their winners with dinks"; without a stroke "our misses"."""
    missed = ending.is_error
    whose = "our" if won_by_us is not missed else "their"
    if stroke is None:
        return f"{whose} misses" if missed else f"{whose} winners"
    if missed:
        return f"{whose} missed {STROKES[stroke]}"
    return f"{whose} winners with {STROKES[stroke]}"
