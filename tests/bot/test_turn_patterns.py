"""Symptoms, probes and the head, down the real path: words, buttons, and help before tactics."""

from __future__ import annotations

import pytest
from talk import Talk

POP_UPS = "our dinks pop up"


def test_the_second_symptom_is_a_tap_away(demo: Talk) -> None:
    first = demo.say("they bang everything. also our dinks pop up")
    assert first.startswith("Stand half a step back")
    assert demo.tap(POP_UPS).startswith("Soften the grip")


def test_a_follow_up_keeps_the_symptom(demo: Talk) -> None:
    first = demo.say("what do we do, they bang everything")
    again = demo.say("and if its both of them doing it")
    assert again.splitlines()[0] == first.splitlines()[0]


def test_a_symptom_in_a_follow_up_is_answered_itself(demo: Talk) -> None:
    demo.say("what do we do, they bang everything")
    assert demo.say("and what if they stack, how do we beat it").startswith("Return at the one")


def test_a_probe_is_answered_by_a_tap_and_asks_on(demo: Talk) -> None:
    before = demo.notes()
    demo.say("never met hale and ruiz, what do i look for in the warm up")
    label = demo.buttons[0].label
    demo.tap(label)
    assert len(demo.notes()) == len(before) + 1
    assert label not in [one.label for one in demo.buttons]


@pytest.mark.parametrize(
    "said", ["i want to die", "tom wants to kill himself", "im having a panic attack"]
)
def test_distress_gets_people_first_and_nothing_is_noted(demo: Talk, said: str) -> None:
    notes = demo.notes()
    reply = demo.say(said)
    assert reply.startswith("Stop")
    assert "emergency number" in reply
    assert "Okafor" not in reply
    assert demo.notes() == notes


def test_trouble_with_breath_is_still_an_emergency(demo: Talk) -> None:
    assert "medical" in demo.say("panic attack, i cant breathe").splitlines()[0].lower()
