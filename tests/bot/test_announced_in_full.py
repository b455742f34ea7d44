"""Announcements read to the last word: the time as written, and names whole, whatever they mean."""

from __future__ import annotations

import pytest
from talk import Talk


@pytest.mark.parametrize(
    ("said", "at"),
    [
        ("next: okafor and lindqvist, 11.40, they serve", "11:40"),
        ("next: okafor and lindqvist 8.20 they serve", "08:20"),
        ("next: okafor and lindqvist, 10.25, court 3, they serve", "10:25, court 3"),
        ("next: okafor and lindqvist at 1.40 pm, they serve", "13:40"),
    ],
)
def test_a_time_with_a_dot_beside_who_serves_sets_no_rates(demo: Talk, said: str, at: str) -> None:
    reply = demo.say(said)
    assert reply.startswith(f"Next: Chidi Okafor and Sven Lindqvist, {at}, best of 3 to 11.")
    assert "They serve from the right" in reply
    assert "your numbers" not in demo.say("win chance")


@pytest.mark.parametrize(
    "said",
    ["we win 21.50 serving, 20.40 receiving", "assume 21.50% on our serve, 20.40% on theirs"],
)
def test_shares_won_or_in_percent_are_no_times(demo: Talk, said: str) -> None:
    assert "22 of 100 serving, 20 receiving" in demo.say(said)
