"""The court a serve goes from is heard, and a player's side or hip is not taken for it.

Serves go across, from right to right: rulebook 2025, 4.B.
"""

from __future__ import annotations

import pytest
from talk import Talk

from bot.chat.served_from import served_from
from knowledge.vocabulary import Side

RIGHT = [
    "where do i serve hale from the right",
    "im serving from the right side, where do i aim at hale",
    "where do i serve hale, right court",
    "where do i serve hale from our right",
    "serve to hale, from the even side",
    "where do i serve okafor in the deuce box",
]
LEFT = [
    "serve from the left to hale",
    "where do i serve okafor from the odd side",
    "where do i serve hale, left court",
    "serve at hale when im on the left-hand side",
]
NEITHER = [
    "where do i serve hale",
    "serve hale from the right or from the left",
    "where do i serve hale, he plays the left side",
    "do i serve on his left hip or in the body",
    "where do i serve, hale is on the left",
    "where do i serve right now",
]


@pytest.mark.parametrize("said", RIGHT)
def test_the_right_court_is_heard(said: str) -> None:
    assert served_from(said) is Side.RIGHT


@pytest.mark.parametrize("said", LEFT)
def test_the_left_court_is_heard(said: str) -> None:
    assert served_from(said) is Side.LEFT


@pytest.mark.parametrize("said", NEITHER)
def test_no_court_is_made_up(said: str) -> None:
    assert served_from(said) is None


@pytest.mark.parametrize(
    ("said", "label"),
    [
        ("where do i serve hale from the right", "from our right"),
        ("im serving from the right side, where do i aim at hale", "from our right"),
        ("where do i serve hale, right court", "from our right"),
        ("serve from the left to hale", "from our left"),
    ],
)
def test_said_or_tapped_the_court_gives_the_same_answer(demo: Talk, said: str, label: str) -> None:
    text = demo.say(said)
    assert label not in [one.label for one in demo.buttons]
    demo.say("where do i serve to hale")
    assert demo.tap(label) == text


def test_the_court_said_stays_for_what_follows(demo: Talk) -> None:
    first = demo.say("where do i serve hale from the right")
    other = demo.say("and from the left?")
    assert other.splitlines()[0] != first.splitlines()[0]
    assert demo.context.asked is not None
    assert demo.context.asked.striker_side is Side.LEFT
