"""Where to stand, as asked in a chat: who writes, whom it is about, who started."""

from __future__ import annotations

import pytest
from talk import Talk

# 2025 edition, 4.B.6: a pair's starter (here Mira, as agreed in the demo book) stands right at
# an even score of their own and left at an odd one; the partner stands in the other court.
CALLS = [
    ("where do i stand at 6-5-2 we serve", "Stand right;"),
    ("where does tom stand at 6-5-2", "Stand left, Tom;"),
    ("i'm tom, where do i stand at 6-5-2 we serve", "Stand left;"),
    ("hey this is tom, where do i stand at 6-5-2 we serve", "Stand left;"),
    ("i'm tom, where does mira stand at 6-5-2 we serve", "Stand right, Mira;"),
    ("where does my partner stand at 6-5-2 we serve", "Stand left, Tom;"),
    ("partner starts right, 5-2-1 we serve, where am i", "Stand right;"),
    ("partner started on the right, we serve 4-4-2, where am i", "Stand left;"),
    ("i started on the left, 7-4-1 we serve, where am i", "Stand right;"),
]


@pytest.mark.parametrize(("text", "call"), CALLS)
def test_the_one_who_is_meant_is_placed(demo: Talk, text: str, call: str) -> None:
    assert demo.say(text).startswith(call)


def test_who_writes_is_said_for_one_question(demo: Talk) -> None:
    demo.say("i'm tom, where do i stand at 6-5-2 we serve")
    demo.tap("We receive")
    assert "Stand left" in demo.sent[-1]
    assert demo.say("where do i stand at 6-5-2 we serve").startswith("Stand right;")


def test_a_score_told_with_who_started_moves_the_pair(demo: Talk) -> None:
    demo.say("next: okafor and lindqvist")
    demo.say("we serve first")
    reply = demo.say("i started on the left, we're 7-4-1 serving")
    assert reply.splitlines()[-1].startswith("7-4-1. We serve: Mira right, Tom left.")


def test_nobody_knows_who_writes_but_the_answer_is_theirs(fresh: Talk) -> None:
    fresh.say("we are Mira and Tom")
    reply = fresh.say("i started on the left, we're 7-4-1 serving")
    assert reply.startswith("Stand right;")
