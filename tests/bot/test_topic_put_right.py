"""The wrong shot asked about is put right: the other one is answered, of the same people."""

from __future__ import annotations

import pytest
from talk import Talk


@pytest.mark.parametrize(
    ("asked", "said", "call"),
    [
        ("if its windy do i still lob lindqvist", "not lob i mean dink", "Dink Lindqvist"),
        ("do i lob lindqvist", "i mean dink not lob", "Dink Lindqvist"),
        ("where do i return to lindqvist", "not the return the serve", "Serve Lindqvist"),
        ("where do i serve lindqvist", "sorry, return not serve", "Return"),
        ("where do i dink okafor", "no not dink, i meant lob", "Lob"),
    ],
)
def test_the_shot_meant_is_answered(demo: Talk, asked: str, said: str, call: str) -> None:
    demo.say("we play okafor and lindqvist next")
    demo.say(asked)
    assert demo.say(said).startswith(call)


@pytest.mark.parametrize(
    "said", ["not a dink a drop", "a serve not a return", "okafor pops up dinks not lobs"]
)
def test_what_ball_was_played_asks_nothing(demo: Talk, said: str) -> None:
    demo.say("we play okafor and lindqvist next")
    demo.say("where do i dink okafor")
    assert not demo.say(said).startswith(("Lob", "Serve", "Leave the lob"))
