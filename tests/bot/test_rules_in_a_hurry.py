"""Rules asked for in few words, and what looks like them and asks what to play."""

from __future__ import annotations

import pytest
from voices import EVENING

from bot.chat.rules_in_a_hurry import asks_if_ok, asks_when_ends_change
from bot.chat.said import Question
from bot.chat.understand import understand
from knowledge.vocabulary import Topic


@pytest.mark.parametrize(
    "text",
    [
        "nvz erne ok if he lands oob",
        "nvz volley ok if i jump from behind n land oob",
        "erne legal if my foot is on the line",
        "is an atp fine if i run outside the post",
        "when do we change ends in gm 3",
        "3rd gm ends when",
        "gm 3 when do we switch sides",
        "srv hit net and landed in",
    ],
)
def test_a_rule_is_asked_for(text: str) -> None:
    said = understand(text, chat=EVENING)[-1]
    assert isinstance(said, Question)
    assert said.topic is Topic.RULES_QUESTION


@pytest.mark.parametrize(
    "line",
    [
        "ok to lob if it lands short",
        "is it ok to dink if he is at the line",
        "should i volley or is it ok if i step off the line",
        "good time to erne when he leans",
        "ok if okafor lobs",
        "when do we switch ends",
        "who serves in game 3",
        "how do we win game 3",
    ],
)
def test_what_to_play_is_no_rule(line: str) -> None:
    assert not asks_if_ok(line)
    assert not asks_when_ends_change(line)
