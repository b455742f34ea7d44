"""A match announced with a note behind it: the match is the next one, and the note is kept."""

from __future__ import annotations

import pytest
from talk import Talk

from bot.chat.said import MatchSaid
from bot.chat.understand import understand
from bot.chat.view import ChatView
from knowledge.vocabulary import PlayerId
from scouting_db.values import PlayerRow

NAMES = ("Marisol", "Benedikt", "Gretel", "Rune Aas")
CHAT = ChatView(
    book=1,
    version=1,
    roster=tuple(
        PlayerRow(player=PlayerId(number), name=name, ours=number < 2)
        for number, name in enumerate(NAMES)
    ),
    ours=(PlayerId(0), PlayerId(1)),
)


@pytest.mark.parametrize(
    ("text", "then"),
    [
        (
            "playoff at 3, its gretel and rune again the tall lady and grey beard",
            "gretel is the tall lady. rune is grey beard",
        ),
        ("new match against gretel and rune, rune is the one in green", "rune is the one in green"),
        ("semi vs gretel and rune 14:30. gretel's backhand is weak", "gretel's backhand is weak"),
        ("next: gretel and rune, 10:40, rune hates lobs", "rune hates lobs"),
    ],
)
def test_the_note_is_told_behind_the_match(text: str, then: str) -> None:
    (said,) = understand(text, chat=CHAT)
    assert isinstance(said, MatchSaid)
    assert [one.typed for one in said.mentions] == ["gretel", "rune"]
    assert said.then == then


@pytest.mark.parametrize(
    "text",
    [
        "gretel and rune again, the tall lady and grey beard",
        "in the playoff gretel and rune were late on lobs, rune is slow",
        "next: gretel and rune, gretel serves first",
        "playoff at 3 vs gretel and rune, where do i dink gretel",
    ],
)
def test_notes_questions_and_who_serves_are_none(text: str) -> None:
    told = understand(text, chat=CHAT)
    assert not any(isinstance(one, MatchSaid) and one.then for one in told)


def test_names_are_asked_about_once_and_both_are_taken_then(fresh: Talk) -> None:
    told = fresh.say("new match against gretel and rune, rune is a lefty")
    assert told == "No gretel and rune in your book yet."
    told = fresh.tap("add gretel and rune")
    assert told.startswith("Next: Gretel and Rune,")
    assert told.endswith("Noted. Rune: left-handed.")
