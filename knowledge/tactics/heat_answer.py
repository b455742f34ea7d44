"""Heat: the index by both published forms, its class, the sun on top, and what it changes today."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from types import MappingProxyType
from typing import Final

from knowledge.advice import Advice, Reason
from knowledge.cautions import (
    FULL_SUN_ADDS_F,
    HEAT_DEFERS,
    HeatLevel,
    celsius_of,
    heat_index_f,
    heat_level,
)
from knowledge.dataclass import dataclass
from knowledge.regex import regex
from knowledge.sources import COMMON_PRACTICE, Source, SourceKind
from knowledge.tactics.weather_said import HeatSaid, folded
from knowledge.vocabulary import Topic

NIOSH = Source(kind=SourceKind.PUBLISHED, citation="NIOSH 2017-126")
"""Heat stress: hydration (read): 8 oz each 15 to 20 minutes of work in the heat, never over 48 oz
an hour. Written for workers; no sheet for players was found."""

HOW_MUCH: Final = Reason(text="8 oz each 15-20 min, never over 48 oz/hour", source=NIOSH)
HOW_MUCH_METRIC: Final = Reason(text="240 ml each 15-20 min, never over 1.4 l/hour", source=NIOSH)
"""How much to drink in the heat, and the same for who speaks in Celsius: 8 oz are 237 ml."""


def in_units(reasons: Sequence[Reason], *, celsius: bool) -> tuple[Reason, ...]:
    """The reasons with how much to drink in millilitres, for who speaks in Celsius."""
    return tuple(HOW_MUCH_METRIC if celsius and " oz" in one.text else one for one in reasons)


DRY_PERCENT: Final = 40.0
DAMP_PERCENT: Final = 60.0
HUMID_PERCENT: Final = 70.0
"""The two branches where no humidity is said, and what "humid" is taken for: common practice, no
source. Great heat is seldom damper than the second."""

HOT_FROM_F: Final = 80.0
COLD_BELOW_F: Final = 50.0
HOTTEST_F: Final = 135.0
"""Above any air temperature on record: taken for a slip."""

_CALLS: Final = MappingProxyType(
    {
        HeatLevel.NONE: "Play on: drink and shade as usual.",
        HeatLevel.CAUTION: "Drink early; shade between matches.",
        HeatLevel.EXTREME_CAUTION: "Cool down between matches: shade, ice, salt.",
        HeatLevel.DANGER: "Cool hard between matches; ask for longer breaks.",
        HeatLevel.EXTREME_DANGER: "Stay off court: ask event and medical staff.",
    }
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Felt:
    """A heat index in degrees F: the worse branch, and the better one if humidity is assumed."""

    index_f: float
    low_f: float | None = None
    from_said: bool = False


def felt(said: HeatSaid) -> Felt | None:
    """The index of what was said; None without a temperature that is air."""
    if said.feels_like_f is not None:
        return Felt(index_f=said.feels_like_f, from_said=True)
    degrees = said.temperature_f
    if degrees is None or degrees > HOTTEST_F:
        return None
    if said.humidity_percent is not None:
        return Felt(index_f=heat_index_f(degrees, said.humidity_percent))
    low, high = heat_index_f(degrees, DRY_PERCENT), heat_index_f(degrees, DAMP_PERCENT)
    if said.humid:
        return Felt(index_f=heat_index_f(degrees, HUMID_PERCENT))
    return Felt(index_f=low) if said.dry else Felt(index_f=high, low_f=low)


def heat_line(index: Felt, *, celsius: bool) -> str:
    """The number that matters: index, class, and full sun on top."""
    degrees, level = f"{index.index_f:.0f} °F", heat_level(index.index_f)
    if celsius:
        sun = celsius_of(FULL_SUN_ADDS_F) - celsius_of(0)
        return f"Index {celsius_of(index.index_f):.0f} °C: {level}; sun +{sun:.0f} °C."
    name = "Feels like" if index.from_said else "Index"
    return f"{name} {degrees}: {level}; sun up to +{FULL_SUN_ADDS_F:.0f}."


def assumed_line(said: HeatSaid, index: Felt) -> str | None:
    """What was taken for granted: the humidity, or the scale of the degrees."""
    if index.low_f is not None:
        scale = celsius_of if said.celsius else float
        low, high = f"{scale(index.low_f):.0f}", f"{scale(index.index_f):.0f}"
        return f"No humidity: 40% is {low} °{'C' if said.celsius else 'F'}, 60% {high}."
    if said.guessed_unit:
        return f"Read as °{'C' if said.celsius else 'F'}."
    if said.humidity_percent is None and not index.from_said:
        return f"Taken as {HUMID_PERCENT if said.humid else DRY_PERCENT:.0f}% humidity."
    return None


_ANOTHER: Final = regex(
    r"(?<!how )(?<!where )(?<!when )(?<!what )(?<!who )(?<!whom )"
    r"\b(?:do|does|should|shall|can|could|may|will|would) (?:\w+ ){1,3}?"
    r"(?:play|start|enter|go (?:into|out|on)) (?:\w+ ){0,2}?(?:another|next|more|again|final"
    r"|semi|semifinal|quarter|quarterfinal)\b"
)
"""Whether to play the next match at all; how to play in such a heat is another question."""

_WHETHER: Final = MappingProxyType(
    {
        HeatLevel.CAUTION: "Cooled and fresh again: yes; else sit out.",
        HeatLevel.EXTREME_CAUTION: "Cool first: shade, ice, drink. Fresh again? Then yes.",
        HeatLevel.DANGER: "Cool first: shade, ice, drink; then ask medical staff.",
        HeatLevel.EXTREME_DANGER: _CALLS[HeatLevel.EXTREME_DANGER],
    }
)


def asks_if_another(words: str) -> bool:
    """Whether it is asked if one plays another match."""
    return _ANOTHER.search(" ".join(folded(words).split())) is not None


def another(said: HeatSaid, index: Felt) -> Advice:
    """Whether to play the next one in such a heat: cooling comes first, and staff decide."""
    usual, level = advise(said, index), heat_level(index.index_f)
    if level not in _WHETHER:
        return usual
    rests = "Still hot or weak after 15 min of shade: sit out"
    reasons = (Reason(text=rests, source=COMMON_PRACTICE), usual.reasons[1], usual.reasons[0])
    return replace(usual, call=_WHETHER[level], reasons=reasons)


def advise(said: HeatSaid, index: Felt) -> Advice:
    """What a heat like this changes today."""
    return Advice(
        topic=Topic.WEATHER_OR_BODY,
        call=_CALLS[heat_level(index.index_f)],
        reasons=(
            HOW_MUCH_METRIC if said.celsius else HOW_MUCH,
            Reason(text="Dizzy, chills, sick, headache: stop at once", source=COMMON_PRACTICE),
            Reason(text="Short points; time-outs for breath", source=COMMON_PRACTICE),
        ),
        number=heat_line(index, celsius=said.celsius),
        assumed=assumed_line(said, index),
        caution=HEAT_DEFERS,
        numbers={"heat_index_f": index.index_f},
        more=(
            "Index: Rothfusz 1990, two adjustments, and the simple form below 80 °F (NOAA).",
            "Caution from 80, extreme caution 90, danger 103, extreme danger 125 °F.",
            "It is for shade and light wind; full sun adds up to 15 °F.",
            "Between matches: shade, ice towel, wet shirt, salty sips, small familiar food.",
            "Heart, kidneys, pregnancy or pills: ask medical staff before you play in it.",
        ),
    )
