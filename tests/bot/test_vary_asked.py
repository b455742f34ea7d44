"""How one of ours is to vary is where to play and when to change, not being targeted."""

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
    ("text", "topic"),
    [
        (
            "mira plays too nice, she gives every ball back to the same place. how do I get her"
            " to vary?",
            Topic.AIM_DINK,
        ),
        ("how do i get mira to mix it up more", Topic.AIM_DINK),
        ("how can tom vary more", Topic.AIM_DINK),
        ("how does she mix up her serves", Topic.AIM_SERVE),
        ("his return always goes to the same spot, how do we make him vary it", Topic.AIM_RETURN),
    ],
)
def test_it_is_asked_of_the_shot(text: str, topic: Topic) -> None:
    assert _topic(text) is topic


@pytest.mark.parametrize(
    "text", ["they play everything at mira", "how do they vary their serves", "okafor varies a lot"]
)
def test_what_they_do_is_not(text: str) -> None:
    assert _topic(text) is not Topic.AIM_DINK
