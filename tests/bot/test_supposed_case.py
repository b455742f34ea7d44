"""What is only supposed of an opponent is asked, never noted; what a case brings about is told."""

from __future__ import annotations

import pytest
from talk import Talk

SUPPOSED = [
    "ok and if lindqvist poaches",
    "and if hale poaches",
    "if okafor poaches",
    "suppose okafor stacks",
    "say lindqvist poaches",
    "what if lindqvist crashes",
    "but if lindqvist drives",
    "even if okafor backs up",
]


@pytest.mark.parametrize("said", SUPPOSED)
@pytest.mark.parametrize("before", ["who should we target", None])
def test_a_case_is_asked_and_not_noted(demo: Talk, said: str, before: str | None) -> None:
    if before is not None:
        demo.say(before)
    notes = demo.notes()
    assert "Noted" not in demo.say(said)
    assert demo.notes() == notes


def test_a_supposed_habit_gets_its_answer(demo: Talk) -> None:
    demo.say("who should we target")
    call = demo.say("ok and if lindqvist poaches").splitlines()[0]
    assert call == "Go behind the poacher once, early in the game."
    assert demo.say("if okafor poaches").splitlines()[0] == call


@pytest.mark.parametrize(
    "said",
    [
        "lindqvist poaches",
        "lindqvist poaches if we dink middle",
        "if you dink him middle lindqvist pops it up",
        "when we lob okafor backs up",
        "if hale is tired he bangs",
    ],
)
def test_what_is_seen_in_a_case_is_noted(demo: Talk, said: str) -> None:
    assert demo.say(said).startswith("Noted")


def test_what_he_is_supposed_to_be_changes_the_question(demo: Talk) -> None:
    before = demo.say("where do i serve okafor").splitlines()[0]
    after = demo.say("and if okafor is a lefty").splitlines()[0]
    assert after.startswith("Serve Okafor")
    assert after != before


def test_what_they_may_do_is_no_part_of_a_complaint_told_before(demo: Talk) -> None:
    assert demo.say("im not dizzy but my head hurts").startswith("Stop now.")
    assert "poach" in demo.say("ok and if hale poaches").lower()
    assert demo.say("and if i feel dizzy again").startswith("Stop")
