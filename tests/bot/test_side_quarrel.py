"""Two of us who want the same court: it is asked who should play where, and nothing is kept."""

from __future__ import annotations

import pytest
from talk import Talk

from bot.chat.said import Question
from knowledge.vocabulary import Topic


@pytest.mark.parametrize(
    "said",
    [
        "tom wants to play the left and i want the left too hes being stubborn",
        "my partner insists on the left but i want it",
        "tom wont let me play left",
        "me and tom both want the left side",
        "we keep arguing about who plays the left",
        "i want to play left but my partner wants it too",
        "tom doesnt even let me have the left side",
    ],
)
def test_who_should_play_where_is_answered(demo: Talk, said: str) -> None:
    before = demo.stored()
    demo.say(said)
    assert demo.heard is not None
    asked = demo.heard.understood
    assert isinstance(asked, Question)
    assert asked.topic is Topic.PAIR_UP
    assert demo.stored() == before


@pytest.mark.parametrize(
    "said", ["tom plays left and i play right", "tom likes the left and lobs a lot", "i play left"]
)
def test_who_plays_where_is_noted(demo: Talk, said: str) -> None:
    assert demo.say(said).startswith("Noted. ")


@pytest.mark.parametrize(
    "said", ["okafor wants the left and i want it too", "okafor wont let me play left"]
)
def test_an_opponent_is_no_quarrel_of_ours(demo: Talk, said: str) -> None:
    demo.say(said)
    assert demo.heard is not None
    asked = demo.heard.understood
    assert not (isinstance(asked, Question) and asked.topic is Topic.PAIR_UP)
