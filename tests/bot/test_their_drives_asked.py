"""What to do about drives of theirs at one of us is a habit to answer, no third of ours."""

from __future__ import annotations

import pytest
from talk import Talk
from voices import EVENING

from bot.chat.said import Question
from bot.chat.understand import understand
from knowledge.vocabulary import Topic


def _topic(text: str) -> Topic | None:
    (*_, last) = understand(text, chat=EVENING)
    return last.topic if isinstance(last, Question) else None


@pytest.mark.parametrize(
    ("text", "asked"),
    [
        ("how does one do when okafor is driving every third at tom?", True),
        ("how do we handle it when lindqvist keeps driving at mira", True),
        ("what to do when they bang everything at us", True),
        ("okafor keeps hitting at my chest", True),
        ("lindqvist always goes straight at toms body what do i do", True),
        ("they keep speeding up at my right hip", True),
        ("okafor keeps popping up at his hip", False),
        ("where do i hit at okafors chest", False),
        ("how should i drive when okafor drives at tom", False),
        ("what do we hit when okafor drives at us", False),
        ("how do we drive the third at okafor", False),
    ],
)
def test_drives_of_theirs_at_us_are_a_habit_to_answer(text: str, *, asked: bool) -> None:
    assert (_topic(text) is Topic.ANSWER_PATTERN) is asked


@pytest.mark.parametrize(
    "said",
    [
        "he keeps hitting at my chest",
        "lindqvist keeps hitting at my chest",
        "lindqvist always goes at my body",
    ],
)
def test_balls_at_my_body_are_answered_and_not_aimed(demo: Talk, said: str) -> None:
    demo.say("we play okafor and lindqvist next")
    assert demo.say(said).startswith("Wait with the backhand in front, elbow free.")
