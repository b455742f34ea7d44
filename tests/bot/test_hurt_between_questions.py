"""A sore leg, a denied emergency, and what is asked beside them: cautious, and of the body.

Common practice as first aid is taught, no source: who limps does not run, staff decide.
"""

from __future__ import annotations

import pytest
from talk import Talk

from knowledge.cautions import DEFERS
from knowledge.tactics.beside_complaint import NO_ALARM

OFF_IT = "Off it till medical staff look: no running on it."


@pytest.mark.parametrize(
    "said",
    [
        "my calf is worse, going down stairs hurts",
        "my calf is worse",
        "going down stairs hurts my knee",
        "hamstring is done",
        "i cant push off",
        "i cant push off, how do we cover the court",
    ],
)
def test_a_leg_that_hurts_is_rested_not_stretched(demo: Talk, said: str) -> None:
    notes = demo.notes()
    reply = demo.say(said)
    assert reply.splitlines()[0] == OFF_IT
    assert DEFERS in reply
    assert demo.notes() == notes


def test_a_cramp_is_still_stretched(demo: Talk) -> None:
    assert demo.say("calf cramped up").startswith("Stop, stretch it gently")


def test_what_the_court_asks_after_a_calf_is_of_the_calf(demo: Talk) -> None:
    demo.say("my calf is worse")
    reply = demo.say("how do we cover the court")
    assert reply.splitlines()[0] == OFF_IT
    assert "Partner takes middle and lobs" in reply


@pytest.mark.parametrize("said", ["im not dizzy", "nobody fainted lol", "tom isnt dizzy"])
def test_a_denial_is_taken(demo: Talk, said: str) -> None:
    notes = demo.notes()
    reply = demo.say(said)
    assert not reply.startswith("Stop")
    assert NO_ALARM in reply
    assert demo.notes() == notes


def test_a_denial_keeps_the_calf(demo: Talk) -> None:
    demo.say("my calf is worse, going down stairs hurts")
    reply = demo.say("no im not collapsing, just the calf")
    assert reply.splitlines()[0] == OFF_IT
    assert NO_ALARM in reply


def test_a_denial_after_the_emergency_leaves_it_to_staff(demo: Talk) -> None:
    demo.say("i feel dizzy")
    assert demo.say("no im not dizzy").startswith("Sit out. Play only if medical staff clear it.")


@pytest.mark.parametrize(
    "said", ["im not confused, who takes the middle", "im not dizzy, where do i serve okafor"]
)
def test_a_question_beside_a_denial_is_answered(demo: Talk, said: str) -> None:
    assert NO_ALARM not in demo.say(said)
    assert "staff" not in demo.say(said).splitlines()[0]


@pytest.mark.parametrize(
    "said",
    [
        "can a friend take my place",
        "my partner is hurt can someone else play for him",
        "can we use a sub",
        "can my sub take my place",
        "my calf is done, can a friend take my place",
    ],
)
def test_who_steps_in_is_the_desks(demo: Talk, said: str) -> None:
    reply = demo.say(said)
    assert "desk" in reply
    assert "stretch" not in reply


@pytest.mark.parametrize(
    "said",
    [
        "who takes my place when i go for the ernie",
        "can my partner fill in for me in the middle if i get pulled wide",
        "we are hurt by their lobs",
    ],
)
def test_a_place_on_court_is_no_substitution(demo: Talk, said: str) -> None:
    assert "desk" not in demo.say(said)


@pytest.mark.parametrize("said", ["theres lightning, do we stop", "thunder, keep going?"])
def test_lightning_is_never_left_to_a_menu(fresh: Talk, said: str) -> None:
    assert fresh.say(said).startswith("Leave the court now")


def test_lightning_hands_are_no_weather(demo: Talk) -> None:
    assert "Leave the court" not in demo.say("hale has lightning hands")
