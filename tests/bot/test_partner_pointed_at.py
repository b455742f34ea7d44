"""A partner told by pointing back, or by a name behind "my partner". Wordings: our own."""

from __future__ import annotations

import pytest
from talk import Talk

ASKED = "And you? Write: we are YOUR NAME and Oriane"


@pytest.mark.parametrize(
    "said",
    [
        "oriane is righty, shes my partner",
        "Oriane is righty and she is my partner",
        "oriane is righty, thats my partner",
        "my partner oriane is righty",
    ],
)
def test_who_is_told_of_is_the_partner(fresh: Talk, said: str) -> None:
    """She was asked about as an opponent, with a dink at her."""
    fresh.name = "Z"
    assert fresh.say(said) == f"{ASKED}\n\nNoted. Oriane: right-handed."
    assert fresh.say("we are delphine and oriane") == "You are Delphine and Oriane."


@pytest.mark.parametrize(
    "said", ["no shes my partner not an opponent", "shes my partner", "no, oriane is my partner"]
)
def test_somebody_taken_for_an_opponent_is_put_right(fresh: Talk, said: str) -> None:
    fresh.name = "Z"
    fresh.say("oriane is righty")
    fresh.tap("add oriane")
    assert fresh.say(said) == ASKED
    assert "Vs Oriane" not in fresh.say("who has the middle")


@pytest.mark.parametrize(
    "said", ["im Delphine, i play with Oriane", "im delphine, my partner is oriane"]
)
def test_both_of_us_are_told_at_once(fresh: Talk, said: str) -> None:
    assert fresh.say(said) == "You are Delphine and Oriane."
    assert fresh.say("im lefty") == "Noted. Delphine: left-handed."


@pytest.mark.parametrize(
    "said",
    [
        "lindqvist poaches, hes my partner",
        "tom is slow, hes my partner",
        "he told me that hes my partner",
        "shes my partner?",
        "my partner never comes in",
        "my partner is slow and thats my problem",
        "my partner tom is slow",
    ],
)
def test_an_opponent_and_a_settled_pair_stay_as_they_are(demo: Talk, said: str) -> None:
    ours = demo.context.ours
    demo.say(said)
    assert demo.context.ours == ours
