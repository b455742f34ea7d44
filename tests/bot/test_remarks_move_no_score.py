"""What is said of our own pair during a match moves neither the score nor the serve."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from coach_talks import coach_at_a_match
from talk import Talk


@pytest.fixture
def match() -> Iterator[Talk]:
    """They lead 4-2 and serve."""
    talk = coach_at_a_match()
    talk.say("they serve 4-2-1")
    yield talk
    talk.store.close()


@pytest.mark.parametrize(
    "said",
    [
        "ilka wont come to the net",
        "ilka won't hit the net",
        "ilka doesnt miss",
        "petra wont come to the net",
        "joost doesnt hit it out",
        "ilka might miss",
        "noor will miss",
        "noor isnt getting to the net",
        "ilka too far from the net",
        "noor late to the net",
        "ilka serves to joost",
        "petra serves to noor",
        "we serve to joost",
    ],
)
def test_a_remark_leaves_the_score_as_it_was(match: Talk, said: str) -> None:
    match.say(said)
    assert match.say("score").startswith("4-2-1. They serve")


@pytest.mark.parametrize(
    ("said", "stands"),
    [
        ("noor hit the net", "5-2-1."),
        ("ilka netted it", "5-2-1."),
        ("petra into the net", "4-2-2."),
        ("our point, they wont like that", "4-2-2."),
        ("ilka serves now", "2-4-1. Ilka serves"),
    ],
)
def test_a_rally_or_a_serve_counts_as_before(match: Talk, said: str, stands: str) -> None:
    assert match.say(said).startswith(stands)


def test_who_serves_to_whom_answers_who_serves_first() -> None:
    talk = coach_at_a_match()
    assert talk.say("ilka serves to joost").startswith("0-0-2. We serve")
    talk.store.close()


@pytest.mark.parametrize(
    ("said", "left"),
    [
        ("used our last time out", "you 0, they 2"),
        ("that was our last timeout", "you 0, they 2"),
        ("that was their last timeout", "you 2, they 0"),
        ("we took a time out", "you 1, they 2"),
    ],
)
def test_the_last_time_out_leaves_none(match: Talk, said: str, left: str) -> None:
    """Two for each side in a game to 11 (2025 rulebook)."""
    match.say(said)
    assert match.say("timeouts left?") == f"Time-outs left: {left}."
    match.say("undo")
    assert match.say("timeouts left?") == "Time-outs left: you 2, they 2."
