"""Ends changed after a wind was told: it comes from the other way then."""

from __future__ import annotations

import pytest
from talk import Talk


@pytest.mark.parametrize(
    "said",
    ["and if we switch", "what if we change", "and once we swap", "and if we switch ends"],
)
def test_the_wind_turns_with_the_ends(demo: Talk, said: str) -> None:
    assert demo.say("wind at our backs").startswith("Aim shorter")
    assert demo.say(said).startswith("Hit through it")


@pytest.mark.parametrize("said", ["and if we lob", "and for our returns"])
def test_what_changes_no_end_leaves_it(demo: Talk, said: str) -> None:
    demo.say("wind at our backs")
    assert not demo.say(said).startswith("Hit through it")
