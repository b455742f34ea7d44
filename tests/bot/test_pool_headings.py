"""A pool's heading says when it is played and how: no word of it is anybody's name."""

from __future__ import annotations

import pytest
from talk import Talk


@pytest.mark.parametrize(
    "heading",
    [
        "pool sat:",
        "pool a sat:",
        "Pool B on Sunday:",
        "saturday pool:",
        "pool (sat morning):",
        "pool tmrw 9am:",
        "pool sunday 9:00:",
        "our pool this friday\n",
        "pool saturday games to 15:",
        "pool tonight",
        "tomorrows pool:",
        "ok pool 2 tmrw morning -",
    ],
)
def test_a_day_in_the_heading_is_nobody(fresh_anywhere: Talk, heading: str) -> None:
    reply = fresh_anywhere.say(f"{heading} ines/korbin, wladek/pru")
    assert reply.startswith("Pool: 2 matches")
    with fresh_anywhere.book() as book:
        assert {row.name for row in book.players()} == {"Ines", "Korbin", "Wladek", "Pru"}


def test_one_pair_under_a_day_is_a_pool(fresh_anywhere: Talk) -> None:
    assert fresh_anywhere.say("pool a sat: ines/korbin").startswith(
        "Pool: 1 match, one game to 11."
    )


def test_how_it_is_played_in_the_heading_counts(fresh_anywhere: Talk) -> None:
    reply = fresh_anywhere.say("pool games to 15: ines/korbin")
    assert reply.startswith("Pool: 1 match, one game to 15.")


def test_a_name_like_a_day_stays_one_after_the_heading(fresh_anywhere: Talk) -> None:
    fresh_anywhere.say("pool sat: sunny/korbin")
    assert fresh_anywhere.player("Sunny")
