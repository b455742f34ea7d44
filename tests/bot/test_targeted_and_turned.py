"""Whom of us they play at, as the talk goes on, and whose turn it is: by the words said now."""

from __future__ import annotations

import pytest
from talk import Talk

from bot.chat.message import read_message
from bot.chat.view import ChatView
from bot.chat.whose_turn_asked import asks_of_the_wrong_place, asks_whose_turn
from scouting_db.values import BookId


@pytest.fixture
def colm(fresh: Talk) -> Talk:
    for line in ("we are colm and marguerite", "add doug brannigan and priya venkat"):
        fresh.say(line)
    return fresh


@pytest.mark.parametrize(
    ("said", "call"),
    [
        ("shes getting battered", "Marguerite: middle and deep. Colm"),
        ("and its me now theyre hitting", "You: middle and deep. Partner"),
    ],
)
def test_who_gets_the_balls_is_told_by_the_last_words(colm: Talk, said: str, call: str) -> None:
    colm.say("priya is hitting everything at marguerite what do i tell her")
    assert colm.say(said).startswith(call)


def read(text: str) -> tuple[bool, bool]:
    message = read_message(text, ChatView(book=BookId(1), version=1, roster=()))
    return asks_whose_turn(message), asks_of_the_wrong_place(message)


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("who returns first me or her", (True, False)),
        ("can you just tell me who receives next", (True, False)),
        ("it was my serve at zero zero whos turn", (True, False)),
        ("who serves first me or my partner", (True, False)),
        ("ok i served from the wrong side what happens", (False, True)),
        ("wrong one of us served is that a fault", (False, True)),
        ("who serves", (False, False)),
        ("who returns deep", (False, False)),
        ("i served from the wrong side", (False, False)),
        ("i served to the wrong side of hale", (False, False)),
    ],
)
def test_turns_and_wrong_places(text: str, found: tuple[bool, bool]) -> None:
    assert read(text) == found
