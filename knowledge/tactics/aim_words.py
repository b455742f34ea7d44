"""Words that the first two shots, serve and return, share, and what the wind does to both."""

from __future__ import annotations

import math
from collections.abc import Iterable

from knowledge.advice import Choice, MatchFact, Reason
from knowledge.engine import Part
from knowledge.flight import MPS_PER_MPH, Shot
from knowledge.situation import Situation, Wind
from knowledge.sources import COMMON_PRACTICE, computed, counted
from knowledge.tactics.general_rule import NO_NOTES_DECIDE
from knowledge.tactics.serve_return_depth import Depth, carry_ft
from knowledge.tactics.wind_along import BREEZE_MPS
from knowledge.vocabulary import Topic

NOBODY_NAMED = "General rule: name the pair and I use your notes."
STILL_AIR = "Taken: no wind."

REASONS = 2
"""Beside the change-up and the risk a third would not be read: "why" has the sum of them all."""

REASON_LIMIT = 50
"""Characters of a reason that a phone shows in little more than a line."""

WIND = computed("flight with wind along the court")

NAIVE_FT = 3.0
"""What many aim at, inside the baseline: its misses are said beside those of the better aim.
Common practice, no source."""

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


def assumed(situation: Situation, *, is_general: bool) -> str | None:
    """What a call was made without: names, notes that decide, or a wind."""
    if not situation.theirs:
        return NOBODY_NAMED
    if is_general:
        return NO_NOTES_DECIDE
    return STILL_AIR if situation.wind is None else None


def deep_pays(misses: float) -> str:
    """Up to how many extra misses depth is worth it: whole ones, never rounded up."""
    return f"Deep pays up to {math.floor(misses)} extra misses in 100."


def deep_costs(misses: float) -> str:
    """How many extra misses depth costs."""
    return f"Deep costs about {counted(round(misses), 'extra miss', 'extra misses')} in 100"


def rallies(points: float, *, over: str = "") -> str:
    """A gain in plain words; `over` is what it is better than."""
    whole = round(points)
    if whole < 1:
        return "Little between them: under 1 rally in 100."
    beaten = f" over {over}" if over else ""
    return f"Worth about {whole} {'rally' if whole == 1 else 'rallies'} in 100{beaten}."


def wind_reasons(wind: Wind | None, shot: Shot, wind_mps: float) -> list[Reason]:
    """What a told wind does to a deep ball of this shot."""
    moves_ft, mph = abs(carry_ft(shot, wind_mps)), abs(wind_mps) / MPS_PER_MPH
    match wind:
        case Wind.BEHIND_US:
            text = f"{mph:.0f} mph behind: carries {moves_ft:.0f} ft, hit shorter"
        case Wind.AGAINST_US:
            text = f"{mph:.0f} mph against: stops {moves_ft:.0f} ft, hit longer"
        case Wind.ACROSS:
            return [Reason(text="Cross wind: aim on its upwind side", source=COMMON_PRACTICE)]
        case Wind.SOME:
            behind, against = (abs(carry_ft(shot, mps)) for mps in (BREEZE_MPS, -BREEZE_MPS))
            mph = BREEZE_MPS / MPS_PER_MPH
            text = f"{mph:.0f} mph behind adds {behind:.0f} ft, against takes {against:.0f}"
        case _:
            return []
    return [Reason(text=text, source=WIND)]


def aim_said(depth: Depth, aim_ft: float) -> str:
    """Where to aim and what it costs, beside what many aim at."""
    lands = depth.usual
    here, naive = (max(1, round(100 * lands.long(each))) for each in (aim_ft, NAIVE_FT))
    do = "Land it" if depth.ball.wind_mps else "Aim"
    start = f"{do} {_whole(aim_ft)} ft in: {here} in 100 long"
    return f"{start}." if naive <= here else f"{start}; at {NAIVE_FT:.0f} ft {naive}."


def _whole(feet: float) -> int:
    """Half a foot goes up: the shorter aim is the safer one."""
    return math.floor(feet + 0.5)


def naive_said(depth: Depth) -> str:
    """What aiming where many do would cost, against mid-court."""
    lands = depth.usual
    misses = 100 * (lands.long(NAIVE_FT) - lands.long(depth.row.mid_ft))
    return f"{NAIVE_FT:.0f} ft in would miss {misses:.0f} more in 100"


def wind_choices(topic: Topic, wind: Wind | None) -> list[Choice]:
    """The wind along the court as buttons, where nobody said from where it blows."""
    if wind not in (None, Wind.SOME):
        return []
    rows = (("wind behind", Wind.BEHIND_US), ("into the wind", Wind.AGAINST_US))
    return [
        Choice(label=label, topic=topic, fact=MatchFact.WIND.value, value=one.value)
        for label, one in rows
    ]


def sum_lines(parts: Iterable[Part], *, what: str) -> tuple[str, ...]:
    """What each reason gives or costs, in rallies of 100 that get to this shot, under a title."""
    lines = tuple(
        f"{part.points:+.1f} {part.effect.because} ({part.effect.source.kind})"
        for part in parts
        if abs(part.points) >= LEAST_SHOWN
    )
    return (f"{what}, in rallies of 100:", *lines) if lines else ()
