"""Everything at one of them is a question of whom to play at, with any score beside it."""

from __future__ import annotations

from topic_examples import VIEW

from bot.chat.all_at_one_asked import asks_all_at_one
from bot.chat.message import read_message

ALL_AT_ONE = [
    "do i hit it at okafor all the time (its eight seven us)",
    "should we play every ball at him",
    "is it alright to hit at one person all the time",
    "do i keep it on lindqvist the whole time its 8 7 us",
]
NOT = [
    "is it legal to hit at one person all the time",
    "do i serve it at okafor all the time",
    "they hit it at tom all the time",
    "should i hit at okafor",
]


def test_only_everything_at_one_is() -> None:
    assert [said for said in ALL_AT_ONE if not asks_all_at_one(read_message(said, VIEW))] == []
    assert [said for said in NOT if asks_all_at_one(read_message(said, VIEW))] == []
