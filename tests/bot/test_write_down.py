"""Statements that name nobody or run long: their words can always be kept. Our own wordings."""

from __future__ import annotations

import pytest
from talk import Talk

from bot.chat.said import NoteSaid, Question, WriteDownSaid

_LONG = (
    "right so im at the fence here and okafor he uh hes been standing really deep on the return"
    " like two metres behind the line and lindqvist who normally creeps up is staying back too"
    " so i reckon a short serve or maybe a drop would do it"
)


@pytest.mark.parametrize(
    "text",
    [
        "the left one is tired",
        "the guy on the left is slow",
        "their left guy cant volley",
        "the mule serves short into the net when tight",
        "the mule cant hit an overhead but he can sure hit a drive",
        "nobody lobs in this match",
        _LONG,
    ],
)
@pytest.mark.parametrize("asked", ["write it down", "ok write that down please", "thats a note"])
def test_what_was_answered_is_written_down_when_told_so(demo: Talk, text: str, asked: str) -> None:
    before = len(demo.notes(200))
    demo.say(text)
    assert [one.label for one in demo.buttons].count("write it down") == 1
    demo.say(asked)
    assert demo.heard is not None
    assert isinstance(demo.heard.understood, WriteDownSaid)
    assert len(demo.notes(200)) == before + 1
    assert demo.notes(1)[0].text == text
    demo.say(asked)
    assert len(demo.notes(200)) == before + 1


def test_the_tap_and_the_words_keep_it_only_once(demo: Talk) -> None:
    before = len(demo.notes(200))
    demo.say("the left one is tired")
    payload = demo.button("write it down").payload
    demo.say("write it down")
    demo.press(payload)
    assert len(demo.notes(200)) == before + 1


@pytest.mark.parametrize("text", ["write it down", "note that"])
def test_with_nothing_to_write_down_it_is_said_how(demo: Talk, text: str) -> None:
    before = len(demo.notes(200))
    assert "note hale lobs a lot" in demo.say(text)
    demo.say("where do i dink okafor")
    assert "note hale lobs a lot" in demo.say(text)
    assert len(demo.notes(200)) == before


@pytest.mark.parametrize("text", ["write down that hale lobs a lot", "note that hale lobs a lot"])
def test_what_is_dictated_is_read_as_before(demo: Talk, text: str) -> None:
    demo.say(text)
    assert demo.claims("Hale") >= {("lob", "often", False)}


@pytest.mark.parametrize(
    "text", ["who lobs", "the rule on lets?", "what now", "is the left one tired?", "ok"]
)
def test_what_asks_or_tells_nothing_offers_no_note(demo: Talk, text: str) -> None:
    demo.say(text)
    assert "write it down" not in [one.label for one in demo.buttons]


def test_what_neither_of_them_does_is_noted_of_both(demo: Talk) -> None:
    demo.say("neither of them lobs")
    assert demo.claims("Okafor") >= {("lob", "rarely", False)}
    assert demo.claims("Lindqvist") >= {("lob", "rarely", False)}


@pytest.mark.parametrize(
    "text",
    [
        "neither of them likes the ball at the body",
        "they both hate balls at the feet",
        "okafors forehand speed up goes to the right shoulder every single time",
        "okafors serve goes to the backhand every time",
    ],
)
def test_what_is_told_of_them_is_a_note(demo: Talk, text: str) -> None:
    before = len(demo.notes(200))
    demo.say(text)
    assert demo.heard is not None
    assert isinstance(demo.heard.understood, NoteSaid)
    assert len(demo.notes(200)) == before + 1


@pytest.mark.parametrize(
    "text",
    ["neither of them lobs?", "do they both lob", "should neither of us lob", "they both lob"],
)
def test_what_is_asked_of_them_stays_a_question(demo: Talk, text: str) -> None:
    demo.say(text)
    assert demo.heard is not None
    assert isinstance(demo.heard.understood, Question)


@pytest.mark.parametrize(
    "text",
    [
        "lost it, okafor poached on tom's drop",
        "their point, lindqvist poached",
        "okafor went for an erne and missed",
    ],
)
def test_a_habit_told_with_a_rally_can_be_kept(demo: Talk, text: str) -> None:
    demo.say("start")
    demo.say("0-0-1 us")
    before = len(demo.notes(200))
    demo.say(text)
    assert [one.label for one in demo.buttons].count("write it down") == 1
    assert len(demo.notes(200)) == before
    demo.say("write it down")
    assert demo.notes(1)[0].text == text


@pytest.mark.parametrize(
    "text", ["lost it, tom poached and missed", "we won it, okafor netted the drop", "our point"]
)
def test_a_rally_without_a_habit_of_theirs_offers_no_note(demo: Talk, text: str) -> None:
    demo.say("start")
    demo.say("0-0-1 us")
    demo.say(text)
    assert "write it down" not in [one.label for one in demo.buttons]
