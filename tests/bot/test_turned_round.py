"""The game told last turned round, or told anew by its number: it never becomes one game more."""

from __future__ import annotations

import pytest
from talk import Talk


@pytest.mark.parametrize(
    "said",
    [
        "no the other way, we lost it",
        "we lost the first game 7-11",
    ],
)
def test_a_game_booked_the_wrong_way_is_turned(demo: Talk, said: str) -> None:
    demo.say("won 11-7")
    assert demo.say(said).startswith("Game 1 theirs, 7-11.")


def test_what_turns_nothing(demo: Talk) -> None:
    demo.say("won 11-7")
    assert "Game 1 ours, 11-7." in demo.say("no, other way, we won it")
    assert demo.say("we lost the second game 7-11").startswith("Game 2 theirs, 7-11.")


def test_to_a_coach_they_may_have_lost_either_way(fresh: Talk) -> None:
    for said in ("im coaching danka and petra", "next: Ingrid Vass and Corinne Tull", "yes"):
        fresh.say(said)
    fresh.say("won 11-7")
    assert fresh.say("no the other way, they lost it").startswith("Game 1 theirs, 7-11.")
    fresh.say("won 11-5")
    assert fresh.say("we won the first 11-2").startswith("I have 7-11 11-5 so far.")
