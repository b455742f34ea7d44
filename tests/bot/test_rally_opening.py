"""Whose a rally was, said first, and what happened in it right behind, as people talk."""

from __future__ import annotations

import pytest
from talk import Talk

from bot.chat.rally_opening import opened_by
from bot.chat.words import words


@pytest.fixture
def serving(demo: Talk) -> Talk:
    demo.say("next: okafor and lindqvist")
    demo.say("we serve 3-3-1")
    return demo


@pytest.mark.parametrize(
    "said",
    [
        "lost that one i popped it up",
        "we lost that one i popped it up",
        "ugh lost that one my drop was short",
        "lost it i netted the return",
        "lost the rally we left it for each other",
        "dropped that one my lob was short",
        "i popped it up lost that one",
    ],
)
def test_a_lost_rally_is_lost(serving: Talk, said: str) -> None:
    assert serving.say(said).startswith("3-3-2.")


@pytest.mark.parametrize(
    "said",
    [
        "won that one they popped it up",
        "won it he netted",
        "won the point they left it",
        "we won that one i put it away",
        "that one us",
        "point for us",
        "one more us",
    ],
)
def test_a_won_rally_is_won(serving: Talk, said: str) -> None:
    assert serving.say(said).startswith("4-3-1.")


@pytest.mark.parametrize(
    "said",
    ["lost that one", "we lost it again", "lost that one to a lob", "ours now", "they lost it too"],
)
def test_nothing_more_is_told_behind(said: str) -> None:
    assert opened_by(words(said)) == 0
