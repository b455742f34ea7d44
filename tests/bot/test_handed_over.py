"""A note given to another in the message behind it, with more told behind the name.

The wordings are our own, no source.
"""

from __future__ import annotations

import pytest
from talk import Talk


@pytest.mark.parametrize(
    ("note", "said"),
    [
        ("okafor pops up every dink", "no wait thats lindqvist who pops up dinks not okafor"),
        ("okafor pops up every dink", "sorry its lindqvist who does that"),
    ],
)
def test_what_is_told_again_of_another_is_no_longer_told_of_the_one(
    demo: Talk, note: str, said: str
) -> None:
    before = demo.claims("Okafor")
    demo.say(note)
    noted = demo.claims("Okafor") - before
    assert demo.say(said).startswith("Changed. Lindqvist:")
    assert demo.claims("Okafor") == before or not noted
    assert noted <= demo.claims("Lindqvist")


@pytest.mark.parametrize(
    ("said", "beside"),
    [
        ("no thats lindqvist, okafor comes in quick", "Okafor: speed coming forward strong."),
        ("actually its lindqvist hes a lefty", "Lindqvist: left-handed."),
    ],
)
def test_what_is_told_beside_it_is_a_note_of_its_own(demo: Talk, said: str, beside: str) -> None:
    demo.say("okafor is slow coming forward")
    moved = "Changed. Lindqvist: speed coming forward weak."
    assert demo.say(said).startswith(f"{moved}\nNoted. {beside}")
    assert ("forward_speed", "weakness", False) in demo.claims("Lindqvist")


def test_something_else_of_another_leaves_the_note(demo: Talk) -> None:
    demo.say("okafor is slow coming forward")
    noted = demo.claims("Okafor")
    assert "Changed" not in demo.say("no wait thats lindqvist who is a lefty")
    assert demo.claims("Okafor") == noted


def test_what_is_true_of_both_takes_nothing_back(demo: Talk) -> None:
    demo.say("okafor is slow coming forward")
    assert demo.say("no, lindqvist is slow coming forward too").startswith("Noted. Lindqvist:")
    assert ("forward_speed", "weakness", False) in demo.claims("Okafor")
