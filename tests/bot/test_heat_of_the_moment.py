"""What is typed in anger, alone or behind a question about a body."""

from __future__ import annotations

from dataclasses import replace

import pytest
from voices import EVENING

from bot.chat.said import Question
from bot.chat.understand import understand
from bot.chat.view import ChatView
from knowledge.vocabulary import Topic

OF_A_BODY = replace(EVENING, last_topic=Topic.WEATHER_OR_BODY)


@pytest.mark.parametrize(
    "text",
    [
        "should i headhunt okafor",
        "can i hit at his head",
        "should i go for okafor's head",
        "im gonna go for his head",
        "lets aim at the head",
    ],
)
@pytest.mark.parametrize("chat", [EVENING, OF_A_BODY], ids=["first", "after a body"])
def test_going_for_a_head_is_answered_where_to_aim(text: str, chat: ChatView) -> None:
    said = understand(text, chat=chat)[-1]
    assert isinstance(said, Question)
    assert said.topic is Topic.AIM_ATTACK


@pytest.mark.parametrize(
    "text", ["refs an idiot", "the ref is blind", "this referee sucks", "these refs are clueless"]
)
def test_rage_at_a_referee_wants_a_cool_head(text: str) -> None:
    said = understand(text, chat=EVENING)[-1]
    assert isinstance(said, Question)
    assert said.topic is Topic.RESET_HEAD


@pytest.mark.parametrize("text", ["should i fake okafor", "is hale a jerk", "should i jam hale"])
def test_what_is_asked_of_an_opponent_behind_a_complaint_is_of_no_body(text: str) -> None:
    said = understand(text, chat=OF_A_BODY)[-1]
    assert getattr(said, "topic", None) is not Topic.WEATHER_OR_BODY


@pytest.mark.parametrize(
    ("text", "topic"),
    [("and with a brace?", Topic.WEATHER_OR_BODY), ("can tom play on", Topic.WEATHER_OR_BODY)],
)
def test_what_goes_on_of_the_body_still_does(text: str, topic: Topic) -> None:
    said = understand(text, chat=OF_A_BODY)[-1]
    assert isinstance(said, Question)
    assert said.topic is topic
