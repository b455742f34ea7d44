"""What was noted is given back where it is asked after; a shot of ours is not asked so.

The demo book: Lindqvist poaches, Okafor is a lefty with a weak backhand dink, Hale is tall.
"""

from __future__ import annotations

import pytest
from talk import Talk

from bot.chat.said import Question
from knowledge.vocabulary import Topic


@pytest.mark.parametrize(
    ("told", "asked", "first"),
    [
        (
            "hale 7 of 9 returns deep to bh",
            "how many returns of hers were deep",
            "Hale: “7 of 9 returns deep to bh”.",
        ),
        (
            "hale 7 of 9 returns deep to bh",
            "how many of hale's returns were deep",
            "Hale: “7 of 9 returns deep to bh”.",
        ),
        (
            "hale poaches only when ruiz serves",
            "when does hale poach",
            "Hale: “poaches only when ruiz serves”.",
        ),
        ("hale drops 6 of 10", "how often does hale drop", "Hale: “drops 6 of 10”."),
        (
            "hale's returns are deep",
            "why do you say hale's returns are deep",
            "Hale: returns deep.",
        ),
        ("hale is slow", "who's slower, hale or ruiz", "Hale: slow feet. Not noted: Ruiz's foot"),
        ("ruiz has quick hands", "whos got the better hands hale or ruiz", "Ruiz: strong counter."),
    ],
)
def test_it_comes_first_and_nothing_is_noted(
    fresh: Talk, told: str, asked: str, first: str
) -> None:
    for text in ("new opponent ana ruiz", "new opponent ben hale", told):
        fresh.say(text)
    before = fresh.notes()
    assert fresh.say(asked).startswith(first)
    assert fresh.notes() == before


@pytest.mark.parametrize(
    "text",
    [
        "how often should i lob okafor",
        "how many balls do i hit at okafor's backhand",
        "who is better okafor or lindqvist",
        "which is better, serve at okafor or lindqvist",
        "how often does okafor poach? i keep getting burned, where do i hit",
    ],
)
def test_what_to_do_is_another_question(demo: Talk, text: str) -> None:
    demo.say(text)
    assert demo.heard is not None
    said = demo.heard.understood
    assert isinstance(said, Question)
    assert not (said.topic is Topic.OPPONENT_REPORT and said.trait)
