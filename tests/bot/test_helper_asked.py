"""What the helper does while they play at one of us: who gets the balls stays the same.

Common practice, no source.
"""

from __future__ import annotations

import pytest
from talk import Talk

TOM_GETS_THEM = "Tom: middle and deep. Mira: step in, show it."


@pytest.mark.parametrize(
    "asks",
    ["what does mira do", "what should mira do then", "whats miras job", "what does tom do"],
)
def test_what_one_of_us_does_is_asked_of_the_same_two(demo: Talk, asks: str) -> None:
    assert demo.say("they're going at tom every ball").startswith(TOM_GETS_THEM)
    assert demo.say(asks).startswith(TOM_GETS_THEM)


@pytest.mark.parametrize(
    "asks",
    [
        "should mira squeeze the middle",
        "can mira help",
        "does mira help",
        "mira should squeeze?",
        "do i tell mira to step in",
    ],
)
def test_a_named_helper_gets_a_yes(demo: Talk, asks: str) -> None:
    demo.say("they're going at tom every ball")
    yes = "Yes: Mira steps in, shows it. Tom: middle and deep."
    assert demo.say(asks).splitlines()[0] == yes


def test_a_helper_is_named_without_anything_before(demo: Talk) -> None:
    assert demo.say("should mira squeeze the middle").startswith("Yes: Mira steps in")
    assert demo.say("should mira help tom").startswith("Yes: Mira steps in")


def test_another_target_is_heard(demo: Talk) -> None:
    demo.say("they're going at tom every ball")
    demo.say("should mira squeeze the middle")
    mira = "Mira: middle and deep. Tom: step in, show it."
    assert demo.say("now they go at mira").startswith(mira)
    assert demo.say("what does tom do").startswith(mira)


def test_asked_whether_to_poach_the_helper_is_named(demo: Talk) -> None:
    demo.say("they're going at tom every ball")
    assert demo.say("should mira poach").startswith("Mira: step in and show it")


@pytest.mark.parametrize(
    "asks", ["should mira squeeze the middle", "can tom help out", "do i have mira slide over"]
)
def test_nothing_asked_is_noted(demo: Talk, asks: str) -> None:
    before = demo.notes()
    demo.say(asks)
    assert demo.notes() == before


@pytest.mark.parametrize(
    ("asks", "said"),
    [
        ("who takes mid w lefty righty both fh mid", "righty on the left, lefty on the right"),
        ("lefty righty who takes mid, both backhands in the middle", "lefty on the left"),
        (
            "who takes the middle with a lefty and a righty",
            "lefty and righty (taken: forehands in)",
        ),
    ],
)
def test_a_lefty_and_a_righty_are_taken_as_said(fresh: Talk, asks: str, said: str) -> None:
    told = fresh.say(asks)
    assert f"As you said: {said}" in told
    assert "right-handed" not in told
