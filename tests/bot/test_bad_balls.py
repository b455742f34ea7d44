"""What cannot be of a ball, over every topic that takes one: a call, and one clear line of it."""

from __future__ import annotations

import pytest
from conversations import demo_console

from knowledge.vocabulary import Topic

ASKED = {
    Topic.COVER_MIDDLE: "who takes the middle, {}",
    Topic.AIM_ATTACK: "where do i speed up, {}",
    Topic.AIM_OVERHEAD: "where do i put the overhead, {}",
    Topic.DROP_ON_DEEP_OPPONENTS: "drop volley or keep them back, {}",
    Topic.LOB: "should i lob, {}",
    Topic.RESET_OR_COUNTER: "reset or counter, {}",
    Topic.TAKE_OR_LET_BOUNCE: "take it in the air or let it bounce, {}",
    Topic.LET_IT_GO: "do i let it go out, {}",
    Topic.TRANSITION: "where do i put the fifth shot, {}",
    Topic.ERNIE_OR_POST: "do i go for the ernie, {}",
    Topic.AIM_DINK: "where do i dink, {}",
    Topic.AIM_SERVE: "where do i serve, {}",
    Topic.AIM_RETURN: "where do i return, {}",
    Topic.THIRD_SHOT: "third shot drop or drive, {}",
}

CANNOT_BE = {
    "ball is 12 feet high": "Nobody reaches over 3 m (10 ft): height left out.",
    "ball is minus 2 feet high": "A ball is never below the ground: height left out.",
    "we are 60 feet behind the baseline": "That spot is off our side of the court: left out.",
    "they are 60 feet behind the line": "Nobody stands that far off the court: left out.",
    "ball is 3 cubits high": 'I don\'t know the unit "cubits": say ft, in, cm or m.',
    "it comes at 300 mph": "No ball comes at 300 mph: its pace left out.",
    "wind of 200 mph": "200 mph",
}


@pytest.mark.parametrize("topic", ASKED)
def test_what_cannot_be_is_told_in_one_line_under_the_call(topic: Topic) -> None:
    """And nothing is noted of it: they are not tidy at the kitchen line for standing behind it."""
    console = demo_console()
    try:
        for words, line in CANNOT_BE.items():
            said = console.say_json(ASKED[topic].format(words))
            assert said["kind"] == "question", (words, said["kind"])
            assert said["call"], words
            told = [one for one in said["reply"].splitlines() if line in one]
            assert len(told) == 1, (words, said["reply"])
    finally:
        console.store.close()


def test_a_speed_is_no_share_of_rallies() -> None:
    console = demo_console()
    try:
        said = console.say_json("serve is coming at 60 mph where do i return")
        assert said["kind"] == "question"
        assert said["slots"].get("rates") is None
    finally:
        console.store.close()
