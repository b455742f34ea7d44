"""Whether to play another match in the heat: cooling first, and medical staff decide.

Right by common practice, no source; the levels are those of the published index.
"""

from __future__ import annotations

from dataclasses import replace

import pytest
from noted_players import match

from knowledge.advice import Advice
from knowledge.situation import Asked
from knowledge.tactics import weather
from knowledge.vocabulary import Topic


def _ask(words: str) -> Advice:
    return weather.advise(replace(match(Topic.WEATHER_OR_BODY), asked=Asked(words=words)))


@pytest.mark.parametrize(
    "words",
    [
        "Our girls are tired, it is 33 degrees. Do they play another one?",
        "it is 36 degrees, should we play the next match",
        "92F and humid, can they go into the final",
    ],
)
def test_cooling_comes_before_the_next_match(words: str) -> None:
    advice = _ask(words)
    assert advice.call == "Cool first: shade, ice, drink; then ask medical staff."
    assert "danger" in (advice.number or "")
    assert advice.caution is not None


@pytest.mark.parametrize(
    ("words", "call"),
    [
        ("it is 33 degrees, how do we play today", "Cool hard between matches"),
        ("33 degrees. where do we play again", "Cool hard between matches"),
        ("can we play again at 20 degrees", "Play on"),
        ("can we play another one at 55 degrees C", "Stay off court"),
        ("it is 33 degrees and she is dizzy, does she play the next one", "Stop now."),
    ],
)
def test_what_asks_or_tells_something_else_is_answered_as_before(words: str, call: str) -> None:
    assert _ask(words).call.startswith(call)
