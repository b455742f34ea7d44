"""Whether one player is like that: yes or no by the book, without taking what others answer."""

from __future__ import annotations

import pytest
from talk import Talk

from bot.chat.said import CompareAsked, NoteSaid, Question
from knowledge.vocabulary import Topic


@pytest.mark.parametrize(
    ("asked", "told"),
    [
        ("okafor still lefty right?", "No. Okafor: right-handed."),
        ("is okafor still right handed?", "Yes. Okafor: right-handed."),
        ("is tom lefty", "Yes. Tom: lefty."),
        ("is tom a lefty?", "Yes. Tom: lefty."),
        ("okafor lefty?", "No. Okafor: right-handed."),
        ("okafor has a two handed backhand right?", "No. Okafor: one-handed backhand."),
        ("lindqvist still poaches a lot right?", "Yes. Lindqvist: poaches a lot."),
        ("okafor still slow coming forward?", "Yes. Okafor: slow forward."),
        ("how sure okafor bh weak", "Yes. Okafor: weak backhand dink."),
        ("how sure are you that okafor is slow forward", "Yes. Okafor: slow forward."),
        ("is lindqvist tall", "Not noted: Lindqvist's height."),
    ],
)
def test_a_trait_of_one_player_is_answered_yes_or_no(demo: Talk, asked: str, told: str) -> None:
    before = demo.stored()
    assert demo.say(asked).splitlines()[0] == told
    assert demo.stored() == before


def test_what_stands_behind_it_and_how_sure_it_is_is_told(demo: Talk) -> None:
    assert demo.say("how sure okafor bh weak").splitlines()[1] == (
        "· book: 4 notes, 1 day old, sure"
    )
    assert demo.say("how sure okafor slow forward").endswith("1 note, 2 weeks old, not sure")


def test_notes_that_disagree_are_neither_yes_nor_no(demo: Talk) -> None:
    demo.say("okafor is lefty")
    assert demo.say("how sure is okafor lefty").startswith("Notes on Okafor disagree")
    assert demo.say("is okafor lefty?").startswith("Okafor: notes disagree on ")


def test_of_a_skill_that_is_not_noted_what_is_known_is_told(demo: Talk) -> None:
    told = demo.say("how sure is okafor slow").splitlines()
    assert told[0] == "Not noted of Okafor: slow feet."
    assert told[1].startswith("· Okafor: weak backhand dink (book")


@pytest.mark.parametrize(
    "asked",
    ["is okafor slow", "is okafor right?", "how sure okafor bh", "is okafor lefty or righty",
     "what do you have on okafor"],
)  # fmt: skip
def test_what_else_is_asked_of_somebody_is_the_report(demo: Talk, asked: str) -> None:
    demo.say(asked)
    heard = demo.heard and demo.heard.understood
    assert isinstance(heard, Question)
    assert heard.topic is Topic.OPPONENT_REPORT


@pytest.mark.parametrize(
    "told",
    ["okafor is lefty", "okafor lefty", "okafor jams at the body right"],
)
def test_what_tells_is_still_a_note(demo: Talk, told: str) -> None:
    demo.say(told)
    assert isinstance(demo.heard and demo.heard.understood, NoteSaid)


@pytest.mark.parametrize(
    "asked",
    ["okafor lefty, where do i serve?", "is okafor lefty and do we stack", "okafor out?",
     "is mira serving right?", "how sure is okafor to win", "tom left?"],
)  # fmt: skip
def test_another_question_is_not_taken(demo: Talk, asked: str) -> None:
    demo.say(asked)
    assert not isinstance(demo.heard and demo.heard.understood, CompareAsked)
