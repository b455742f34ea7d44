"""One of our pair replaced: the pair that plays is told back, and no note is made of it."""

from __future__ import annotations

import pytest
from talk import Talk


@pytest.fixture
def marisol(fresh: Talk) -> Talk:
    fresh.say("we are marisol and benedikt")
    fresh.say("we are marisol and anouk")
    fresh.say("add gretel aas")
    return fresh


@pytest.mark.parametrize(
    ("text", "partner"),
    [
        ("anouk isnt here its benedikt", "Benedikt"),
        ("no anouk can't make it so im with benedikt today", "Benedikt"),
        ("anouk is out, pelle plays instead", "Pelle"),
        ("benedikt is subbing for anouk", "Benedikt"),
        ("anouk is out of position", "Anouk"),
        ("anouk isnt here its gretel", "Anouk"),
    ],
)
def test_who_plays_with_us_then(marisol: Talk, text: str, partner: str) -> None:
    told = marisol.say(text)
    assert told.startswith("You are") is (partner != "Anouk")
    assert marisol.say("who are we").startswith(f"You are Marisol and {partner}.")
