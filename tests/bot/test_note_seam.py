"""Who stands in the middle squeezes it: no weak mid-court that nobody told of."""

from __future__ import annotations

import pytest
from talk import Talk

SQUEEZES = ("squeezes_middle", "often", False)
MIDCOURT = ("transition", "weakness", False)


@pytest.mark.parametrize(
    "said",
    [
        "hale stands in the middle",
        "hale stays in the middle",
        "hale camps in the middle",
        "hale cheats to the middle",
    ],
)
def test_a_place_between_the_two_is_squeezed(demo: Talk, said: str) -> None:
    demo.say(said)
    claims = demo.claims("Hale")
    assert SQUEEZES in claims
    assert MIDCOURT not in claims


@pytest.mark.parametrize("said", ["hale gets stuck in no mans land", "hale stands in transition"])
def test_the_way_in_stays_mid_court(demo: Talk, said: str) -> None:
    demo.say(said)
    assert MIDCOURT in demo.claims("Hale")


def test_what_is_denied_is_not_squeezed(demo: Talk) -> None:
    demo.say("hale doesnt stay in the middle")
    assert SQUEEZES not in demo.claims("Hale")
