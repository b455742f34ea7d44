"""Who of us plays left counts wherever it is said, and only where it is."""

from __future__ import annotations

import pytest
from talk import Talk

from bot.chat.plays_left_said import our_place_said
from bot.chat.words import words

MEET_FOREHANDS, MEET_BACKHANDS = "two forehands meet", "two backhands meet"
BOTH = {MEET_FOREHANDS, MEET_BACKHANDS}


@pytest.fixture
def lefty_pair(fresh: Talk) -> Talk:
    """Colm, who is left-handed and writes, and Marguerite, who is right-handed."""
    for line in ("we are colm and marguerite", "colm is lefty marguerite is right handed"):
        fresh.say(line)
    return fresh


def meets(reply: str) -> set[str]:
    return {one for one in BOTH if one in reply.casefold()}


@pytest.mark.parametrize(
    ("lines", "meet"),
    [
        (["whos got the middle"], BOTH),
        (["whos got the middle", "colm left"], {MEET_BACKHANDS}),
        (["whos got the middle", "marguerite left"], {MEET_FOREHANDS}),
        (["whos got the middle", "marguerite left colm right"], {MEET_FOREHANDS}),
        (["im colm", "whos got the middle if i play right and she plays left"], {MEET_FOREHANDS}),
        (["im colm", "who takes the middle, im left marguerite right"], {MEET_BACKHANDS}),
        (["were stacking so marguerite is always left whos got the middle"], {MEET_FOREHANDS}),
        (["two forehands in the middle who takes it"], {MEET_FOREHANDS}),
        (["whos got the middle", "what if colm plays left"], {MEET_BACKHANDS}),
        (
            ["im colm", "whos got the middle", "and if we swap so i have the right"],
            {MEET_FOREHANDS},
        ),
        (["me on the right her on the left who takes the middle"], BOTH),  # who writes?
        (["whos got the middle", "what if she plays left"], BOTH),
    ],
)
def test_the_middle_is_answered_for_the_sides_that_are_said(
    lefty_pair: Talk, lines: list[str], meet: set[str]
) -> None:
    replies = [lefty_pair.say(line) for line in lines]
    assert meets(replies[-1]) == meet
    assert "what-if" not in replies[-1]


def test_what_is_told_holds_and_what_is_supposed_does_not(lefty_pair: Talk) -> None:
    lefty_pair.say("whos got the middle")
    lefty_pair.say("what if colm is left")
    assert meets(lefty_pair.say("whos got the middle")) == BOTH
    lefty_pair.say("colm left")
    assert meets(lefty_pair.say("whos got the middle")) == {MEET_BACKHANDS}
    assert "Your sides put both backhands in the middle" in lefty_pair.say("should we stack")


@pytest.mark.parametrize(
    "said",
    [
        "she left the middle open again",
        "who should play left",
        "should i play left or right",
        "i want to play left",
        "im left handed who takes the middle",
        "does she play left",
        "me left right out",
    ],
)
def test_a_side_that_is_asked_wished_or_a_verb_tells_nothing(said: str) -> None:
    assert our_place_said(words(said), ()) is None
