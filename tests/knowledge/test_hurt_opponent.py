"""A hurt opponent is played like any other, and one of us who hurts comes before any tactics.

Common practice, no source: fair play as coaches teach it.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from knowledge.situation import Situation
from knowledge.tactics.hurt_opponent import CALL, asks_if_fair, goes_at_injury
from knowledge.tactics.weather import advise
from knowledge.vocabulary import Topic

OURS = ("Mira Dahl", "Tom Adeyemi")


@pytest.mark.parametrize(
    "said",
    [
        "priya tweaked her knee, attack it?",
        "hale twisted his ankle, do we make him run",
        "she is limping, should we go at her",
        "he has a sore shoulder, target him?",
        "her back hurts, should i lob her",
        "okafor is cramping, can we take advantage",
        "dez is limping so can we drop shot him",
        "is it ok to drop shot dez hes limping",
        "dez is limping, should we move him around",
    ],
)
def test_going_at_an_injury_is_heard(said: str) -> None:
    assert goes_at_injury(said, ours=OURS)


@pytest.mark.parametrize(
    "said",
    [
        "my knee hurts, should i attack",
        "tom tweaked his knee, attack it?",
        "mira is limping, should we target him",
        "my partner is cramping, should we go for it",
        "priya tweaked her knee",
        "should we attack her backhand",
        "is it too hot to attack",
        "should we drop shot him",
        "im limping can i drop shot him",
        "she hurt her neck, can we move her",
    ],
)
def test_our_own_bodies_and_plain_tactics_are_not_meant(said: str) -> None:
    assert not goes_at_injury(said, ours=OURS)


def test_a_bystanders_words_for_a_hurt_opponent_are_heard_and_of_ours_they_are_not() -> None:
    at_them = (
        "okafor said he's got an ankle thing, target it?",
        "hale's knee is taped, do we lob her",
        "hale limps to her left, go short there?",
        "hale is favouring her left leg, do we go there",
        "okafor tweaked something, drops all day?",
        "his wrist is strapped, speed up at it?",
        "okafor pulled up with his calf, should we keep him moving",
    )
    others = (
        "my knee is taped, do we lob her",
        "tom's knee is taped, do they lob us",
        "okafor holds his back foot, go behind him?",
        "hale got a bad back hand, go there?",
        "okafor has a weak arm on overheads, lob him?",
        "is hale's hip open, hit there?",
        "okafor has an ankle brace on",
    )
    assert [said for said in at_them if not goes_at_injury(said, ours=OURS)] == []
    assert [said for said in others if goes_at_injury(said, ours=OURS)] == []


def test_the_answer_plays_the_ball_and_leaves_the_rest_to_the_staff() -> None:
    words = "priya tweaked her knee, attack it?"
    asked = Situation(topic=Topic.WEATHER_OR_BODY)
    asked = replace(asked, asked=replace(asked.asked, words=words))
    advice = advise(asked)
    assert advice.call == CALL
    assert advice.caution is not None
    assert "medical staff" in advice.caution
    assert "Referee" in advice.caution


def test_a_hurt_part_gone_at_by_name_is_heard_and_one_of_ours_is_not() -> None:
    at_them = (
        "shall we play on her ankle",
        "should we attack ronja's ankle",
        "can we use her limp",
        "do we go after his bad knee",
        "should i hit at his sore shoulder",
    )
    others = (
        "can tom play on his ankle",
        "should she play on her bad knee",
        "should i test the knee",
        "can i play on my ankle",
        "should we hit at his knees",
        "should i attack his hip",
        "shall we play on her backhand",
    )
    assert [said for said in at_them if not asks_if_fair(said)] == []
    assert [said for said in others if asks_if_fair(said)] == []
