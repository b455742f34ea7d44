"""What is told of both of them is noted of both; what asks, or tells a rally, is not."""

from __future__ import annotations

from dataclasses import replace

import pytest
from voices import EVENING

from bot.chat.said import NoteSaid
from bot.chat.understand import understand
from bot.chat.view import ChatView
from knowledge.vocabulary import PlayerId, Topic

OKAFOR, LINDQVIST = PlayerId(3), PlayerId(4)
MATCH = replace(EVENING, theirs=(OKAFOR, LINDQVIST), focus=(OKAFOR, LINDQVIST), match_on=True)
ASKED = replace(MATCH, last_topic=Topic.AIM_DINK)


@pytest.mark.parametrize(
    "text",
    [
        "both of em jam at body",
        "both of them jam at the body",
        "and both of them are lefties",
        "they both lefty",
        "both of these guys poach a lot",
    ],
)
@pytest.mark.parametrize("chat", [MATCH, ASKED], ids=["first", "after a question"])
def test_both_are_told_of(text: str, chat: ChatView) -> None:
    said = understand(text, chat=chat)[-1]
    assert isinstance(said, NoteSaid)
    assert {one.player for one in said.claims} == {OKAFOR, LINDQVIST}


@pytest.mark.parametrize(
    "text",
    [
        "both of em jam at body?",
        "both of em bang at us what do we do",
        "both of them popped it up",
        "how do we beat them if both of em poach",
        "who do both of them target",
    ],
)
def test_a_question_or_a_rally_is_no_such_note(text: str) -> None:
    assert not any(isinstance(one, NoteSaid) for one in understand(text, chat=MATCH))
