"""Which of us two serves first is ours to agree, and no end to choose. Our own wordings."""

from __future__ import annotations

from told_rallies import MATCH

from bot.chat.said import Question
from bot.chat.understand import understand
from knowledge.vocabulary import Topic

OURS = (
    "should i serve first or tom",
    "is it better that i serve first or tom",
    "in which order serve we",
    "who should serve first of us two",
)
OTHERS = ("should we serve first", "should i serve first or okafor", "in which order do they serve")


def test_which_of_us_serves_first_is_agreed() -> None:
    found = {text: understand(text, chat=MATCH)[0] for text in (*OURS, *OTHERS)}
    agreed = [
        text
        for text, one in found.items()
        if isinstance(one, Question) and one.topic is Topic.PAIR_UP
    ]
    assert agreed == [*OURS]
