"""A rally logged and then played again is taken back; a let that is asked about is a rule."""

from __future__ import annotations

import pytest
from talk import Talk


@pytest.fixture
def match(demo: Talk) -> Talk:
    demo.say("start")
    demo.say("our point")
    demo.say("our point")
    return demo


@pytest.mark.parametrize(
    "said",
    [
        "wait no undo that was a let",
        "undo that, it was a let",
        "no let, play it again",
        "wait no that was a let",
        "no wait we replay that",
        "it was a let, undo that",
        "take that back, ball on the court",
        "undo it was a let we replayed it",
        "undo that it doesnt count",
    ],
)
def test_the_last_rally_is_taken_back_and_said(match: Talk, said: str) -> None:
    reply = match.say(said)
    assert reply.startswith("Taken back: our rally.")
    assert "1-0-2" in reply


@pytest.mark.parametrize(
    "said", ["is that a let", "do we replay a let serve", "was it a let?", "let, replay"]
)
def test_a_let_alone_takes_nothing_back(match: Talk, said: str) -> None:
    stored = match.stored()
    match.say(said)
    assert match.stored() == stored


def test_what_was_told_of_it_goes_with_the_rally(match: Talk) -> None:
    match.say("our point")
    match.say("okafor missed the drop")
    match.say("undo that, it was a let")
    assert "2-0-2" in match.sent[-1]
    assert match.say("undo").startswith("Taken back: our rally.")
    assert "1-0-2" in match.sent[-1]


def test_where_a_note_came_last_it_is_asked_which(match: Talk) -> None:
    match.say("note: okafor lobs a lot")
    stored = match.stored()
    match.say("undo that, it was a let")
    assert match.stored() == stored
