"""The event before an announcement: no name, and both of the pair behind it are asked for."""

from __future__ import annotations

import pytest
from talk import Talk

PAIR = "annika brandt and lucija perovic"


@pytest.mark.parametrize(
    "said",
    [
        f"womens first. next {PAIR} 9:15 ct 4",
        f"mixed doubles: next up {PAIR}, 9:15, court 4",
        f"ok mens now - next is {PAIR} 9:15 ct 4",
        f"womens next {PAIR} 9:15 ct 4",
        f"next womens: {PAIR}, 9:15 ct 4",
    ],
)
def test_both_behind_an_event_are_asked_for(fresh: Talk, said: str) -> None:
    assert fresh.say(said) == f"No {PAIR} in your book yet."
    told = "Next: Annika Brandt and Lucija Perovic, 09:15, court 4"
    assert fresh.say("add both").startswith(told)
    with fresh.book() as book:
        assert {row.name for row in book.players()} == {"Annika Brandt", "Lucija Perovic"}


@pytest.mark.parametrize(
    "said",
    ["womens first, how do we warm up", "mixed: who covers the middle", "mixed is next, what now"],
)
def test_an_event_before_a_question_announces_nothing(fresh: Talk, said: str) -> None:
    assert not fresh.say(said).startswith("Next:")
    assert fresh.say("next").startswith("No match is on.")


@pytest.mark.parametrize("said", ["add both", "add them", "add all of them please", "add the two"])
def test_a_word_for_all_of_them_is_nobodys_name(fresh: Talk, said: str) -> None:
    fresh.say(said)
    with fresh.book() as book:
        assert not tuple(book.players())


def test_both_adds_the_one_whom_the_book_does_not_know(demo: Talk) -> None:
    assert demo.say("next: hale and zorbla, 9:30") == "No zorbla in your book yet."
    assert demo.say("add both").startswith("Next: Ben Hale and Zorbla, 09:30")


@pytest.mark.parametrize("said", ["add bothwell", "add theman and himmel"])
def test_a_name_like_such_a_word_is_added(fresh: Talk, said: str) -> None:
    assert fresh.say(said).startswith("Added")
