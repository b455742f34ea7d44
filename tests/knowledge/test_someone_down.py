"""Somebody down on court stops play; a side that is down in the score does not.

The first steps of first aid, as courses teach them (from memory): stop, call for help.
"""

from __future__ import annotations

import pytest

from knowledge.cautions import is_emergency
from knowledge.situation import Asked, Situation
from knowledge.tactics import advise
from knowledge.vocabulary import Topic

DOWN = [
    "quist hit the deck and cant get up keep playing?",
    "soll fell and hes not moving what do we do",
    "ruun cant get up he fell",
    "quist can't get up",
    "opp went down hard holding his knee what do we do",
    "hes down hurt",
    "toomey went down and is screaming",
    "my partner fell and can't stand up",
    "opponent is on the ground holding her ankle, do we stop",
    "she's down and crying, do we keep going",
    "someone's down on the next court not responding",
    "he fell hard on the lob, should we stop?",
    "man down",
    "we need a medic",
    "get an ambulance",
    "call 911",
    "idris slipped and hurt his wrist",
    "they collided and ruun is hurt",
    "varnell is still down",
    "mireaux is lying on the court",
    "he tripped, grabbing his hamstring",
    "quist took a nasty fall",
    "hes down and wont get up, timeout?",
    "fell backwards on the lob, he isnt moving",
]

PLAYS_ON = [
    "we're down 8-3 and hurting",
    "were down a game, not moving well",
    "we went down hard in g2",
    "hes down 8-2 and crying about calls",
    "they fell apart in game 3, it hurt them",
    "our returns fall short and it hurts us",
    "our drops fell badly today",
    "drive down the line hurts us",
    "he went down the line and it hurt",
    "quist goes down the middle, holds his backhand",
    "keep it on the floor, hurts him",
    "he hit the backhand hard and fell back",
    "varnell cant get up to the kitchen",
    "he cant get up for the overhead",
    "ruun is slow getting up",
    "soll stays down low and moves well",
    "varnell got down low, not moving his feet",
    "toomey cant move up",
    "he falls for the fake every time",
    "what if a player falls and is hurt",
    "fell last week and hurt his knee",
    "is it a fault if he fell in the kitchen",
]


@pytest.mark.parametrize("said", DOWN)
def test_play_stops_and_help_is_called_for_whoever_is_down(said: str) -> None:
    assert is_emergency(said)
    call = advise(Situation(topic=Topic.WEATHER_OR_BODY, asked=Asked(words=said))).call
    assert call.startswith("Stop")
    assert "medical staff" in call


@pytest.mark.parametrize("said", PLAYS_ON)
def test_a_score_a_line_or_a_rule_is_nobody_down(said: str) -> None:
    assert not is_emergency(said)
