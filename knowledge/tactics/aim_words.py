"""Words that the first two shots, serve and return, share, and what the wind does to both."""

from __future__ import annotations

import math
from collections.abc import Iterable

from knowledge.advice import Reason
from knowledge.engine import Part
from knowledge.situation import Wind
from knowledge.sources import COMMON_PRACTICE, computed

NO_NOTES_DECIDE = "General rule: no notes on them that change it."
NOBODY_NAMED = "General rule: name the pair and I use your notes."

REASONS = 2
"""Beside the change-up and the risk a third would not be read: "why" has the sum of them all."""

REASON_LIMIT = 50
"""Characters of a reason that a phone shows in little more than a line."""

WIND_BEHIND_CARRIES_FT = 3.7
WIND_AGAINST_STOPS_FT = 4.3
"""Feet that 10 mph along the court move a deep ball, by the flight model; 5 mph half of that."""

WIND = computed("flight with 10 mph along the court")

LEAST_SHOWN = 0.1
"""Rallies in 100 below which a part of the sum is not shown."""

SUN_CAUTION = "Sun: cap and eyewear; never look into it."


def short(candidates: Iterable[str]) -> str:
    """The first that fits a reason; the last one, which names nobody, has to."""
    said = ""
    for said in candidates:
        if len(said) <= REASON_LIMIT:
            return said
    raise ValueError(f"nothing fits a reason, not even {said!r}")


def deep_pays(misses: float) -> str:
    """Up to how many extra misses depth is worth it: whole ones, never rounded up."""
    return f"Deep pays up to {math.floor(misses)} extra misses in 100."


def rallies(points: float, *, over: str = "") -> str:
    """A gain in plain words; `over` is what it is better than."""
    whole = round(points)
    if whole < 1:
        return "Little between them: under 1 rally in 100."
    beaten = f" over {over}" if over else ""
    return f"Worth about {whole} {'rally' if whole == 1 else 'rallies'} in 100{beaten}."


def wind_reasons(wind: Wind | None, *, behind: str) -> list[Reason]:
    """What a told wind asks of a deep ball; `behind` says it of a following one, with {ft}."""
    match wind:
        case Wind.BEHIND_US:
            text = f"10 mph behind: {behind.format(ft=WIND_BEHIND_CARRIES_FT)}"
        case Wind.AGAINST_US:
            text = f"10 mph against: aim {WIND_AGAINST_STOPS_FT:.0f} ft longer"
        case Wind.ACROSS:
            return [Reason(text="Cross wind: aim on its upwind side", source=COMMON_PRACTICE)]
        case _:
            return []
    return [Reason(text=text, source=WIND)]


def sum_lines(parts: Iterable[Part], *, what: str) -> tuple[str, ...]:
    """What each reason gives or costs, in rallies of 100 that get to this shot, under a title."""
    lines = tuple(
        f"{part.points:+.1f} {part.effect.because} ({part.effect.source.kind})"
        for part in parts
        if abs(part.points) >= LEAST_SHOWN
    )
    return (f"{what}, in rallies of 100:", *lines) if lines else ()
