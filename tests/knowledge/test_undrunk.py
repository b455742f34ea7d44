"""Nothing drunk: told in many words it is answered with drink, shade and when to stop."""

from __future__ import annotations

import pytest

from bot.chat.private_words import is_private
from knowledge.advice import Advice
from knowledge.situation import Asked, Situation
from knowledge.tactics import weather
from knowledge.tactics.undrunk import tells_undrunk
from knowledge.vocabulary import Topic

TOLD = [
    "its roasting now and i havent drank",
    "its hot and i havent drunk anything",
    "had no water since nine",
    "94 degrees and i forgot to drink",
    "we havent had anything to drink all morning",
]
ELSE = [
    "he never had a drop shot",
    "what do i drink now",
    "we have not had much luck",
    "doug was drunk last night",
    "should i drink before the final",
]


def _call(words: str) -> str:
    return weather.advise(Situation(topic=Topic.WEATHER_OR_BODY, asked=Asked(words=words))).call


@pytest.mark.parametrize("said", TOLD)
def test_who_has_not_drunk_drinks_first(said: str) -> None:
    assert _call(said).startswith("Drink now, in the shade")
    assert not is_private(said)


@pytest.mark.parametrize("said", ELSE)
def test_what_else_is_told_of_drink_or_a_drop_is_none(said: str) -> None:
    assert not tells_undrunk(said)


def test_who_is_unwell_stops_first() -> None:
    assert _call("havent drunk and i feel dizzy").startswith("Stop")


def test_who_is_drunk_stays_private() -> None:
    assert is_private("doug was drunk last night")


def test_thirst_is_drunk_for_and_clears_nobody_who_was_unwell() -> None:
    def told(words: str, before: str = "") -> Advice:
        asked = Asked(words=words, before=before)
        return weather.advise(Situation(topic=Topic.WEATHER_OR_BODY, asked=asked))

    for words in ("im fine just thirsty", "im thirsty", "we're so thirsty"):
        assert told(words).call.startswith("Drink now"), words
    after = told("im fine just thirsty", "soren's gassed, 30 C out here, dizzy")
    assert after.call.startswith("Drink now")
    assert "till staff clear it" in (after.unless or "")
    assert "medical staff" in told("ok im fine now just thirsty", "im dizzy and hot").call
    assert told("im so thirsty and dizzy").call.startswith("Stop now")
