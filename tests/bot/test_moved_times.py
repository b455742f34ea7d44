"""A match that moves, told with the old time as well: the new one counts.

How people tell it is from memory.
"""

from __future__ import annotations

import pytest
from talk import Talk

from bot.chat.moved_times import time_moved_to


@pytest.fixture
def announced(demo: Talk) -> Talk:
    demo.say("next: ruiz and hale at 10:15")
    return demo


@pytest.mark.parametrize(
    ("text", "at"),
    [
        ("our ten fifteen is now at eleven", "11:00"),
        ("moved to eleven", "11:00"),
        ("our 10:15 is at 11 now", "11:00"),
        ("the ten fifteen got moved to eleven", "11:00"),
        ("they moved us from 10:15 to 11:00", "11:00"),
        ("we play at eleven instead of ten fifteen", "11:00"),
        ("not ten fifteen but eleven", "11:00"),
        ("ten fifteen became eleven", "11:00"),
        ("its eleven now not ten fifteen", "11:00"),
        ("our ten fifteen match is running late now its eleven", "11:00"),
        ("changed to eleven", "11:00"),
        ("delayed till eleven thirty", "11:30"),
        ("the 10:15 was moved to quarter past eleven", "11:15"),
        ("moved up to nine thirty from ten fifteen", "09:30"),
        ("pushed back to noon", "12:00"),
    ],
)
def test_the_new_time_is_the_one_it_moves_to(announced: Talk, text: str, at: str) -> None:
    assert f"now {at}" in announced.say(text)


@pytest.mark.parametrize("text", ["its eleven now", "its eleven nine now", "now its 10 9"])
def test_a_score_is_no_time(text: str) -> None:
    assert time_moved_to(text, moves=False) is None


@pytest.mark.parametrize("text", ["moved to court 7", "moved up 2", "pushed back 30 minutes"])
def test_a_court_or_minutes_are_no_time(text: str) -> None:
    assert time_moved_to(text, moves=True) is None


def test_the_old_time_alone_is_none() -> None:
    assert time_moved_to("our 10:15 got moved", moves=True) is None
