"""The number that a side begins to serve with is asked; it is no side-out.

After a side-out the right-court player serves as server 1 (2025 rulebook, 4.B.6). Wordings: our
own, no source.
"""

from __future__ import annotations

import pytest
from talk import Talk


@pytest.mark.parametrize(
    "text",
    [
        "1 or 2 after a side out",
        "wait is it 1 or 2 after a side out",
        "is it server 1 or 2 after side out",
        "which server after a sideout",
        "after a side out whos server 1",
        "what number do we call after a side out",
        "are we first or second server after the side out?",
    ],
)
def test_it_is_answered_and_the_score_stays(demo: Talk, text: str) -> None:
    demo.say("next: ruiz and hale")
    demo.say("3-5-1, we serve")
    answered = demo.say(text)
    assert "as server 1" in answered
    assert demo.say("score").startswith("3-5-1. We serve")


@pytest.mark.parametrize(
    ("text", "then"),
    [("side out", "5-3-1. They serve"), ("side out, server 1", "5-3-1. They serve")],
)
def test_a_side_out_told_is_one(demo: Talk, text: str, then: str) -> None:
    demo.say("next: ruiz and hale")
    demo.say("3-5-1, we serve")
    assert demo.say(text).startswith(then)


def test_a_side_out_told_before_the_question_is_one(demo: Talk) -> None:
    demo.say("next: ruiz and hale")
    demo.say("3-5-1, we serve")
    answered = demo.say("side out, are they server 1 or 2?")
    assert "as server 1" in answered
    assert "5-3-1. They serve" in answered
