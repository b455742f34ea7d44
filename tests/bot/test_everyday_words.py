"""Everyday words that look like a format, games, time-outs or the toss, and are none."""

from __future__ import annotations

import pytest

from bot.chat.breaks_said import find_breaks
from bot.chat.format_said import format_parts
from bot.chat.games_said import find_games
from bot.chat.spoken_line import line_of
from bot.chat.words import words


@pytest.mark.parametrize(
    "text",
    [
        "should we be playing to one side of the court",
        "should i play to one of them",
        "we lost one game already",
        "what are our chances to win by 5",
    ],
)
def test_no_format(text: str) -> None:
    assert format_parts(words(text)) is None


@pytest.mark.parametrize(
    "text", ["we won the first 3 points", "lost the first 4 rallies", "took the first dink cross"]
)
def test_no_games(text: str) -> None:
    assert find_games(line_of(words(text))) is None


@pytest.mark.parametrize(
    "text", ["i only have one shot against her", "we have both guys at the net"]
)
def test_no_time_outs(text: str) -> None:
    assert find_breaks(line_of(words(text))).timeouts_left is None
