"""What it takes to go on from a pool is the event's to say, and neither wind nor a plan."""

from __future__ import annotations

import pytest
from talk import Talk
from voices import EVENING

from bot.chat.said import PoolAsked, PoolVerb
from bot.chat.understand import understand

HOW_IT_STANDS = "won, "


@pytest.mark.parametrize(
    "text",
    [
        "what do we need to get into the playoff",
        "how many wins do we need to go through",
        "do we still make the semis",
        "how many teams go through",
        "so whos out",
        "are we out of the draw",
    ],
)
def test_it_is_asked_of_the_event(text: str) -> None:
    (said,) = understand(text, chat=EVENING)
    assert isinstance(said, PoolAsked)
    assert said.verb is PoolVerb.THROUGH


@pytest.mark.parametrize(
    "text",
    [
        "can we go through the middle",
        "what do we need to win this",
        "how do we get in",
        "we are out of timeouts",
    ],
)
def test_play_and_chances_stay_what_they_were(text: str) -> None:
    assert not any(isinstance(one, PoolAsked) for one in understand(text, chat=EVENING))


def test_the_desk_decides_and_a_pool_adds_how_we_stand(fresh: Talk) -> None:
    fresh.say("we are marisela and anders")
    alone = fresh.say("can we still qualify?")
    assert "ask the desk" in alone
    assert HOW_IT_STANDS not in alone
    fresh.say("pool: okafor/lindqvist, ruiz/hale; one game to 15")
    assert HOW_IT_STANDS in fresh.say("can we still qualify?")


def test_whom_in_the_final_asks_what_was_announced(fresh: Talk) -> None:
    assert fresh.say("who are we playing in the final").startswith("No match is on")
