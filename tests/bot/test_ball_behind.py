"""An overhead that has gone over one of us is their lob: turn and run, never backpedal.

Most falls are lunging or moving backward (Myers and Hanks 2024).
"""

from __future__ import annotations

import pytest
from talk import Talk

NEVER_BACK = "Turn and run; never backpedal."


@pytest.mark.parametrize(
    "said",
    [
        "but what if its behind me",
        "and if its over my head behind me",
        "ok but if it goes past me",
        "what if its already over my head",
    ],
)
def test_a_ball_behind_after_an_overhead_is_run_for(demo: Talk, said: str) -> None:
    overhead = demo.say("how do i hit an overhead").splitlines()[0]
    reply = demo.say(said)
    assert reply.splitlines()[0] != overhead
    assert NEVER_BACK in reply


@pytest.mark.parametrize(
    "said",
    [
        "what if the lob is behind me",
        "how do i hit a smash when its over my head behind me",
        "how do i hit an overhead thats behind me",
    ],
)
def test_so_is_one_asked_about_at_once(demo: Talk, said: str) -> None:
    assert NEVER_BACK in demo.say(said)


@pytest.mark.parametrize(
    ("before", "said"),
    [
        ("wind", "what if its behind me"),
        ("where do i hit the overhead", "should i lob with the wind behind me"),
        ("where do i hit the overhead", "if its over my head do i let it go"),
        ("where do i hit the overhead", "what if its short"),
    ],
)
def test_wind_and_balls_let_go_stay_what_they_are(demo: Talk, before: str, said: str) -> None:
    demo.say(before)
    assert NEVER_BACK not in demo.say(said)
