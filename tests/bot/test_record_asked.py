"""Our record asked for in words: the pool's table answers, and the event decides who goes on.

How it is asked: common practice, no source.
"""

from __future__ import annotations

import pytest
from talk import Talk

POOL = "pool: oduya/halvorsen, tamsin/yuki, dov/marisela"
TABLE = """Pool: 1 won, 1 lost, 1 to play.
1 Oduya/Halvorsen: won 11-4
2 Tamsin/Yuki: lost 8-11
3 Dov/Marisela
Points 19-15 (+4).
Ties: the event's own rules decide."""


@pytest.fixture
def in_pool(demo: Talk) -> Talk:
    for said in (POOL, "next", "won 11-4", "lost 8-11"):
        demo.say(said)
    return demo


@pytest.mark.parametrize(
    "text",
    [
        "1-2 in pool. are we thru?",
        "what was our record and scores",
        "whats our record so far",
        "our record?",
        "what were the scores",
        "who did we lose to",
        "who beat us",
        "which teams did we beat",
        "how many have we won",
        "were 1-1, do we make the bracket",
        "do we go thru",
        "did we qualify",
        "is that enough to go through",
    ],
)
def test_the_record_of_a_pool_is_its_table(in_pool: Talk, text: str) -> None:
    before = in_pool.stored()
    assert in_pool.say(text) == TABLE
    assert in_pool.stored() == before


def test_whom_we_play_typed_short_is_whom_we_play(in_pool: Talk) -> None:
    assert in_pool.say("who r we playing").startswith("Next: Dov/Marisela.")


def test_whom_we_play_typed_short_without_a_pool(demo: Talk) -> None:
    demo.say("next: ruiz and hale, 14:00, court 3")
    assert "Ana Ruiz/Hale, 14:00" in demo.say("who r we playing")


def test_the_score_of_the_match_at_hand_is_no_record(in_pool: Talk) -> None:
    in_pool.say("we serve")
    assert in_pool.say("what was the score").startswith("0-0-2.")


def test_the_record_without_a_pool_is_the_last_match(demo: Talk) -> None:
    demo.say("next: okafor and lindqvist")
    demo.say("we won 11-5 11-7")
    assert demo.say("what was our record").startswith("Last match: won 11-5 11-7.")


DAY = """Today: 1 won, 1 lost.
Lost 5-11 8-11 vs Ana Ruiz/Hale
Won 11-5 11-7 vs Okafor/Lindqvist"""


@pytest.fixture
def two_played(demo: Talk) -> Talk:
    for said in ("next: ruiz and hale", "lost 5-11 8-11"):
        demo.say(said)
    for said in ("next: okafor and lindqvist", "we won 11-5 11-7"):
        demo.say(said)
    return demo


@pytest.mark.parametrize(
    "text",
    [
        "whats our record today",
        "our record?",
        "who did we lose to today",
        "who beat us last time",
        "how many did we win",
        "results today",
    ],
)
def test_the_record_of_a_day_names_every_match(two_played: Talk, text: str) -> None:
    before = two_played.stored()
    assert two_played.say(text) == DAY
    assert two_played.stored() == before


@pytest.mark.parametrize(
    "text", ["how did we do vs hale", "score vs ruiz and hale", "what did we lose to hale by"]
)
def test_another_match_than_the_last_is_told_by_whom_it_was_against(
    two_played: Talk, text: str
) -> None:
    told = two_played.say(text)
    assert told == "You lost 5-11 8-11, earlier today, vs Ana Ruiz/Hale."


def test_the_last_match_is_reviewed_by_name_too(two_played: Talk) -> None:
    assert two_played.say("how did we do vs okafor").startswith("Last match: won 11-5 11-7.")


def test_a_match_that_is_on_leaves_the_day_before_it(two_played: Talk) -> None:
    two_played.say("next: ruiz and hale")
    assert two_played.say("our record today") == DAY


@pytest.mark.parametrize(
    "text",
    [
        "what is left in our pool",
        "what is left",
        "who do we still play",
        "how many are left",
        "how many matches left",
        "who do we have left",
        "what matches are still to come",
    ],
)
def test_what_is_left_is_in_the_table(in_pool: Talk, text: str) -> None:
    assert in_pool.say(text) == TABLE


def test_without_a_pool_it_says_so(demo: Talk) -> None:
    assert demo.say("what is left in our pool").startswith("No pool is on.")


def test_who_is_left_handed_is_another_question(in_pool: Talk) -> None:
    assert not in_pool.say("who is left handed").startswith("Pool")
