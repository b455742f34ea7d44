"""Somebody told of by looks is across the net: never the partner who was spoken of last, and of the
opponents not surely the last one."""

from __future__ import annotations

import pytest
from talk import Talk


@pytest.fixture
def pair(fresh: Talk) -> Talk:
    """A pair whose one player was just noted, and nobody known across the net."""
    fresh.say("we are Dov and Kath")
    fresh.say("kath is a lefty")
    return fresh


@pytest.mark.parametrize(
    "text",
    [
        "the tall lad has slow feet",
        "their warming up the tall one has a massive forehand",
        "correction its the short one with the slow feet",
        "the lady with the visor poaches a lot",
        "their lefty poaches a lot",
        "the big bloke keeps lobbing",
    ],
)
def test_no_partner_is_told_of_by_looks(pair: Talk, text: str) -> None:
    before = pair.claims("Kath")
    pair.say(text)
    assert pair.claims("Kath") == before


def test_whose_it_is_is_asked_of_those_across_the_net(pair: Talk) -> None:
    pair.say("next: Orla and Bea")
    pair.press(pair.buttons[0].payload)
    pair.say("kath has slow feet")
    pair.say("the tall one has a massive forehand")
    assert [one.label for one in pair.buttons] == ["Orla", "Bea"]
    assert pair.tap("Bea").startswith("Noted. Bea: tall, forehand drive strong.")


def test_nor_is_who_is_described_surely_the_opponent_spoken_of_last(pair: Talk) -> None:
    pair.say("next: Orla and Bea")
    pair.press(pair.buttons[0].payload)
    pair.say("orla is the tall one")
    pair.say("the short one poaches a lot")
    assert [one.label for one in pair.buttons][:2] == ["Orla", "Bea"]


def test_the_other_lady_is_the_one_not_spoken_of(pair: Talk) -> None:
    pair.say("next: Orla and Bea")
    pair.press(pair.buttons[0].payload)
    pair.say("orla has a weak backhand")
    assert pair.say("the other lady has slow feet").startswith("Noted. Bea: foot speed weak.")


def test_who_is_not_described_is_still_who_was_spoken_of(pair: Talk) -> None:
    assert pair.say("she has slow feet").startswith("Noted. Kath: foot speed weak.")


@pytest.mark.parametrize("text", ["where do i serve the tall one", "the tall one"])
def test_a_question_about_somebody_described_stores_nothing(pair: Talk, text: str) -> None:
    before = pair.notes()
    pair.say(text)
    assert pair.notes() == before
