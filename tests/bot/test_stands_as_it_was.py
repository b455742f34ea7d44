"""A what-if that changes nothing is told so, and the last answer is not said again whole.

That an answer of eight lines is not wanted twice: common practice, no source.
"""

from __future__ import annotations

import pytest
from talk import Talk

from bot.chat.wording import wording

NOT_WEIGHED = wording("not_weighed")


@pytest.mark.parametrize(
    ("asked", "supposed"),
    [
        ("who has the middle", "ok but what if he moves"),
        ("who has the middle", "what if i step back"),
        ("where do i dink okafor", "ok but what if she runs round it"),
        ("where do i dink okafor", "but if i move a bit over"),
        ("where do i serve lindqvist", "ok but if he steps around"),
        ("should we stack", "ok but what if he drifts over"),
        ("how do i hit the third shot", "ok but what if they come in"),
    ],
)
def test_what_we_cannot_weigh_is_said(demo: Talk, asked: str, supposed: str) -> None:
    call = demo.say(asked).splitlines()[0]
    assert demo.say(supposed) == f"{call}\n{NOT_WEIGHED}"
    assert len(demo.say("tell me more").splitlines()) > 2, "the rest is there for the asking"


def test_what_the_answer_said_of_such_a_ball_is_said_again(demo: Talk) -> None:
    demo.say("how do i hit the third shot")
    told = demo.say("what if the return is deep to my backhand").splitlines()
    assert told[1:] == [
        "· Deep: 8 of 10 drops work (maths)",
        "Backhand third: drop, unless two-handed.",
        wording("changes_nothing"),
    ]


@pytest.mark.parametrize(
    ("asked", "said"),
    [
        ("where do i dink okafor", "what if im stretched"),
        ("who has the middle", "what if its a lob"),
        ("who has the middle", "ok but what if i get pulled wide"),
        ("where do i dink okafor", "where do i dink okafor"),
        ("what is our plan", "what if he moves over to cover"),
    ],
)
def test_what_changes_the_answer_or_asks_it_again_is_answered(
    demo: Talk, asked: str, said: str
) -> None:
    demo.say(asked)
    told = demo.say(said)
    assert NOT_WEIGHED not in told
    assert len(told.splitlines()) > 2
