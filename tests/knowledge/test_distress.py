"""Real distress is heard, figures of speech are not.

The line follows general guidance on talking to people in distress, from memory: stop, don't be
alone, tell someone you trust, local emergency or crisis line. Nothing medical is claimed.
"""

from __future__ import annotations

import pytest

from knowledge.distress import Distress, distress_of
from knowledge.situation import Asked, Situation
from knowledge.tactics import reset_head
from knowledge.vocabulary import Topic


@pytest.mark.parametrize(
    ("said", "kind"),
    [
        ("i want to die", Distress.HARM),
        ("I don't want to live anymore", Distress.HARM),
        ("my partner says he wants to kill himself", Distress.HARM),
        ("thinking of hurting myself", Distress.HARM),
        ("everyone is better off without me", Distress.HARM),
        ("what's the point of living", Distress.HARM),
        ("she is having a panic attack", Distress.PANIC),
        ("i can't stop crying", Distress.PANIC),
        ("i hate myself, i'm worthless", Distress.DESPAIR),
        ("i feel so hopeless", Distress.DESPAIR),
    ],
)
def test_distress_is_heard(said: str, kind: Distress) -> None:
    assert distress_of(said) is kind
    advice = reset_head.advise(Situation(topic=Topic.RESET_HEAD, asked=Asked(words=said)))
    lines = " ".join(filter(None, (advice.call, advice.number, advice.unless, advice.caution)))
    assert advice.call.startswith("Stop")
    assert "trust" in lines or "someone" in lines
    assert "emergency number" in lines
    assert not advice.reasons
    assert not advice.choices


@pytest.mark.parametrize(
    "said",
    [
        "they are killing us",
        "no mans land is killing me",
        "killing myself chasing lobs",
        "i could kill him for that dink",
        "i want to kill the point",
        "dying out there in this heat",
        "end it early at the net",
        "end it all with a drive",
        "i panic when they speed up",
        "my backhand is hopeless",
        "hopeless against lobs",
        "dead dinks all day",
        "will the wind die down",
        "how many minutes do i have if i hurt myself",
        "they want to hurt us with pace",
    ],
)
def test_figures_of_speech_are_none(said: str) -> None:
    assert distress_of(said) is None
