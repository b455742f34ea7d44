"""Two places weighed right after a shot are of that shot; of nothing, where none was asked about.

What goes with which shot: common practice, no source.
"""

from __future__ import annotations

import pytest
from talk import Talk

from bot.chat.said import Question
from knowledge.vocabulary import Topic


def topic(talk: Talk) -> Topic | None:
    assert talk.heard is not None
    said = talk.heard.understood
    return said.topic if isinstance(said, Question) else None


@pytest.mark.parametrize(
    ("asked", "shot"),
    [
        ("where do i serve to lindqvist", Topic.AIM_SERVE),
        ("where do i return to okafor", Topic.AIM_RETURN),
        ("where do i dink okafor", Topic.AIM_DINK),
    ],
)
@pytest.mark.parametrize(
    "choice", ["short or deep", "body or bh", "wide or down the t", "left or right?", "fh or bh"]
)
def test_places_are_of_the_shot_just_asked_about(
    demo: Talk, asked: str, shot: Topic, choice: str
) -> None:
    demo.say("next: okafor and lindqvist")
    demo.say(asked)
    demo.say(choice)
    assert topic(demo) is shot


def test_another_shot_named_is_asked_anew(demo: Talk) -> None:
    demo.say("next: okafor and lindqvist")
    demo.say("where do i serve to lindqvist")
    demo.say("drop or drive")
    assert topic(demo) is Topic.THIRD_SHOT


@pytest.mark.parametrize(
    ("said", "stands"),
    [
        ("okafor serves short, where do i stand", "Wait on the baseline"),
        ("their serve is short, where do i stand", "Wait on the baseline"),
        ("he serves deep, where should i stand", "Receive a step behind the baseline"),
        ("our serve is short, where do i stand", "Serve from the right"),
    ],
)
def test_how_deep_they_serve_says_where_to_wait(demo: Talk, said: str, stands: str) -> None:
    demo.say("next: okafor and lindqvist")
    assert stands in demo.say(said)


def test_the_return_asked_next_is_of_the_return(demo: Talk) -> None:
    demo.say("next: okafor and lindqvist")
    demo.say("okafor serves short, where do i stand")
    demo.say("n what do i do w the return")
    assert topic(demo) is Topic.AIM_RETURN
