"""Whether we wait for an opponent who is hurt: a medical time-out of theirs, and no hurry.

Up to 15 minutes: rulebook 2025, 10.B.
"""

from __future__ import annotations

import pytest
from talk import Talk

from knowledge.rulebook.hurt_awaited import WAIT


@pytest.fixture
def match(fresh: Talk) -> Talk:
    for said in ("we are Delroy and Kath", "next: Sheila and Bev", "add both"):
        fresh.say(said)
    return fresh


@pytest.mark.parametrize(
    "said",
    [
        "bev has gone off with a sore ankle, physio is on, can we just win",
        "bev cramped up, is it our win",
    ],
)
def test_a_hurt_opponent_is_waited_for(match: Talk, said: str) -> None:
    assert match.say(said).startswith(WAIT)
    assert match.say("their taking ages how long can she have").startswith(WAIT)
    assert not match.notes()


@pytest.mark.parametrize(
    "said",
    [
        "kath hurt her knee, do we have to wait",
        "bev is limping, should we target her and can we win",
    ],
)
def test_of_ours_and_of_play_it_is_none(match: Talk, said: str) -> None:
    assert WAIT not in match.say(said)
