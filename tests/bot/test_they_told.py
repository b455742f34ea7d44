"""A coach's "they" is their own pair or the one across the net: a result that hangs on it waits."""

from __future__ import annotations

import pytest
from talk import Talk

COACH = ("im coaching danka and petra", "next: Ingrid Vass and Corinne Tull", "yes")


@pytest.mark.parametrize(
    ("told", "answer", "booked"),
    [
        ("they lost the first 7-11", "danka and petra", "Game 1 theirs, 7-11."),
        ("petra says they've won 11-9", "the others", "Game 1 theirs, 9-11."),
        ("they won 11-9 11-7", "vass", "Lost 9-11 7-11."),
    ],
)
def test_whose_it_was_is_asked_before_anything_is_booked(
    fresh: Talk, told: str, answer: str, booked: str
) -> None:
    for said in COACH:
        fresh.say(said)
    assert "Not booked yet." in fresh.say(told)
    assert [one.label for one in fresh.buttons] == ["Danka/Petra", "Vass/Tull"]
    assert fresh.say(answer).startswith(booked)


def test_a_side_that_is_named_is_believed(fresh: Talk) -> None:
    for said in COACH:
        fresh.say(said)
    assert fresh.say("danka and petra lost the first 7-11").startswith("Game 1 theirs, 7-11.")
    assert fresh.say("they beat us 11-5").startswith("Lost 7-11 5-11.")


def test_to_a_player_they_are_across_the_net(fresh: Talk) -> None:
    for said in ("we are danka and petra", *COACH[1:]):
        fresh.say(said)
    assert fresh.say("they lost the first 7-11").startswith("Game 1 ours, 11-7.")
