"""Words that tell of an emergency get help first, and nothing of them is kept as a note."""

from __future__ import annotations

import pytest
from talk import Talk


@pytest.mark.parametrize(
    "said",
    [
        "tom has a weird pain in his arm and his chest is tight",
        "my chest hurts",
        "my left arm hurts and i cant breathe",
        "ball hit me in the eye",
        "im seeing stars after that fall",
    ],
)
def test_help_comes_first_and_nothing_is_noted(demo: Talk, said: str) -> None:
    notes = demo.notes()
    first = demo.say(said).splitlines()[0].lower()
    assert "stop" in first
    assert demo.notes() == notes


@pytest.mark.parametrize(
    "said", ["they are killing us", "we are dying out there", "okafor has heart"]
)
def test_sayings_are_no_emergencies(demo: Talk, said: str) -> None:
    assert "medical" not in demo.say(said).splitlines()[0].lower()
