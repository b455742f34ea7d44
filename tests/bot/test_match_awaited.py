"""A match whose names are still asked about: what is played is its own, whoever is named in it."""

from __future__ import annotations

import pytest
from talk import Talk


@pytest.fixture
def awaited(fresh_anywhere: Talk) -> Talk:
    """Soll and Quist announced, then Varnell and Mireaux, of whom Mireaux is not added yet."""
    for said in ("we are tamsel and idris", "add soll", "add quist", "next: soll and quist"):
        fresh_anywhere.say(said)
    fresh_anywhere.say("add varnell")
    fresh_anywhere.say("next: varnell and mireaux")
    return fresh_anywhere


@pytest.mark.parametrize(
    "said", ["lost g1 9-11 to varnell", "lost g1 9-11 varnell poached everything"]
)
def test_a_result_that_names_one_of_them_waits_for_the_other(awaited: Talk, said: str) -> None:
    assert awaited.say(said).startswith("First add mireaux")
    answer = awaited.say("add mireaux")
    assert answer.startswith("Next: Varnell and Mireaux")
    assert "Game 1 theirs, 9-11" in answer


def test_a_note_beside_a_result_that_waits_is_kept_with_it(awaited: Talk) -> None:
    awaited.say("g1 lost 7-11 mireaux started banana serving wide to idris bh")
    answer = awaited.say("add mireaux")
    assert "Game 1 theirs, 7-11" in answer
    assert awaited.notes()[0].text == "mireaux started banana serving wide to idris bh"


def test_questions_about_others_do_not_push_it_out(awaited: Talk) -> None:
    for name in ("ashby", "brell", "corvin", "dunmore", "elphick", "farrow", "gresley", "hodder"):
        awaited.say(f"note: {name} is slow")
    assert awaited.say("lost g1 9-11").startswith("First add mireaux")


@pytest.fixture
def announced(fresh_anywhere: Talk) -> Talk:
    for said in ("we are tamsel and idris", "add ruun", "add mireaux", "add quist"):
        fresh_anywhere.say(said)
    fresh_anywhere.say("next: mireaux and ruun")
    return fresh_anywhere


@pytest.mark.parametrize(
    "said",
    [
        "now mireaux w toomey not ruun",
        "mireaux w toomey today, not ruun",
        "toomey instead of ruun",
        "toomey is in for ruun",
        "ruun is out, mireaux plays w toomey",
        "mireaux is playing with toomey now",
    ],
)
def test_somebody_new_in_their_pair_is_added_then_announced(announced: Talk, said: str) -> None:
    notes = announced.notes()
    assert announced.say(said).startswith("No toomey in your book yet.")
    assert announced.say("add toomey").startswith("Next: Mireaux and Toomey")
    assert announced.notes() == notes


@pytest.mark.parametrize(
    "said",
    [
        "its mireaux and quist not ruun",
        "quist plays for ruun now",
        "they subbed ruun for quist",
        "ruun is out quist in",
        "now mireaux and quist",
    ],
)
def test_somebody_of_the_book_takes_the_place(announced: Talk, said: str) -> None:
    assert announced.say(said).startswith("Next: Mireaux and Quist")


@pytest.mark.parametrize(
    "said",
    ["mireaux plays with spin", "serve to mireaux not ruun", "lob for ruun", "mireaux and ruun"],
)
def test_play_and_advice_replace_nobody(announced: Talk, said: str) -> None:
    assert "Next:" not in announced.say(said)
    assert announced.context.theirs == tuple(map(announced.player, ("Mireaux", "Ruun")))
