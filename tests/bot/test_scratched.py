"""What is told behind "scratch that" stands instead of the last note, where the two differ."""

from __future__ import annotations

import pytest
from talk import Talk

HANDS = {"left": ("hand", "left", False), "right": ("hand", "right", False)}


@pytest.fixture
def soll(demo: Talk) -> Talk:
    demo.say("new opponent soll")
    return demo


@pytest.mark.parametrize(
    "right",
    ["scratch that soll is righty", "no scratch that, soll righty", "delete that. soll is righty"],
)
def test_what_is_right_is_noted_and_the_slip_goes(soll: Talk, right: str) -> None:
    soll.say("soll is lefty")
    assert "Soll: right-handed." in soll.say(right)
    assert soll.claims("Soll") == {HANDS["right"]}


def test_words_beside_what_is_right_are_kept(soll: Talk) -> None:
    soll.say("soll plays left")
    told = soll.say("scratch that soll plays right, both fh mid")
    assert "Noted. Soll: plays right." in told
    assert "fh mid" in told


@pytest.mark.parametrize("again", ["scratch that soll is lefty", "forget that soll is lefty"])
def test_the_same_told_again_only_takes_it_back(soll: Talk, again: str) -> None:
    soll.say("soll is lefty")
    assert soll.say(again).startswith("Taken back:")
    assert soll.claims("Soll") == set()


def test_of_another_trait_nothing_goes_unasked(soll: Talk) -> None:
    soll.say("soll is lefty")
    soll.say("scratch that soll plays right")
    assert HANDS["left"] in soll.claims("Soll")


@pytest.mark.parametrize("right", ["scratch that soll is quick", "forget that. soll is quick"])
def test_of_a_note_that_says_more_only_that_is_put_right(soll: Talk, right: str) -> None:
    soll.say("soll is slow and okafor is left handed")
    soll.say(right)
    assert ("hand", "left", False) in soll.claims("Okafor")
    assert soll.claims("Soll") == {("foot_speed", "strength", False)}
