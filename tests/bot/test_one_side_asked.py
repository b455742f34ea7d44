"""A report on one side of what is noted: weaknesses or strengths alone."""

from __future__ import annotations

import pytest
from talk import Talk


@pytest.mark.parametrize(
    "asked",
    ["whats weak about okafor", "what are okafors weaknesses", "where is okafor weak",
     "what is okafor bad at", "any holes in okafors game"],
)  # fmt: skip
def test_weaknesses_alone(demo: Talk, asked: str) -> None:
    said = demo.say(asked).splitlines()
    assert said[0] == "Okafor: weak backhand dink, jams at the body, slow forward."
    assert not [line for line in said if "strong" in line or "right-handed" in line]


@pytest.mark.parametrize("asked", ["what are okafors strengths", "what is okafor good at"])
def test_strengths_alone(demo: Talk, asked: str) -> None:
    said = demo.say(asked).splitlines()
    assert said[0] == "Okafor: strong speed-up."
    assert not [line for line in said if "weak" in line]


def test_both_are_the_whole_report(demo: Talk) -> None:
    assert demo.say("okafors strengths and weaknesses") == demo.say("report on okafor")


def test_as_many_say_the_contrary(demo: Talk) -> None:
    assert demo.say("whats weak about hale").startswith("Hale: slow feet?")


def test_nothing_on_that_side(demo: Talk) -> None:
    assert demo.say("what are hales strengths").startswith("No strength of Hale is noted.")


def test_the_pair_by_name(demo: Talk) -> None:
    said = demo.say("what are their weaknesses").splitlines()[0]
    assert said == "Lindqvist: weak third shot; Okafor: weak backhand dink."
