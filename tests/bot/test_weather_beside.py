"""Weather told beside a greeting or a shot is answered. Wordings: our own, no source."""

from __future__ import annotations

import pytest
from talk import Talk


@pytest.mark.parametrize(
    ("said", "call"),
    [
        (
            "good morning it is windy here and blowing right in our faces on the side by the lake",
            "Hit through it",
        ),
        ("hi its really windy today", "Find the wind's side"),
        ("lol its blowing like mad here", "Find the wind's side"),
        ("thanks and its raining now", "Stop on a wet court"),
        ("good morning the sun is right in our eyes", "Let sun-side lobs bounce"),
        (
            "sun is low too and i am on the side where i look right in it when they lob",
            "Let sun-side lobs bounce",
        ),
        ("i cant see the overhead, im looking into the sun", "Let sun-side lobs bounce"),
    ],
)
def test_weather_is_heard(fresh: Talk, said: str, call: str) -> None:
    assert fresh.say(said).startswith(call)


@pytest.mark.parametrize(
    "said",
    ["good morning coach", "good morning you rock", "great, thanks a lot", "nice day, thank you"],
)
def test_a_greeting_stays_one(fresh: Talk, said: str) -> None:
    assert fresh.say(said).startswith(("Hello!", "Any time"))


@pytest.mark.parametrize(
    "said", ["sun behind us should we lob", "should i lob when the sun is in their eyes"]
)
def test_our_own_lob_stays_a_lob(fresh: Talk, said: str) -> None:
    assert fresh.say(said).startswith("Lob ")
