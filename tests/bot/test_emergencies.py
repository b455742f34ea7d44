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


@pytest.mark.parametrize(
    ("said", "stands"),
    [
        ("lost that one, tom took one in the eye", "4-6-1"),
        ("lost that one, she cant see well tho", "4-6-1"),
        ("they won it, im dizzy", "4-6-1"),
        ("mira got hit in the eye but we won that one", "7-4-2"),
    ],
)
def test_a_rally_told_beside_one_counts(demo: Talk, said: str, stands: str) -> None:
    demo.say("6-4-2 us")
    first, *_, last = demo.say(said).splitlines()
    assert "stop" in first.lower()
    assert last.startswith(stands)


@pytest.mark.parametrize(
    "said",
    [
        "he hit it long into tom's eye",
        "if we lost that one, my chest hurts anyway",
        "lost that one, won that one, im dizzy",
    ],
)
def test_nothing_counts_that_is_not_told_as_one_rally(demo: Talk, said: str) -> None:
    demo.say("6-4-2 us")
    demo.say(said)
    assert "6-4-2" in demo.say("score")
