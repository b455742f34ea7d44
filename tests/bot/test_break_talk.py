"""What two say in a break is one ball and a calm word; what partners agree is for before.

Common practice, no source.
"""

from __future__ import annotations

import pytest
from talk import Talk

from knowledge.tactics.break_talk import CALM, asks_what_to_say


@pytest.fixture
def match(fresh: Talk) -> Talk:
    fresh.say("we are marisela and anders")
    fresh.say("new opponent glenda pruitt")
    fresh.say("new opponent walt hoskins")
    fresh.say("next glenda and walt")
    return fresh


@pytest.mark.parametrize(
    "said",
    [
        "they called time out what should we talk about",
        "they called a timeout what now",
        "time out what do i say to anders",
        "we called timeout now what",
        "its a time-out, what do we say to each other",
        "what should we talk about in the timeout",
        "what do we discuss between games",
        "changeover what do we talk about",
        "t/o what do i tell her",
    ],
)
def test_a_break_gets_one_ball_and_a_calm_word(match: Talk, said: str) -> None:
    reply = match.say(said)
    call, calm, *_ = reply.splitlines()
    assert call.startswith(("Return ", "Serve ", "Anders: ", "Marisela: "))
    assert CALM in calm
    assert "agreed" not in reply
    assert "your partner" not in reply


@pytest.mark.parametrize(
    "said",
    [
        "what do i say to call a timeout",
        "can we talk to our coach in a timeout",
        "what do we agree on as new partners",
        "what do i say to the ref in a timeout",
        "should we call a timeout",
        "what do i tell her",
        "what now",
    ],
)
def test_rules_and_what_partners_agree_are_other_questions(said: str) -> None:
    assert not asks_what_to_say(said)


def test_fear_is_answered_before_any_ball(demo: Talk) -> None:
    said = "Mira's gone quiet, i think it's fear. What would you tell her between games?"
    assert demo.say(said).startswith("Breathe out together")
