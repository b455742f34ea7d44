"""A hip or a shoulder that a note names goes before the one that a rule would guess.

Common practice, no source.
"""

from __future__ import annotations

import pytest
from talk import Talk

ASKED = "where do i speed up at soll"


@pytest.fixture
def playing(demo: Talk) -> Talk:
    for name in ("soll", "quist"):
        demo.say(f"new opponent {name}")
    demo.say("next: soll and quist")
    return demo


@pytest.mark.parametrize(
    ("note", "hip"),
    [
        ("soll lefty pops up at his right hip", "right hip"),
        ("soll is a lefty. jams at the left hip", "left hip"),
        ("soll jams at the left hip", "left hip"),
        ("soll weak at the right hip", "right hip"),
        ("soll hates the ball at his right hip no left hip sorry", "left hip"),
        ("soll hates the ball at his right hip no left hip sorry, hates it", "left hip"),
        ("soll jams at the left hip, no wait, the right hip", "right hip"),
        ("soll jams at the right hip sorry left", "left hip"),
        ("soll doesnt like balls at her left shoulder, chicken wing", "left shoulder"),
        ("soll hates left shoulder balls", "left shoulder"),
        ("soll lefty, jams at the left hip, no wait, the right shoulder", "right shoulder"),
    ],
)
def test_the_hip_that_was_noted_is_called(playing: Talk, note: str, hip: str) -> None:
    assert "Noted. Soll:" in playing.say(note)
    assert playing.say(ASKED).splitlines()[0] == f"Speed up at Soll's {hip}."


def test_every_page_says_the_same_hip(playing: Talk) -> None:
    playing.say("soll lefty pops up at his right hip")
    assert "Soll's right hip" in playing.say("plan")
    assert "Soll's right hip" in playing.say("cue")


def test_the_newest_note_decides_and_undo_brings_the_other_back(playing: Talk) -> None:
    playing.say("soll jams at the left hip")
    playing.say("soll jams at the right hip")
    assert "right hip" in playing.say(ASKED).splitlines()[0]
    playing.say("undo")
    assert "left hip" in playing.say(ASKED).splitlines()[0]


@pytest.mark.parametrize("note", ["soll jams at the body", "quist jams at the left hip"])
def test_without_a_hip_of_theirs_the_rule_stands(playing: Talk, note: str) -> None:
    playing.say(note)
    assert "Soll's left" not in playing.say(ASKED).splitlines()[0]
