"""What is told of a substitute is nothing of whoever they stand in for: it is asked who that is."""

from __future__ import annotations

import pytest
from talk import Talk

ASKS = "Your words are kept. Who is the note about? Send the name."


@pytest.mark.parametrize(
    "said",
    [
        "his sub is taller but slower, does that change my lob",
        "okafors sub is lefty and bangs",
        "ok so their new sub poaches a lot",
        "the substitute hits every third into the net",
    ],
)
def test_it_is_asked_who_the_substitute_is(demo: Talk, said: str) -> None:
    demo.say("we play okafor and lindqvist next")
    demo.say("okafor jams at the body")
    before = demo.claims("Chidi Okafor"), demo.claims("Sven Lindqvist")
    assert demo.say(said) == ASKS
    assert (demo.claims("Chidi Okafor"), demo.claims("Sven Lindqvist")) == before


@pytest.mark.parametrize(
    "said",
    [
        "can his sub play two matches",
        "is his sub allowed to serve first",
        "his sub is late do we win",
        "okafors backhand is weak",
        "her subtle dinks are hard to read",
    ],
)
def test_questions_and_notes_of_a_player_ask_nobodys_name(demo: Talk, said: str) -> None:
    demo.say("we play okafor and lindqvist next")
    assert "Who is the note about?" not in demo.say(said)
