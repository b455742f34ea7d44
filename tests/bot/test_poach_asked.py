"""Our own poaching, theirs, and how likely theirs is: three questions."""

from __future__ import annotations

import pytest
from talk import Talk

from knowledge.tactics.our_poach import NOT_THE_RETURN, USUAL_CALL


@pytest.mark.parametrize(
    ("asked", "call"),
    [
        ("poach or stay", USUAL_CALL),
        ("poach how often", USUAL_CALL),
        ("how often should we poach", USUAL_CALL),
        ("how often should tom poach", USUAL_CALL),
        ("we poach 40% ok?", "40 in 100 is a lot"),
        ("poach rate 40% too much?", "40 in 100 is a lot"),
        ("poach off their return?", NOT_THE_RETURN),
        ("they read our signal", "Change the signal"),
    ],
)
def test_ours_is_answered_with_a_rate(demo: Talk, asked: str, call: str) -> None:
    before = demo.stored()
    assert demo.say(asked).startswith(call)
    assert demo.stored() == before


@pytest.mark.parametrize(
    "asked",
    [
        "chance lindqvist poaches?",
        "how likely is lindqvist to poach",
        "odds that lindqvist poaches",
        "how often does lindqvist poach",
    ],
)
def test_how_likely_theirs_is_stands_in_the_book(demo: Talk, asked: str) -> None:
    said = demo.say(asked)
    assert "poaches a lot (book" in said
    assert "Game:" not in said


@pytest.mark.parametrize("asked", ["chance we win", "chance of winning", "chance they win"])
def test_our_chance_to_win_stays_that(demo: Talk, asked: str) -> None:
    assert demo.say(asked).startswith("Game:")


@pytest.mark.parametrize(
    ("said", "kept"),
    [
        ("lindqvist reads our signal", "Noted"),
        ("okafor poaches everything", "Noted"),
        ("tom poaches too much", "Noted"),
    ],
)
def test_what_is_told_of_somebody_is_kept(demo: Talk, said: str, kept: str) -> None:
    assert demo.say(said).startswith(kept)


def test_their_poaching_keeps_its_answer(demo: Talk) -> None:
    for said in ("they poach a lot", "how do we stop the poach"):
        assert demo.say(said).startswith("Go behind the poacher once")
    assert "poach once in four" in demo.say("they pick on tom, how often do i poach")


def test_a_note_on_a_third_says_off_whom_and_undo_takes_it_back(fresh: Talk) -> None:
    fresh.say("next: gell and rudd")
    fresh.tap("add gell and rudd")
    before = fresh.say("poach or stay")
    fresh.say("rudd third shot drop is weak")
    assert "· Off Rudd's third: weak third shot (book" in fresh.say("poach or stay")
    assert "Rudd: “third shot drop is weak”" in fresh.say("why")
    fresh.say("undo")
    assert fresh.say("poach or stay").splitlines()[:2] == before.splitlines()[:2]
