"""Their lob over one of us who cannot run: the partner's ball, and nobody is sent running.

Common practice, no source.
"""

from __future__ import annotations

import pytest
from talk import Talk

from knowledge.cautions import DEFERS

YOURS = "Take every lob yourself; partner starts deeper."
PARTNERS = "Partner takes every lob; you start deeper."


@pytest.fixture
def pair(fresh: Talk) -> Talk:
    fresh.say("we are marisela and anders")
    return fresh


@pytest.mark.parametrize(
    ("said", "call"),
    [
        (
            "my husband anders has a bad left knee and he can not run back for lobs what do we do"
            " if they lob him",
            YOURS,
        ),
        ("my partner cant run back, what do we do about their lobs", YOURS),
        ("they keep lobbing us and my hip hurts, who takes them", PARTNERS),
        ("i cant run for lobs with my bad knee what do we do when they lob me", PARTNERS),
    ],
)
def test_who_cannot_run_is_not_sent_running(fresh: Talk, said: str, call: str) -> None:
    reply = fresh.say(said)
    assert reply.splitlines()[0] == call
    assert DEFERS in reply
    assert "urn and run" not in reply


@pytest.mark.parametrize(
    "said",
    ["what do we do if they lob him", "what do we do about all the lobs with anders knee"],
)
def test_the_next_question_does_not_contradict_it(pair: Talk, said: str) -> None:
    pair.say("anders has a bad left knee and cant run back, what do we do about lobs")
    assert pair.say(said).splitlines()[0] == "Marisela takes every lob; Anders starts deeper."


def test_a_knee_told_before_counts_for_the_lob(pair: Talk) -> None:
    pair.say("anders hurt his knee")
    reply = pair.say("what if they lob him")
    assert reply.splitlines()[0] == "Marisela takes every lob; Anders starts deeper."


def test_an_opponents_knee_is_not_ours(pair: Talk) -> None:
    pair.say("new opponent walt")
    reply = pair.say("walt has a bad knee, what do we do if he lobs us")
    assert "starts deeper" not in reply


def test_what_the_wind_does_to_lobs_stays_with_the_wind(fresh: Talk) -> None:
    fresh.say("wind in our face")
    assert "behind, -11.3 against" in fresh.say("and my lobs?")
