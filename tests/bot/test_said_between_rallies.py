"""What is typed between two rallies in few words: calls, match points, who is hurt."""

from __future__ import annotations

import pytest
from talk import Talk

from bot.chat.said import Question
from knowledge.vocabulary import Topic


@pytest.mark.parametrize(
    "said", ["7-8-2 they won that one", "7-8-2 we won that one", "7-8-2, they won it"]
)
def test_a_call_of_three_numbers_with_whose_rally_is_no_result(demo: Talk, said: str) -> None:
    demo.say("next: ana ruiz and ben hale")
    demo.say("they serve")
    assert demo.say(said).startswith("7-8-2.")


@pytest.mark.parametrize(
    "said",
    [
        "match point against us. what serve",
        "game point for them, where do i serve",
        "at 9 8 what serve",
    ],
)
def test_what_serve_at_a_match_point_asks_for_the_serve(demo: Talk, said: str) -> None:
    demo.say("next: ana ruiz and ben hale")
    demo.say(said)
    assert demo.heard is not None
    question = demo.heard.understood
    assert isinstance(question, Question)
    assert question.topic is Topic.AIM_SERVE
