"""The partner and whom we play, told in one message."""

from __future__ import annotations

import pytest
from talk import Talk


@pytest.mark.parametrize(
    "text",
    [
        "me and Sunniva play Brackenridge and Halvorsen",
        "playing with Sunniva against Brackenridge and Halvorsen",
        "Sunniva and me play Brackenridge and Halvorsen at 9:40",
        "me and Sunniva are facing Brackenridge and Halvorsen next",
    ],
)
def test_the_partner_is_no_opponent(fresh: Talk, text: str) -> None:
    reply = fresh.say(text)
    assert "YOUR NAME and Sunniva" in reply
    assert "No Brackenridge and Halvorsen in your book yet." in reply


@pytest.mark.parametrize("text", ["me and sunniva play left", "me and sunniva play well together?"])
def test_two_names_must_follow(fresh: Talk, text: str) -> None:
    assert "in your book yet" not in fresh.say(text)


def test_a_question_behind_them_notes_nothing_of_them(fresh: Talk) -> None:
    fresh.say("we are Mira and Sunniva")
    fresh.say("next: Brackenridge and Halvorsen")
    fresh.say("yes")
    told = fresh.say(
        "im playing with Sunniva against Brackenridge and Halvorsen who takes the middle"
    )
    assert told.startswith("Slow, speed-ups: cross.")
    assert fresh.claims("Brackenridge") == set()


def test_hands_behind_an_event_are_kept(fresh: Talk) -> None:
    reply = fresh.say(
        "im colm lefty my partner today is marguerite in mixed never met her shes a righty"
    )
    assert "You are Colm and Marguerite." in reply
    assert "Noted. Colm: left-handed; Marguerite: right-handed." in reply
