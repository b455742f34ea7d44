"""Somebody hurt is offered a break or its rules, never how to play on (common practice)."""

from __future__ import annotations

import pytest
from talk import Talk

from bot.chat.payload import Tap, Verb
from knowledge.vocabulary import Topic

BESIDE_A_BODY = {Topic.TIMEOUT_NOW, Topic.RULES_QUESTION, Topic.WEATHER_OR_BODY}


@pytest.mark.parametrize(
    "text",
    [
        "i rolled my ankle can i play on?",
        "my knee hurts should i keep going",
        "tom hit his head and feels dizzy",
        "cramp in my calf what now",
    ],
)
def test_no_tactics_are_offered(demo: Talk, text: str) -> None:
    demo.say(text)
    taps = [Tap.parse(one.payload) for one in demo.buttons]
    asked = {Topic(tap.args[0]) for tap in taps if tap.verb is Verb.ASK}
    assert asked <= BESIDE_A_BODY


def test_other_questions_of_the_weather_keep_their_offers(demo: Talk) -> None:
    """Nobody is hurt: what else may have been meant is still a button."""
    demo.say("wind in our face, where do i serve")
    assert [one for one in demo.buttons if Tap.parse(one.payload).verb is Verb.ASK]
