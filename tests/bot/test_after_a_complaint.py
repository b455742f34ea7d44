"""What is said after a complaint of a body, or instead of one: it stays a body's."""

from __future__ import annotations

import pytest
from talk import Talk


def call(said: str) -> str:
    return said.splitlines()[0]


STAFF_FIRST = "Have medical staff look first. Sit out till then."


@pytest.mark.parametrize(
    "said",
    [
        "nah its fine just nerves",
        "it was nothing",
        "is it only nerves?",
        "prob just something i ate",
    ],
)
def test_a_guess_of_ones_own_calls_no_alarm_off(fresh: Talk, said: str) -> None:
    fresh.say("my chest feels tight")
    assert call(fresh.say(said)) == STAFF_FIRST
    assert "emergency number" in fresh.sent[-1]


@pytest.mark.parametrize("said", ["and the heat?", "im nervous, game plan", "can i have a coffee"])
def test_what_guesses_nothing_has_its_own_answer(fresh: Talk, said: str) -> None:
    fresh.say("my chest feels tight")
    assert call(fresh.say(said)) != STAFF_FIRST


@pytest.mark.parametrize(
    ("told", "asked"),
    [
        ("cramp in my calf", "can i get a medical timeout"),
        ("my knee hurts", "do we call medical"),
        ("no complaint yet", "i have cramp in my calf we need a medical time out"),
    ],
)
def test_a_medical_time_out_forgets_no_complaint(fresh: Talk, told: str, asked: str) -> None:
    fresh.say(told)
    fresh.say(asked)
    assert "sit out" in fresh.say("its fine now").lower()


@pytest.mark.parametrize(
    "said", ["its roasting hot and i havent drunk anything", "we havent had any water all morning"]
)
def test_who_has_not_drunk_is_told_to_and_nothing_is_handed_back(fresh: Talk, said: str) -> None:
    assert call(fresh.say(said)).startswith("Drink now")
    assert not fresh.notes()
