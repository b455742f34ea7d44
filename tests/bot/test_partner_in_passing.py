"""A partner told with more beside it, or as husband and wife are. Wordings: our own, no source."""

from __future__ import annotations

import pytest
from talk import Talk

ASKED = "And you? Write: we are YOUR NAME and Anders"


@pytest.fixture
def zoe(fresh: Talk) -> Talk:
    fresh.user, fresh.name = "zoe", "Z"
    return fresh


@pytest.mark.parametrize(
    "text",
    [
        "me and anders",
        "its me and anders today",
        "just me n anders",
        "me and my husband anders",
        "anders and i are playing today",
        "anders and me",
        "my husband is anders",
        "my partners name is anders",
        "anders is my husband and partner",
        "im playing with my friend anders",
    ],
)
def test_a_partner_is_told_in_many_ways(zoe: Talk, text: str) -> None:
    assert zoe.say(text) == ASKED
    assert zoe.say("im marisela") == "You are Marisela and Anders."


@pytest.mark.parametrize(
    ("text", "noted"),
    [
        (
            "my partner is anders quint and he is right handed and I am too",
            "Noted. Anders: right-handed.",
        ),
        ("my partner tmrw is anders quint, lefty", "Noted. Anders: left-handed."),
        ("my partner is anders quint, his backhand is weak", "Noted. Anders: backhand dink weak."),
        ("i play with anders today he plays left", "Noted. Anders: plays left."),
        ("im playing with my husband anders, he is a lefty", "Noted. Anders: left-handed."),
    ],
)
def test_what_is_told_behind_the_name_is_noted_on_the_partner(
    zoe: Talk, text: str, noted: str
) -> None:
    reply = zoe.say(text)
    assert reply.startswith(ASKED)
    assert noted in reply
    assert zoe.say("we are marisela and anders") == "You are Marisela and Anders."
    assert zoe.claims("Anders")


def test_who_is_told_of_behind_both_names_is_the_partner(zoe: Talk) -> None:
    reply = zoe.say("im zoe, my partner is anders quint, hes lefty")
    assert reply == "You are Zoe and Anders.\n\nNoted. Anders: left-handed."


def test_both_of_us_in_one_line(zoe: Talk) -> None:
    assert zoe.say("I am marisela and my husband is anders") == "You are Marisela and Anders."
    assert "in your book yet" not in zoe.say("anders is grumpy today")
    assert "in your book yet" not in zoe.say("anders takes all the balls in the middle")


def test_a_name_alone_answers_who_the_new_partner_is(zoe: Talk) -> None:
    zoe.say("new partner")
    assert zoe.say("anders quint") == f"{ASKED} Quint"


def test_a_question_behind_the_name_is_answered(zoe: Talk) -> None:
    reply = zoe.say("my partner is anders, who takes the middle?")
    assert reply.startswith(ASKED)
    assert "cross" in reply


@pytest.mark.parametrize(
    "text",
    [
        "me and my partner",
        "me and him",
        "my partner is slow and he cant move",
        "my partner is a banger and she is tall",
        "my wife is mad at me",
        "my wife is crying, she is upset",
        "my brother is here and he wants to know who serves",
        "playing with confidence and power",
        "im playing with fire here",
        "my husband is tired, what now",
        "i am gassed",
    ],
)
def test_what_names_nobody_makes_no_partner(zoe: Talk, text: str) -> None:
    reply = zoe.say(text)
    assert "And you?" not in reply
    assert "You are" not in reply


def test_an_opponent_and_a_settled_pair_stay_as_they_are(demo: Talk) -> None:
    ours = demo.context.ours
    demo.say("my partner is okafor and he is tall")
    demo.say("tom is my partner and he poaches everything")
    assert demo.context.ours == ours
