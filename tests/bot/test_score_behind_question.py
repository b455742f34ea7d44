"""A score told behind a question is kept; one that the question only supposes is not."""

from __future__ import annotations

import pytest
from talk import Talk


@pytest.fixture
def playing(demo: Talk) -> Talk:
    demo.say("next: okafor and lindqvist")
    demo.say("9-8-2 us")
    return demo


@pytest.mark.parametrize(
    "said",
    [
        "deuce what now ten ten they serve first server",
        "what do we do now, its 10-10-1 they serve",
        "time out? 10-10-1 they serve",
    ],
)
def test_a_call_that_stands_now_is_kept(playing: Talk, said: str) -> None:
    playing.say(said)
    assert playing.say("score").startswith("10-10-1. They serve")


@pytest.mark.parametrize(
    "said",
    [
        "what if its 10-10-1 they serve",
        "whats our chance, 10-10-1 they serve",
        "what should we do at 10-10-1 they serve",
    ],
)
def test_one_that_is_supposed_is_not(playing: Talk, said: str) -> None:
    playing.say(said)
    assert playing.say("score").startswith("9-8-2. We serve")
