"""What to do about drives of theirs at one of us is a habit to answer, no third of ours."""

from __future__ import annotations

import pytest
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
        ("how should i drive when okafor drives at tom", False),
        ("what do we hit when okafor drives at us", False),
        ("how do we drive the third at okafor", False),
    ],
)
def test_drives_of_theirs_at_us_are_a_habit_to_answer(text: str, *, asked: bool) -> None:
    assert (_topic(text) is Topic.ANSWER_PATTERN) is asked
