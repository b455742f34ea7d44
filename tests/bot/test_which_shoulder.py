"""Over which shoulder to lob: the one that doesn't hit. Common practice, no source."""

from __future__ import annotations

import pytest
from talk import Talk


def test_of_somebody_asked_about_the_shoulder_is_named(demo: Talk) -> None:
    call = "Lob cross off a dead dink, over Okafor's left shoulder."
    assert demo.say("lob okaf?").splitlines()[0] == call


@pytest.mark.parametrize("said", ["over which shoulder", "which shoulder do we lob over"])
def test_which_shoulder_is_answered_for_the_pair(demo: Talk, said: str) -> None:
    demo.say("should we lob")
    call = "Lob cross off a dead dink, over the left shoulder."
    assert demo.say(said).splitlines()[0] == call


def test_of_nobody_asked_about_it_stays_the_rule(demo: Talk) -> None:
    call = "Lob cross off a dead dink, over the off shoulder."
    assert demo.say("should we lob").splitlines()[0] == call
