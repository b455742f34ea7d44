"""Scores and rallies in hardly a word: one side's points, packed calls, "+1"; examples of ours."""

from __future__ import annotations

from dataclasses import replace
from datetime import time

import pytest
from voices import EVENING, fields_of

from bot.chat.announcements import clock, court_of
from bot.chat.put_right import put_right
from bot.chat.said import MatchSaid, RallySaid, ScoreSaid
from bot.chat.understand import understand

MATCH = replace(EVENING, match_on=True)


@pytest.mark.parametrize(
    ("text", "ours", "theirs"),
    [
        *(("10 us", 10, None), ("12 them", None, 12), ("ours is 8", 8, None)),
        *(("theirs 7 now", None, 7), ("8 n 8", 8, 8), ("all 7", 7, 7)),
        ("we have three match points at 10-7", 10, 7),
        ("they have two game points at 10-8", 8, 10),
        ("not nine to five, EIGHT to five for us", 8, 5),
        ("both on nine, my side serves", 9, 9),
        ("serve's ours, 3-4. partner up first", 3, 4),
        ("12-11 down with the ball", 11, 12),
    ],
)
def test_points_in_short(text: str, ours: int | None, theirs: int | None) -> None:
    told = fields_of(understand(text, chat=MATCH)[-1])
    assert (told["kind"], told["ours"], told["theirs"]) == ("score", ours, theirs)


@pytest.mark.parametrize(
    ("text", "won_by_us"),
    [
        *(("+1", True), ("+1 them", False), ("+ 1 us", True), ("2 us", True)),
        *(("one for us", True), ("point to the whiners", False), ("that's ours, lovely", True)),
        ("okafor wacked it way out", True),
        ("another one for them, i hit the perfect ball two inches out", False),
    ],
)
def test_a_rally_in_short(text: str, won_by_us: bool) -> None:
    told = understand(text, chat=MATCH)[-1]
    assert isinstance(told, RallySaid)
    assert told.won_by_us is won_by_us


def test_a_packed_call_may_be_courteous() -> None:
    told = understand("542 sorry", chat=MATCH)[-1]
    assert isinstance(told, ScoreSaid)
    assert fields_of(told)["call"] == [5, 4, 2]


@pytest.mark.parametrize("text", ["point to the left side", "they're up first", "1 to 11 or so"])
def test_near_ones_are_no_rally(text: str) -> None:
    assert not isinstance(understand(text, chat=MATCH)[-1], RallySaid)


def test_what_is_put_right_counts() -> None:
    assert put_right("ten fifty no wait at ten forty", clock) == time(10, 40)
    assert put_right("court two no court twelve sorry", court_of) == "12"
    assert put_right("court two, no idea why", court_of) == "2"


@pytest.mark.parametrize(
    ("text", "target"),
    [("one to 15 against hale and brandt", 15), ("hale and brandt, just one to 11, court 4", 11)],
)
def test_one_game_to_a_number_is_announced(text: str, target: int) -> None:
    told = understand(text, chat=EVENING)[-1]
    assert isinstance(told, MatchSaid)
    assert (fields_of(told)["target"], fields_of(told)["best_of"]) == (target, 1)
