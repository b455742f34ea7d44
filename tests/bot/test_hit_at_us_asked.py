"""What we complain of ourselves is answered, and never turned into an aim of ours."""

from __future__ import annotations

import pytest
from talk import Talk
from voices import EVENING

from bot.chat.said import Question
from bot.chat.understand import understand
from knowledge.vocabulary import Topic


def topics(text: str) -> list[Topic]:
    return [one.topic for one in understand(text, chat=EVENING) if isinstance(one, Question)]


@pytest.mark.parametrize(
    ("text", "topic"),
    [
        ("their ball is hitting my right hip all day and i cant get out the way", "answer_pattern"),
        ("i keep getting hit in the hip", "answer_pattern"),
        ("they keep getting me in the right hip", "answer_pattern"),
        ("i keep popping it up what do i do", "adjust"),
        ("they keep hitting it out but tom hits everything, what do i tell him", "let_it_go"),
        ("should i go on the left or the right", "pair_up"),
        ("how do i jam his hip", "aim_attack"),
        ("should i hit his right hip", "aim_attack"),
        ("is it legal to hit me in the hip every time", "rules_question"),
        ("i hurt my hip what do i do", "weather_or_body"),
    ],
)
def test_what_it_asks(text: str, topic: str) -> None:
    assert topics(text) == [Topic(topic)]


def test_a_told_rally_with_such_words_stays_a_rally() -> None:
    assert topics("lost it, he hit me in the hip again") == []


@pytest.mark.parametrize("text", ["i keep getting hit in the hip", "they keep hitting my left hip"])
def test_the_answer_is_how_to_meet_it(demo: Talk, text: str) -> None:
    assert demo.say(text).startswith("Wait with the backhand in front")
