"""Six imagined people ask for plans: half of the lines mended on, half put aside and counted."""

from __future__ import annotations

from plan_voices import ASIDE, OPEN, lines, wrong

FEWEST_RIGHT = 0.72
"""Of the lines put aside; 0.77 were when this was written, 0.62 before anything was mended."""

KNOWN_MISSES = {
    "shuld we stak tom is a leftie",  # answered, and the hand noted beside it
    "i will observe brandt now, give me the card",
    "okfor lindqvist tactics?",
    "our dinks float, help",
    "pinned at the baseline whole game, one change please",
}


def test_lines_that_were_mended_on_are_read_as_what_they_are() -> None:
    assert {said for _, said, _, _ in wrong(OPEN)} <= KNOWN_MISSES


def test_most_of_the_lines_put_aside_are_too() -> None:
    """Only the share: what is put aside is never looked at line by line."""
    total = len(list(lines(ASIDE)))
    assert total == 60
    assert 1 - len(wrong(ASIDE)) / total >= FEWEST_RIGHT
