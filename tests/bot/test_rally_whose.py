"""Somebody else is meant by "him" after a rally: who it was is asked, and nothing is made up."""

from __future__ import annotations

import pytest
from talk import Talk


@pytest.fixture
def match(demo: Talk) -> Talk:
    demo.say("start")
    demo.say("our point")
    return demo


@pytest.mark.parametrize(
    "said",
    [
        "no i mean him not me",
        "no i meant her",
        "no him not me",
        "not me him",
        "no not me",
        "it was him",
        "no he did",
    ],
)
def test_who_it_was_is_asked(match: Talk, said: str) -> None:
    stored = match.stored()
    assert match.say(said).startswith("Who was it?")
    assert match.stored() == stored
    labels = [one.label for one in match.buttons]
    assert {"Tom", "Okafor", "Lindqvist"} <= {*labels}
    assert ("Mira" in labels) is ("not me" not in said)


def test_a_tap_says_who(match: Talk) -> None:
    match.say("no i mean him not me")
    assert "Tom" in match.tap("Tom")


def test_who_writes_is_still_understood(match: Talk) -> None:
    assert "Mira" in match.say("no me")


def test_after_a_question_it_is_of_the_question(match: Talk) -> None:
    match.say("where do i serve okafor")
    assert not match.say("no i mean her").startswith("Who was it?")
