"""Which of them a shot goes to, asked by two names: advice, and nothing of who serves is stored."""

from __future__ import annotations

import pytest
from talk import Talk

from bot.chat.said import Question
from knowledge.vocabulary import Topic


@pytest.fixture
def announced(demo: Talk) -> Talk:
    """A match announced, and "who serves first?" open."""
    demo.say("add bexley ruun")
    demo.say("add hal toomey")
    assert demo.say("next: bexley ruun and hal toomey").endswith("Who serves first?")
    return demo


@pytest.mark.parametrize(
    ("said", "topic"),
    [
        ("bex or hal on the return", Topic.AIM_RETURN),
        ("ruun or toomey on the return?", Topic.AIM_RETURN),
        ("hal or bex on returns?", Topic.AIM_RETURN),
        ("serve to ruun or toomey", Topic.AIM_SERVE),
        ("ruun or toomey on the serve", Topic.AIM_SERVE),
        ("ruun or toomey on dinks", Topic.AIM_DINK),
        ("speed up at ruun or toomey", Topic.AIM_ATTACK),
        ("return to toomey", Topic.AIM_RETURN),
        ("serve at toomey", Topic.AIM_SERVE),
    ],
)
def test_it_asks_for_the_target_of_that_shot(announced: Talk, said: str, topic: Topic) -> None:
    announced.say(said)
    heard = announced.heard.understood if announced.heard else None
    assert isinstance(heard, Question)
    assert heard.topic is topic
    assert announced.say("they serve").startswith("0-0-2. They serve")  # still open till now


@pytest.mark.parametrize("said", ["they serve to mira", "we return", "toomey serves"])
def test_who_serves_is_still_heard(announced: Talk, said: str) -> None:
    assert announced.say(said).startswith("0-0-2. ")


def test_names_on_both_sides_of_or_are_two_people(announced: Talk) -> None:
    assert "Which bex or hal" not in announced.say("bex or hal")
