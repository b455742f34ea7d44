"""Complaints of a body in any message: heard where one hurts, silent where a body is a target."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from knowledge.complaints import complains, complains_of_us

HURTS = [
    "his knee is bad, backhand only",
    "slow feet and priya has a dodgy back",
    "lindqvist in a cast",
    "she is wearing a sling today",
    "my elbow hurts on drives",
    "shoulder is killing me, third shot drop or drive",
    "i twisted my ankle on that one, where do i stand",
    "tom's calf is cramping, do we stack",
    "ive got tennis elbow so soft hands only?",
    "bad knees, how do i get low",
    "im playing through pain, worth a timeout?",
    "stiff neck so no overheads ok",
    "pulled a muscle",
    "mira is limping, who covers the lob",
    "numb fingers",
    "my back is shot",
    "his bad back shows on lobs",
    "he stays back because his knee hurts",
    "quist hit tom in the chest with a hard one. he says it is ok",
    "mira took one in the ribs, she has a blue mark",
    "a drive caught her in the throat, she's fine",
    "lena hit mira in the chest. can she go on?",
    "its a dead leg, she limps",
    "my hands are not good today",
    "quist's hands hurt",
]

PLAY = [
    "slow feet and ruiz has a dodgy back hand",
    "quick hands but her bad back hand floats",
    "he serves from a sling shot motion",
    "lindqvist in a slump",
    "quist's hands are not so bad as i said",
    "quist's hands are really bad in firefights",
    "her hands are bad",
    "hit her in the chest, she is fine with body balls",
    "they keep hitting us in the chest",
    "she hits me in the ribs every time",
    "we hit quist in the chest twice, he is good at it",
    "the ball limps over the net",
    "they attack my right hip",
    "speed up at the chest or the shoulder",
    "ball at my feet, reset?",
    "both of them way back",
    "who has the good hands",
    "he turned his back, hit the gap?",
    "their lobs hurt us",
    "backhand side is bad",
    "what side do we pick",
    "they have fast hands",
    "cold feet at 9-9",
    "quist stands back she has a bad shot",
    "quist stands back on her second shot",
    "they hang further back and her second shot is bad",
    "stays back after a bad return",
    "she is back there with a bad third shot",
    "he drops back on bad lobs",
]


@pytest.mark.parametrize("said", HURTS)
def test_a_body_that_hurts_is_heard(said: str) -> None:
    assert complains(said)


@pytest.mark.parametrize("said", PLAY)
def test_a_body_that_is_only_spoken_of_is_not(said: str) -> None:
    assert not complains(said)


def test_whose_body_it_is() -> None:
    assert complains_of_us("tom's elbow hurts", names=["Tom"])
    assert complains_of_us("my elbow hurts", names=[])
    assert not complains_of_us("okafor has a bad knee", names=["Tom", "Mira"])


@given(st.text(max_size=120))
def test_any_text_is_read(said: str) -> None:
    assert complains(said) in (True, False)
