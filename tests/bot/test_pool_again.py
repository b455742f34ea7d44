"""A pool sent a second time while it is played goes on: no match of it comes twice.

The wordings are our own: common practice, no source.
"""

from __future__ import annotations

import pytest
from talk import Talk

POOL = "pool: okafor/lindqvist, brandt/castellano"


@pytest.mark.parametrize("again", [POOL, "our pool is okafor and lindqvist, brandt and castellano"])
def test_once_begun_it_goes_on(demo: Talk, again: str) -> None:
    demo.say("won 11-5 11-4")
    demo.say(POOL)
    demo.say("we serve")
    demo.say("our point")
    stored = demo.stored()
    told = demo.say(again).splitlines()
    assert told[0] == "That pool is on already: it goes on as it stands."
    assert demo.stored() == stored
    assert "Next: Lena Brandt/Castellano" in demo.say("won 11-4")
    assert demo.say("next").startswith("Next: Lena Brandt/Castellano")


def test_another_pair_makes_another_pool(demo: Talk) -> None:
    demo.say("won 11-5 11-4")
    demo.say(POOL)
    demo.say("won 11-4")
    assert demo.say("pool: ruiz/hale, brandt/castellano").startswith("Pool: 2 matches")
