"""A match that begins, told with or without who serves; who asks about it begins nothing.

The first server stands right and is called second server (2025 rulebook, from memory).
"""

from __future__ import annotations

import pytest
from talk import Talk

from bot.chat.said import ScoreSaid, ServerSaid


@pytest.mark.parametrize(
    ("said", "reply"),
    [
        ("start, we serve first", "0-0-2. Mira serves from the right."),
        ("lets start, they serve first", "0-0-2. They serve from the right to Mira."),
        ("start they serve", "0-0-2. They serve from the right to Mira."),
        ("game on, their serve", "0-0-2. They serve from the right to Mira."),
        ("here we go, we serve first", "0-0-2. Mira serves from the right."),
        ("we start, they serve first", "0-0-2. They serve from the right to Mira."),
        ("start, tom serves first", "0-0-2. Tom serves from the right."),
        ("tom serves first", "0-0-2. Tom serves from the right."),
        ("okafor serves first", "0-0-2. Okafor serves from the right to Mira."),
        ("start", "Who serves first?"),
        ("ok lets start", "Who serves first?"),
        ("start the match", "Who serves first?"),
        ("second server", "Who serves first?"),
        ("first server", "Who serves first?"),
    ],
)
def test_the_match_begins_as_told(demo: Talk, said: str, reply: str) -> None:
    assert demo.say(said) == reply


@pytest.mark.parametrize(
    "said",
    ["who serves first", "can we serve first", "start the timer", "start, they won the toss",
     "what do we start with", "should we serve first"],
)  # fmt: skip
def test_what_asks_or_tells_something_else_begins_nothing(demo: Talk, said: str) -> None:
    demo.say(said)
    assert demo.heard is not None
    assert not isinstance(demo.heard.understood, ScoreSaid | ServerSaid)
    assert demo.say("score") == "Who serves first?"


def test_who_served_first_told_in_mid_game_leaves_the_serve(demo: Talk) -> None:
    for said in ("they serve", "our point", "our point"):
        demo.say(said)
    before = demo.say("score")
    assert "serve" in before
    demo.say("tom serves first")
    assert demo.say("score").split(".")[0] == before.split(".")[0]
