"""A cue for the one who is named, or for both: a bench has a line for each.

Common practice, no source.
"""

from __future__ import annotations

import pytest
from talk import Talk

FOR_TOM = [
    "cue for tom",
    "what do i tell tom",
    "what should i shout to tom",
    "one liner for tom between points",
    "shout for tom",
    "give me a word for tom",
    "message for tom before the serve",
]
FOR_BOTH = [
    "one cue each",
    "give me cue lines for both",
    "cue for mira and tom",
    "what should i say to both",
    "what do i tell them",
    "what should i shout to my two",
]
SEVERAL = ["tell me three things to shout", "three things to say", "give me 3 lines to call out"]


@pytest.fixture
def playing(demo: Talk) -> Talk:
    demo.say("next: okafor and lindqvist")
    return demo


@pytest.mark.parametrize("asks", FOR_TOM)
def test_the_cue_is_for_whoever_is_named(playing: Talk, asks: str) -> None:
    before = playing.notes()
    assert playing.say(asks).startswith("Tom: ")
    assert playing.notes() == before


@pytest.mark.parametrize("asks", FOR_BOTH)
def test_each_of_both_hears_a_line_of_their_own(playing: Talk, asks: str) -> None:
    first, second, *_ = playing.say(asks).splitlines()
    names = {first.partition(":")[0], second.removeprefix("· ").partition(":")[0]}
    assert names == {"Mira", "Tom"}
    assert first.partition(": ")[2].rstrip(".") not in second


def test_two_who_are_asked_about_in_turn_hear_different_lines(playing: Talk) -> None:
    for_tom, for_mira = (playing.say(f"cue for {one}").splitlines()[0] for one in ("tom", "mira"))
    assert for_tom.partition(": ")[2] != for_mira.partition(": ")[2]


@pytest.mark.parametrize("asks", SEVERAL)
@pytest.mark.parametrize("mode", ["", "/mode match"])
def test_several_lines_are_given(playing: Talk, asks: str, mode: str) -> None:
    if mode:
        playing.say(mode)
    call, *reasons = playing.say(asks).splitlines()
    assert sum(line.startswith("· ") for line in reasons) == 2
    assert all(call.rstrip(".") not in line for line in reasons)
