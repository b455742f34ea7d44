"""Weather and bodies: cautions first, then what wind, sun and heat change."""

from __future__ import annotations

import re
from functools import cache

from knowledge.advice import Advice
from knowledge.cautions import FULL_SUN_ADDS_F, HEAT_DEFERS, fahrenheit, heat_index_f, heat_level
from knowledge.general_rule import GeneralRule, load_entries, overlap, read_rule
from knowledge.situation import Situation, Wind
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
    None: ANYTHING,
}
"""What a question is taken for whose words name nothing in particular."""


def advise(situation: Situation) -> Advice:
    """The caution or the correction that the words ask for, with the heat index if they give it."""
    words = situation.asked.words
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
