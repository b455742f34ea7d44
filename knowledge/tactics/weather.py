"""Weather and bodies: cautions first, then what wind, sun and heat change."""

from __future__ import annotations

import re
from functools import cache

from knowledge.advice import Advice, Confidence, Reason
from knowledge.cautions import (
    DEFERS,
    FULL_SUN_ADDS_F,
    HEAT_DEFERS,
    fahrenheit,
    heat_index_f,
    heat_level,
)
from knowledge.emergencies import Emergency, emergency_of
from knowledge.general_rule import GeneralRule, load_entries, overlap, read_rule
from knowledge.situation import Situation, Wind
from knowledge.sources import COMMON_PRACTICE, rule
from knowledge.vocabulary import Topic

_TEMPERATURE = re.compile(r"(\d{2,3})\s*(?:°|degrees?)?\s*([cf])\b", re.IGNORECASE)
_HUMIDITY = re.compile(r"(\d{1,3})\s*(?:%|percent)")

HEAT_WORDS = "heat"
ANYTHING = "anything"

WIND_WORDS = {
    Wind.BEHIND_US: "wind behind",
    Wind.AGAINST_US: "headwind",
    Wind.ACROSS: "crosswind",
    Wind.SOME: "wind",
    Wind.NONE: ANYTHING,
    None: ANYTHING,
}
"""What a question is taken for whose words name nothing in particular."""


def advise(situation: Situation) -> Advice:
    """The caution or the correction that the words ask for, with the heat index if they give it."""
    words = situation.asked.words
    emergency = emergency_of(words)
    if emergency is not None:
        return _stop(emergency)
    index = said_heat_index_f(words)
    otherwise = HEAT_WORDS if index is not None else WIND_WORDS[situation.wind]
    found = find_entry(words) or find_entry(otherwise)
    if found is None:
        raise LookupError(f"weather.toml has no entry for {otherwise!r}")
    return Advice(
        topic=Topic.WEATHER_OR_BODY,
        call=found.call,
        reasons=found.reasons,
        number=None if index is None else _heat_line(index),
        unless=found.unless,
        caution=found.caution or (None if index is None else HEAT_DEFERS),
        numbers={} if index is None else {"heat_index_f": index},
    )


_FIRST_AID = {
    Emergency.LIFE: (
        "Stop. Call emergency help and medical staff now.",
        ("Sit or lie down; don't stay alone", "Not breathing: start CPR, send for the AED"),
    ),
    Emergency.HEAT: (
        "Stop now. Get medical staff; shade, cool down.",
        ("Lie down, feet up; don't stay alone", "Confused or not sweating: emergency number"),
    ),
    Emergency.HEAD: (
        "Stop now. Get medical staff: it may be the head.",
        ("No more play today, even if it passes", "Worse, sick or sleepy: emergency number"),
    ),
    Emergency.EYE: (
        "Stop now. Get medical staff: an eye can't wait.",
        ("Don't rub or press; cover it loosely", "Sight changed: emergency number"),
    ),
    Emergency.INJURY: (
        "Stop now. Get medical staff; don't play on it.",
        ("Keep it still; press a clean cloth on bleeding", "Heavy bleeding: emergency number"),
    ),
}
"""What to do first, in the words of general first-aid teaching (from memory)."""


def _stop(emergency: Emergency) -> Advice:
    call, first_aid = _FIRST_AID[emergency]
    return Advice(
        topic=Topic.WEATHER_OR_BODY,
        call=call,
        reasons=(
            *(Reason(text=text, source=COMMON_PRACTICE) for text in first_aid),
            Reason(text="Medical time-out: up to 15 minutes", source=rule("10.B")),
        ),
        caution=DEFERS,
        confidence=Confidence.GENERAL_RULE,
    )


def find_entry(words: str) -> GeneralRule | None:
    """The entry that covers most of the words, the graver (earlier) one if equal."""
    best = max(entries(), key=lambda entry: overlap(entry.words, words))
    return best if overlap(best.words, words) else None


@cache
def entries() -> tuple[GeneralRule, ...]:
    """All entries, gravest first; RuleDataError if one does not fit."""
    return tuple(read_rule(row) for row in load_entries("knowledge.tactics", "weather.toml"))


def said_heat_index_f(words: str) -> float | None:
    """Heat index in degrees F if the words give temperature and humidity: "33 C, 60%"."""
    temperature, humidity = _TEMPERATURE.search(words), _HUMIDITY.search(words)
    if temperature is None or humidity is None or int(humidity[1]) > 100:
        return None
    degrees = float(temperature[1])
    return heat_index_f(
        fahrenheit(degrees) if temperature[2].lower() == "c" else degrees, float(humidity[1])
    )


def _heat_line(index_f: float) -> str:
    sun = round(FULL_SUN_ADDS_F)
    return f"Heat index {index_f:.0f} °F: {heat_level(index_f)}; full sun up to +{sun}."
