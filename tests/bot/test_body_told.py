"""A body of ours told of in a statement: a caution, whatever it names or was asked before."""

from __future__ import annotations

from dataclasses import replace

import pytest
from talk import Talk
from voices import EVENING

from bot.chat.body_told import only_tells_of_a_body
from bot.chat.message import read_message
from bot.chat.said import Question
from bot.chat.understand import understand
from bot.chat.view import ChatView
from knowledge.vocabulary import Topic

OVERHEAD = replace(EVENING, last_topic=Topic.AIM_OVERHEAD)
TIME_OUT = replace(EVENING, last_topic=Topic.TIMEOUT_NOW)


@pytest.mark.parametrize(
    "said",
    [
        "tom says his shoulder pinches on the overhead",
        "says her shoulder pinches",
        "her shoulder pinches",
        "my partner's elbow stings when she serves",
        "my wrist twinges a bit on the backhand flick",
        "says his knee is aching on split steps",
    ],
)
@pytest.mark.parametrize("chat", [EVENING, OVERHEAD, TIME_OUT])
def test_what_pinches_is_answered_as_a_body(said: str, chat: ChatView) -> None:
    (found,) = understand(said, chat=chat)
    assert isinstance(found, Question)
    assert found.topic is Topic.WEATHER_OR_BODY


@pytest.mark.parametrize(
    "said",
    [
        "okafor's shoulder pinches on overheads",
        "what do i do when her shoulder pinches",
        "who takes the lob, toms knee aches",
        "tom is pinching the middle",
        "my back foot lands in the kitchen on the overhead",
        "where do i hit the overhead",
    ],
)
def test_theirs_a_question_and_play_are_no_such_statement(said: str) -> None:
    assert not only_tells_of_a_body(read_message(said, OVERHEAD), OVERHEAD)


def test_a_stroke_asked_of_who_hurts_keeps_its_caution_and_gets_the_bodys(demo: Talk) -> None:
    reply = demo.say("tom says his shoulder pinches on the overhead, where should he hit it")
    assert "Sharp, new or worse: stop, medical staff." in reply
    assert "never at the head" in reply
