"""Players and pairs compared by the book, without taking what the topics answer."""

from __future__ import annotations

import pytest
from talk import Talk

from bot.chat.said import CompareAsked, Question
from knowledge.phone_screen import wrapped


@pytest.fixture
def four(fresh: Talk) -> Talk:
    fresh.say("im coaching rosalind keane and dev marchetti")
    fresh.say("pool tran and oduya then mcnab and farkas one game to fifteen")
    for note in (
        "farkas is a lefty",
        "mcnab has a weak third",
        "oduya has a weak backhand dink",
        "tran poaches a lot",
    ):
        assert fresh.say(note).startswith("Noted.")
    return fresh


@pytest.mark.parametrize(
    ("asked", "told"),
    [
        ("who is a lefty", "Lefty: Farkas."),
        ("who are the lefties", "Lefty: Farkas."),
        ("any lefties in the pool", "Lefty: Farkas."),
        ("which of them is a lefty", "Nobody noted: lefty."),
        ("who has the weakest third", "Weakest third-shot drop: Mcnab."),
        ("who has the worst backhand dink", "Weakest backhand dink: Oduya."),
        ("who has the best serve", "Nobody noted: strong serve."),
        ("who poaches the most", "Most often, poaching: Tran."),
        ("which pair is most dangerous", "Most dangerous: Tran/Oduya."),
        ("who is the strongest pair", "Most dangerous: Tran/Oduya."),
        ("who is the easiest team", "Weakest: Mcnab/Farkas."),
        ("who is the weakest of the eight", "Weakest: Mcnab."),
        ("compare tran with oduya", "More dangerous: Tran."),
        ("compare tran and oduya with mcnab and farkas", "More dangerous: Tran/Oduya."),
        ("difference between tran/oduya and mcnab/farkas", "More dangerous: Tran/Oduya."),
    ],
)
def test_answered_by_the_book(four: Talk, asked: str, told: str) -> None:
    said = four.say(asked)
    assert said.splitlines()[0] == told
    assert wrapped(said.splitlines()) <= 6


def test_both_sides_say_what_stands_behind_them(four: Talk) -> None:
    said = four.say("compare tran and oduya with mcnab and farkas")
    assert "· Oduya: weak backhand dink (book: 1 note, today)" in said
    assert "· Mcnab: weak third shot (book: 1 note, today)" in said


def test_what_to_do_differently_makes_no_pair_of_the_two(four: Talk) -> None:
    said = four.say("what do we do differently against oduya than against mcnab")
    assert "Dink Oduya's backhand" in said
    assert "Return at Mcnab" in said
    with four.book() as book:
        pairs = {frozenset(one.players) for one in book.pairs()}
    assert {four.player("Oduya"), four.player("Mcnab")} not in pairs


@pytest.mark.parametrize("asked", ["who takes the middle", "who poaches", "who lobs"])
def test_who_of_ours_may_be_meant(fresh: Talk, asked: str) -> None:
    fresh.say("add Hale")
    fresh.say(asked)
    assert fresh.heard is not None
    assert not isinstance(fresh.heard.understood, CompareAsked)


def test_of_whom_nothing_is_known(fresh: Talk) -> None:
    fresh.say("add Hale")
    fresh.say("add Ruiz")
    assert fresh.say("compare hale with ruiz") == "Nothing noted on them yet."
    assert fresh.say("who is a lefty") == "Nobody noted: lefty.\nNot known of 2 of 2."


def test_an_unsettled_name_is_asked_about(four: Talk) -> None:
    four.say("add Minh Tran")
    assert "Tran" in four.say("compare tran with oduya")
    assert len(four.buttons) >= 2


@pytest.mark.parametrize(
    "asked",
    [
        "who is the weaker player",
        "who is the weakest player",
        "which one has the worse third, return to him",
        "who should we target",
        "who covers the middle",
        "who plays left side, me or the new guy",
        "who is slower of the two",
        "who is the best player in the world",
    ],
)
def test_what_a_topic_answers_goes_on(demo: Talk, asked: str) -> None:
    demo.say(asked)
    assert demo.heard is not None
    assert isinstance(demo.heard.understood, Question)
    assert not isinstance(demo.heard.understood, CompareAsked)


def test_alike_names_are_told_apart_by_the_other(demo: Talk) -> None:
    """There are two called Ruiz; the one who plays with Hale is meant."""
    said = demo.say("compare ruiz and hale")
    assert "Ana Ruiz: strong forehand dink" in said
    assert "them" not in said


def test_who_is_tougher_of_two_is_no_announcement(fresh: Talk) -> None:
    """Nor do two names alone close a game that is being played."""
    fresh.say("we are devi and soren")
    fresh.say("add ike okoye and tamsin brandt")
    fresh.say("next: ike okoye and tamsin brandt")
    fresh.say("5-5-1 us")
    for asked in ("brandt vs okoye who's tougher", "okoye v brandt, which one is weaker"):
        fresh.say(asked)
        assert fresh.heard is not None
        assert isinstance(fresh.heard.understood, CompareAsked), asked
    told = fresh.say("okoye vs brandt")
    assert told.startswith("5-5-1. We serve.\nStill vs Okoye/Brandt. A new match?")
    assert fresh.tap("a new match").startswith("Next: Ike Okoye and Tamsin Brandt")
