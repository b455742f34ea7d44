"""After an answer, what a short message names by itself is asked, and not the last topic again.

Which topic is meant: common practice, no source.
"""

from __future__ import annotations

import pytest
from talk import Talk

from bot.chat.said import Question
from knowledge.vocabulary import Topic

SERVE, STACK = "where do i serve lindqvist", "should we stack"


def topic_after(demo: Talk, first: str, said: str) -> Topic | None:
    demo.say(first)
    demo.say(said)
    assert demo.heard is not None
    understood = demo.heard.understood
    return understood.topic if isinstance(understood, Question) else None


@pytest.mark.parametrize(
    ("first", "said", "topic"),
    [
        (SERVE, "so does that change who takes the middle then", Topic.COVER_MIDDLE),
        (SERVE, "does it change the middle", Topic.COVER_MIDDLE),
        (SERVE, "and stacking", Topic.STACK_OR_NOT),
        (SERVE, "does this affect our stacking", Topic.STACK_OR_NOT),
        (SERVE, "so does this change who we target", Topic.WHOM_TO_TARGET),
        (SERVE, "does it matter for the return", Topic.AIM_RETURN),
        (SERVE, "so what about the third shot then", Topic.THIRD_SHOT),
        (STACK, "and the serve", Topic.AIM_SERVE),
        (STACK, "does that change where i stand", Topic.WHERE_TO_STAND),
        ("who takes the middle", "ok and the plan", Topic.GAME_PLAN),
    ],
)
def test_another_topic_is_answered(demo: Talk, first: str, said: str, topic: Topic) -> None:
    assert topic_after(demo, first, said) is topic


@pytest.mark.parametrize(
    ("first", "said", "topic"),
    [
        (SERVE, "does that change on his backhand", Topic.AIM_SERVE),
        (SERVE, "and okafor", Topic.AIM_SERVE),
        (SERVE, "and from the left", Topic.AIM_SERVE),
        (SERVE, "and the middle", Topic.AIM_SERVE),
        (SERVE, "and him", Topic.AIM_SERVE),
        (SERVE, "does that change if he stands left", Topic.AIM_SERVE),
        ("is a foot on the line a fault", "and on the return", Topic.RULES_QUESTION),
        ("wind in our face, 10 mph", "and my lobs", Topic.WEATHER_OR_BODY),
    ],
)
def test_what_goes_on_with_the_last_stays_there(
    demo: Talk, first: str, said: str, topic: Topic
) -> None:
    assert topic_after(demo, first, said) is topic


TOSS, MIDDLE = "we won the toss what do we take", "who takes the middle"


@pytest.mark.parametrize(
    ("first", "said", "topic"),
    [
        (TOSS, "ok they keep driving at me at my chest what do i do", Topic.ANSWER_PATTERN),
        (TOSS, "so their lobs keep beating us what can we do", Topic.LOB),
        (
            MIDDLE,
            "so who starts serving us or them how do we decide if we win the toss",
            Topic.CHOOSE_END_OR_SERVE,
        ),
        (MIDDLE, "ok so where should i serve okafor when he stands far back", Topic.AIM_SERVE),
    ],
)
def test_a_whole_question_behind_ok_asks_of_itself(
    demo: Talk, first: str, said: str, topic: Topic
) -> None:
    assert topic_after(demo, first, said) is topic


@pytest.mark.parametrize(
    ("first", "said", "topic"),
    [
        (TOSS, "ok and what if they win the toss and take the end", Topic.CHOOSE_END_OR_SERVE),
        (SERVE, "ok so what do i do with that when he stands on the left", Topic.AIM_SERVE),
        (MIDDLE, "so who takes it then when the ball comes from the left", Topic.COVER_MIDDLE),
    ],
)
def test_a_long_question_that_points_back_goes_on(
    demo: Talk, first: str, said: str, topic: Topic
) -> None:
    assert topic_after(demo, first, said) is topic
