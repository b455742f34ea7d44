"""Whoever disputes an answer by what somebody can do has told a note, and hears it kept.

Common practice, no source.
"""

from __future__ import annotations

import pytest
from talk import Talk

from knowledge.vocabulary import Trait, Value

STRONG, WEAK = Value.STRENGTH.value, Value.WEAKNESS.value


@pytest.fixture
def playing(demo: Talk) -> Talk:
    for name in ("soll", "quist"):
        demo.say(f"new opponent {name}")
    demo.say("next: soll and quist")
    return demo


@pytest.mark.parametrize(
    ("asked", "disputes", "traits", "value"),
    [
        ("where do i dink soll", "nah he eats those", ["forehand_dink", "backhand_dink"], STRONG),
        ("where do i speed up at soll", "no he loves that", [Trait.COUNTER], STRONG),
        ("where do i speed up at soll", "nah he eats body bags", [Trait.BODY_JAM], STRONG),
        ("where do i speed up at soll", "i said he cant handle those", [Trait.COUNTER], WEAK),
        ("lob soll?", "nope soll kills lobs", [Trait.LOB_DEFENSE], STRONG),
        ("lob soll?", "bad idea he crushes those", [Trait.LOB_DEFENSE], STRONG),
        ("where do i serve to soll", "nah hes good at those", [Trait.RETURN], STRONG),
    ],
)
def test_what_is_said_against_an_answer_is_noted(
    playing: Talk, asked: str, disputes: str, traits: list[str], value: str
) -> None:
    playing.say(asked)
    assert playing.say(disputes).startswith("Noted. Soll: ")
    assert playing.claims("Soll") == {(str(trait), value, False) for trait in traits}


def test_the_next_answer_heeds_it(playing: Talk) -> None:
    before = playing.say("lob soll?").splitlines()[0]
    playing.say("nah he eats those")
    after = playing.say("lob soll?")
    assert after.splitlines()[0] != before
    assert "Soll: handles lobs (book: 1 note)" in after


@pytest.mark.parametrize(
    "other",
    ["nah he eats those, what now?", "they kill lobs", "i like those", "nah forget it"],
)
def test_nothing_is_noted_of_nobody_or_of_a_question(playing: Talk, other: str) -> None:
    playing.say("who do we target")
    playing.say(other)
    assert playing.claims("Soll") == set()
