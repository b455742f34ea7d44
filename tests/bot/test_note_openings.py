"""Somebody asks us to write something down. Wordings: our own, no source."""

from __future__ import annotations

import pytest
from talk import Talk

from bot.chat.said import NoteSaid


@pytest.mark.parametrize(
    ("text", "kept"),
    [
        ("can you write down that okafor is slow", "okafor is slow"),
        ("Could you please note that okafor is slow?", "okafor is slow"),
        ("remember okafor is slow", "okafor is slow"),
        ("please remember that okafor is slow", "okafor is slow"),
        ("dont forget okafor is slow", "okafor is slow"),
        ("don’t forget: okafor is slow", "okafor is slow"),
        ("i want to write down that okafor is slow", "okafor is slow"),
        ("can u jot this down okafor is slow", "okafor is slow"),
        ("make a note that okafor is slow", "okafor is slow"),
        ("keep in mind okafor is slow", "okafor is slow"),
        ("add to my notes: okafor is slow", "okafor is slow"),
        ("would you put down that okafor is slow", "okafor is slow"),
    ],
)
def test_what_we_are_asked_to_keep_is_kept(demo: Talk, text: str, kept: str) -> None:
    assert demo.say(text) == "Noted. Okafor: foot speed weak."
    assert demo.notes()[0].text == kept


@pytest.mark.parametrize(
    "text",
    [
        "can you write down that okafor gets mad when you lob him",
        "remember okafor hits hard at my feet",
        "would you put down that okafor serves short",
    ],
)
def test_so_is_what_would_be_a_question_or_a_rally(demo: Talk, text: str) -> None:
    demo.say(text)
    assert demo.heard is not None
    assert isinstance(demo.heard.understood, NoteSaid)
    assert demo.notes()[0].text in text


def test_a_question_behind_it_is_answered_too(demo: Talk) -> None:
    reply = demo.say("write down okafor is slow and where do I serve lindqvist")
    assert reply.startswith("Noted. Okafor: foot speed weak.")
    assert "erve" in reply.split("\n\n")[1]


@pytest.mark.parametrize(
    "text",
    [
        "remember what I said about okafor",
        "do you remember okafor",
        "remember",
        "can you write down",
        "remember to breathe",
    ],
)
def test_what_asks_for_something_else_is_no_note(demo: Talk, text: str) -> None:
    before = demo.notes()
    demo.say(text)
    assert demo.notes() == before


def test_a_result_stays_one(demo: Talk) -> None:
    before = demo.notes()
    demo.say("next okafor and lindqvist")
    assert "11-4" in demo.say("write down that we won the first 11-4")
    assert demo.notes() == before


def test_an_injury_is_not_kept_for_being_dictated(demo: Talk) -> None:
    before = demo.notes()
    assert "I don't store injuries" in demo.say("remember okafor has a sore knee")
    assert demo.notes() == before
