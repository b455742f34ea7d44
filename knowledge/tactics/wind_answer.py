"""Wind: how much to aim off, computed for the said speed, for the shot asked about first."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from typing import Final

from knowledge.advice import Advice, Choice, MatchFact, Reason
from knowledge.general_rule import load_table
from knowledge.situation import Situation, Wind
from knowledge.sources import COMMON_PRACTICE, Source, SourceKind, computed
from knowledge.tactics.weather_said import (
    GUSTY_MPH,
    USUAL_MPH,
    WindSaid,
    wind_told,
)
from knowledge.vocabulary import Topic
from knowledge.wind import Shift, Stroke, shift

FLIGHT = computed("point mass in quadratic drag, no spin")
EMOND = Source(kind=SourceKind.PUBLISHED, citation="Emond et al. 2024")
"""arXiv 2409.19000, abstract read: against the wind is often preferable; by their assumptions."""

TOO_STRONG_MPH: Final = 40.0
"""From here on it is no wind to play in; common practice, no source."""

LOB_HOLDS_BELOW_MPH: Final = 15.0
"""Into a stronger wind no lob is safe; common practice, no source."""

FELT_FROM_MPH: Final = 10.0
DEPTH_POINTS: Final = 2.0
"""Rallies in 100 for the right depth where it matters, from 10 mph on: our coach's judgement, no
source."""

INCHES_BELOW_FT: Final = 1.5


def advise(situation: Situation) -> Advice:
    """The correction for the wind at hand; where it blows from comes from the words or a tap."""
    said = wind_told(situation.asked.words, before=situation.asked.before)
    if situation.wind not in (None, Wind.SOME, Wind.NONE):
        said = replace(said, way=situation.wind)
    mph = _mph(said)
    if mph >= TOO_STRONG_MPH:
        return _too_strong(mph)
    way = said.way or Wind.SOME
    stroke = said.strokes[0] if said.strokes else None
    return Advice(
        topic=Topic.WEATHER_OR_BODY,
        call=_call(way, stroke, mph, said),
        reasons=_reasons(way, stroke, mph),
        number=_worth(way, mph),
        unless=_unless(said),
        assumed=_assumed(said, mph),
        numbers=_numbers(way, mph),
        choices=_choices(way),
        more=_in_full(),
    )


def _mph(said: WindSaid) -> float:
    if said.mph is not None:
        return said.mph
    return GUSTY_MPH if said.gusty else USUAL_MPH


def shift_of(stroke: Stroke, way: Wind, mph: float) -> Shift:
    """How far this wind moves that stroke; across, the side is left to right."""
    whole = round(mph)
    if way is Wind.ACROSS:
        return shift(stroke, across_mph=whole)
    return shift(stroke, along_mph=-whole if way is Wind.AGAINST_US else whole)


@cache
def _calls() -> dict[str, dict[str, str]]:
    table = load_table("knowledge.tactics", "wind_calls.toml")
    return {
        way: {stroke: str(call) for stroke, call in row.items()}
        for way, row in table.items()
        if isinstance(row, dict)
    }


def _call(way: Wind, stroke: Stroke | None, mph: float, said: WindSaid) -> str:
    key = "plain" if stroke is None else stroke.value.replace(" ", "_")
    if way is Wind.AGAINST_US and stroke is Stroke.LOB and mph >= LOB_HOLDS_BELOW_MPH:
        key = "lob_strong"
    moved = shift_of(stroke or Stroke.RETURN, Wind.BEHIND_US if way is Wind.SOME else way, mph)
    size = moved.across_ft if way is Wind.ACROSS else moved.along_ft
    return _calls()[way][key].format(size=_size(size), upwind=_upwind(said))


def _upwind(said: WindSaid) -> str:
    if said.from_left is None:
        return "upwind"
    return "left" if said.from_left else "right"


def _size(feet: float) -> str:
    feet = abs(feet)
    return f"{round(12 * feet)} in" if feet < INCHES_BELOW_FT else f"{round(feet)} ft"


def _reasons(way: Wind, stroke: Stroke | None, mph: float) -> tuple[Reason, ...]:
    """The shot asked about both ways; without one what the usual shots do."""
    if way is Wind.ACROSS:
        found = [_drift(stroke, mph)]
    elif stroke is None:
        found = [_pair(way, (Stroke.RETURN, Stroke.DROP), mph), _pair(way, (Stroke.LOB,), mph)]
    else:
        found = [_both_ways(stroke, mph)]
        if way is Wind.SOME:
            found.append(_drift(stroke, mph))
    if way is Wind.AGAINST_US:
        found.append(Reason(text="Hard drives: often better into the wind", source=EMOND))
    found += [Reason(text=text, source=COMMON_PRACTICE) for text in _PRACTICE[way]]
    return tuple(found[:3])


_PRACTICE: Final = {
    Wind.BEHIND_US: (
        "Drive lower, drop softer, keep it spinning",
        "Their lobs fall short: move in",
    ),
    Wind.AGAINST_US: ("Their lobs sail: let the high ones go", "Drops need more arm"),
    Wind.ACROSS: ("Leave lobs and the downwind line out", "The wind brings it back into the court"),
    Wind.SOME: ("Across: aim at the upwind line", "Move your feet late and small"),
}


def _pair(way: Wind, strokes: tuple[Stroke, ...], mph: float) -> Reason:
    if way is Wind.SOME:
        return _both_ways(strokes[0], mph)
    moved = ", ".join(f"{one} {shift_of(one, way, mph).along_ft:+.1f}" for one in strokes)
    place = "behind" if way is Wind.BEHIND_US else "against"
    return Reason(text=f"{mph:.0f} mph {place}: {moved} ft", source=FLIGHT)


def _both_ways(stroke: Stroke, mph: float) -> Reason:
    behind = shift_of(stroke, Wind.BEHIND_US, mph).along_ft
    against = shift_of(stroke, Wind.AGAINST_US, mph).along_ft
    return Reason(
        text=f"{stroke.capitalize()}: {behind:+.1f} ft behind, {against:+.1f} against",
        source=FLIGHT,
    )


def _drift(stroke: Stroke | None, mph: float) -> Reason:
    if stroke is not None:
        size = shift_of(stroke, Wind.ACROSS, mph).across_ft
        return Reason(text=f"{mph:.0f} mph across: {stroke} drifts {size:.1f} ft", source=FLIGHT)
    ball, lob = (shift_of(one, Wind.ACROSS, mph).across_ft for one in (Stroke.RETURN, Stroke.LOB))
    text = f"{mph:.0f} mph across: return {ball:.1f} ft, lob {lob:.1f}"
    return Reason(text=text, source=FLIGHT)


def _worth(way: Wind, mph: float) -> str | None:
    if way not in (Wind.BEHIND_US, Wind.AGAINST_US) or mph < FELT_FROM_MPH:
        return None
    return f"Right depth: near {DEPTH_POINTS:g} in 100 (our guess)."


def _unless(said: WindSaid) -> str:
    if said.gusty:
        return "Gusts: aim middle, two feet inside each line."
    return "Gusts or swirls? Middle, bigger margins."


def _assumed(said: WindSaid, mph: float) -> str:
    if said.forecast_mph is not None:
        return f"Forecast {said.forecast_mph:.0f} mph: near {mph:.0f} at ball height."
    if said.is_number:
        return f"Taking {mph:.0f} mph at court, no forecast."
    return f"Taking {mph:.0f} mph; half the wind, half that."


def _numbers(way: Wind, mph: float) -> dict[str, float]:
    if way is Wind.SOME:
        return {"wind_mph": mph}
    moved = {
        f"{one}_shift_ft": (lambda s: s.across_ft if way is Wind.ACROSS else s.along_ft)(
            shift_of(one, way, mph)
        )
        for one in Stroke
    }
    return {"wind_mph": mph, **moved}


def _choices(way: Wind) -> tuple[Choice, ...]:
    topic = Topic.WEATHER_OR_BODY
    ways = [
        (Wind.BEHIND_US, "wind behind"),
        (Wind.AGAINST_US, "in our face"),
        (Wind.ACROSS, "across"),
    ]
    others = [
        Choice(label=label, topic=topic, fact=MatchFact.WIND.value, value=one)
        for one, label in ways
        if one is not way
    ]
    return (Choice(label="which end?", topic=Topic.CHOOSE_END_OR_SERVE), *others[:2])


def _too_strong(mph: float) -> Advice:
    return Advice(
        topic=Topic.WEATHER_OR_BODY,
        call="Ask event staff before you play in that.",
        reasons=(
            Reason(text="Loose nets, tents and signs can hit you", source=COMMON_PRACTICE),
            Reason(text="The ball goes where the wind wants", source=COMMON_PRACTICE),
        ),
        assumed=f"Read as {mph:.0f} mph. Less? Say it again.",
        caution="Event staff decide when play goes on.",
        numbers={"wind_mph": mph},
    )


def _in_full() -> tuple[str, ...]:
    return (
        "Computed: a point mass without spin, drag from the speed through the air.",
        "Assumed strokes: serve 37 mph, return 39, high return 31, drop 26, lob 28 at 60°.",
        "A higher, slower ball is moved more: a high return by 6 ft where a flat one goes 4.",
        "Forecasts are for 10 m up; at 2 m on open ground near 7/10 of it, less by a fence.",
        "Against the wind hard drives are often better (Emond et al. 2024, abstract).",
    )
