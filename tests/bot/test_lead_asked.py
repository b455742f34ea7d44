"""Who is ahead and what is missing to win: told with the score, no chance of winning."""

from __future__ import annotations

import pytest
from talk import Talk


@pytest.fixture
def match(demo: Talk) -> Talk:
    demo.say("start")
    return demo


@pytest.mark.parametrize(
    "asked",
    [
        "are we ahead or behind?",
        "are we ahead",
        "so are we up or down now",
        "who's leading",
        "how many more points do we need",
        "how many points we need more",
        "how many do they still need to win",
        "how many points are left for us",
    ],
)
def test_the_score_and_the_lead_are_told(match: Talk, asked: str) -> None:
    match.say("5-6-2 us")
    reply = match.say(asked)
    assert reply.startswith("5-6-2.")
    assert "Behind by 1: you need 6 more, they need 5." in reply


@pytest.mark.parametrize(
    ("score", "call", "told"),
    [
        ("7-6-1 and we serve", "7-6-1", "Ahead by 1: you need 4 more, they need 5."),
        ("10-10-1 us", "10-10-1", "Level: you need 2 more, they need 2."),
        ("we're up 10-9-1", "10-9-1", "Ahead by 1: you need 1 more, they need 3."),
    ],
)
def test_behind_a_score_it_is_kept_and_answered_in_one(
    match: Talk, score: str, call: str, told: str
) -> None:
    reply = match.say(f"{score}, how many points do we need")
    assert reply.count(call) == 1
    assert told in reply
    assert "undo" in [one.label for one in match.buttons]
    assert match.say("score").splitlines()[0] in reply


@pytest.mark.parametrize(
    "asked",
    [
        "are we ahead in the middle",
        "are we up at the net",
        "how many timeouts do we need",
        "are we going to win",
        "how many dinks do we need",
    ],
)
def test_what_asks_something_else_is_not_taken(match: Talk, asked: str) -> None:
    match.say("5-6-2 us")
    assert "you need" not in match.say(asked)


def test_without_a_match_there_is_no_lead(demo: Talk) -> None:
    assert "you need" not in demo.say("are we ahead")
