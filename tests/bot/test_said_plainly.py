"""What a match says in passing, answered once and in whole sentences.

Common practice, no source.
"""

from __future__ import annotations

import pytest
from talk import Talk


def test_a_cramp_at_a_score_is_cared_for_once(demo: Talk) -> None:
    told = demo.say("tom cramping at 6-6 game 3").splitlines()
    assert told[0].startswith("Stop, stretch it")
    assert len(told) == len(set(told))
    assert "Not medical advice: medical staff decide." in told


def test_a_long_name_cuts_no_sentence_short(fresh: Talk) -> None:
    fresh.say("we're maximiliana and tom")
    told = fresh.say("they target maximiliana")
    assert "soft at the feet (common practice)" in told


def test_my_own_backhand_is_not_that_of_the_partner_spoken_of(fresh: Talk) -> None:
    fresh.say("we're tamsel and idris")
    fresh.say("they target idris")
    assert fresh.say("they target my backhand").startswith("You: ")


@pytest.mark.parametrize(
    "asks", ["drill for my 3rd drop", "drills for 3rds", "a drill for 3rd shots"]
)
def test_a_third_in_figures_has_its_drill(demo: Talk, asks: str) -> None:
    assert demo.say(asks).startswith("Drill: Third drops")


@pytest.mark.parametrize(
    "asks", ["our drops suck today", "my thirds are awful", "our 3rds are off"]
)
def test_a_stroke_that_fails_wants_a_change(demo: Talk, asks: str) -> None:
    assert demo.say(asks).startswith("Drive the third, drop the fifth.")
