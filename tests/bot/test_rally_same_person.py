"""Words that put the last rally's shot right speak of whoever it was told to end with."""

from __future__ import annotations

import pytest
from talk import Talk


@pytest.fixture
def match(demo: Talk) -> Talk:
    demo.say("start")
    demo.say("4-3-1 us")
    return demo


@pytest.mark.parametrize(
    "said",
    [
        "no she didnt net it it went long",
        "no scratch that she didn't net it, it was out",
        "scratch that she didnt net it, it was out",
        "wait, she hit it wide",
        "no she missed the dink",
    ],
)
def test_a_shot_put_right_leaves_the_rally_lost(match: Talk, said: str) -> None:
    assert match.say("lost it, mira netted").startswith("4-3-2.")
    reply = match.say(said)
    assert reply.startswith("4-3-2.")
    assert "Mira" in reply


def test_an_error_instead_of_her_winner_loses_the_rally(match: Talk) -> None:
    assert match.say("our point, mira hit a winner").startswith("5-3-1.")
    reply = match.say("no she hit it long")
    assert reply.startswith("4-3-2.")
    assert "Noted: Mira's error." in reply


def test_his_winner_instead_of_his_error_loses_the_rally_too(match: Talk) -> None:
    match.say("our point, okafor netted")
    reply = match.say("no he hit a winner")
    assert reply.startswith("4-3-2.")
    assert "Noted: Okafor's winner." in reply


@pytest.mark.parametrize("said", ["no they netted it", "no okafor netted it", "no, our point"])
def test_whoever_else_is_said_turns_it_as_before(match: Talk, said: str) -> None:
    match.say("lost it, mira netted")
    assert match.say(said).startswith("5-3-1.")


def test_of_a_rally_that_names_nobody_she_is_one_of_theirs(match: Talk) -> None:
    match.say("their rally")
    assert match.say("no she hit it long").startswith("5-3-1.")
