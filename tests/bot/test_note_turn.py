"""What a note costs in a match: work is counted, not timed."""

from __future__ import annotations

from collections.abc import Iterator
from unittest.mock import patch

import pytest
from talk import Talk

from bot.chat import names
from scouting_db.names import NameIndex


@pytest.fixture
def noted(demo: Talk) -> Talk:
    demo.say("next: okafor and lindqvist")
    demo.say("okafor is slow coming forward")
    return demo


@pytest.fixture
def built() -> Iterator[list[int]]:
    """How long each roster was of which an index of names was built."""
    seen: list[int] = []

    class Counted(NameIndex):
        def __init__(self, roster: object) -> None:
            super().__init__(roster)  # type: ignore[arg-type]
            seen.append(len(self.roster))

    with patch.object(names, "NameIndex", Counted):
        yield seen


def test_a_note_leaves_the_index_of_names_as_it_is(noted: Talk, built: list[int]) -> None:
    noted.say("lindqvist lobs a lot")
    noted.say("okafor pops up backhand dinks")
    noted.say("where do i dink lindqvist")
    assert built == []


def test_whoever_is_added_between_two_notes_is_known_to_the_second(
    noted: Talk, built: list[int]
) -> None:
    assert "No bramble" in noted.say("bramble lobs a lot")
    noted.tap("add bramble")
    assert ("lob", "often", False) in noted.claims("Bramble")
    noted.say("bramble is a lefty")
    assert ("hand", "left", False) in noted.claims("Bramble")
    assert len(built) == 1


def test_who_is_no_stranger_once_the_match_is_theirs(noted: Talk) -> None:
    """What was read of a text stands only while the same pair is on court."""
    told = "hale hit a dink into the net"
    assert "isn't in this match" in noted.say(told)
    noted.say("next: hale and ruiz")
    assert "isn't in this match" not in noted.say(told)
