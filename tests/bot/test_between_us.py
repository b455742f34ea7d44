"""What we agreed beside the eight things kept, and which of us two is weaker: the pair's card."""

from __future__ import annotations

import pytest
from talk import Talk
from voices import EVENING

from bot.chat.said import Question
from bot.chat.understand import understand
from knowledge.tactics.pair_up_asked import NO_RANK, NOT_KEPT
from knowledge.vocabulary import Topic


@pytest.mark.parametrize(
    ("text", "call"),
    [
        ("whos weaker me or tom", NO_RANK),
        ("which of us is better", NO_RANK),
        ("am i worse than tom", NO_RANK),
        ("agreed we keep it low", NOT_KEPT),
        ("we decided to drop our thirds", NOT_KEPT),
        ("agreed: hit everything at okafor", NOT_KEPT),
    ],
)
def test_the_pairs_card_says_what_it_does_not_do(demo: Talk, text: str, call: str) -> None:
    before = demo.notes()
    assert demo.say(text).splitlines()[0] == call
    assert demo.notes() == before


@pytest.mark.parametrize(
    "text",
    [
        "whos weaker okafor or lindqvist", "whos weaker", "we agreed no lobs",
        "we agreed it was out", "agreed we won 11-9",
    ],
)  # fmt: skip
def test_opponents_and_what_is_kept_stay_what_they_were(text: str) -> None:
    said = understand(text, chat=EVENING)
    assert not any(isinstance(one, Question) and one.topic is Topic.PAIR_UP for one in said)
