"""What is told of whoever writes, before it is known who that is. Wordings: our own, no source."""

from __future__ import annotations

import pytest
from talk import Talk

ASKED = "Your words are kept. Who are you two? Write: we are Mira and Tom"
LEFT = ("hand", "left", False)
RIGHT = ("hand", "right", False)
PLAYS_LEFT = ("side_played", "left", False)
PLAYS_RIGHT = ("side_played", "right", False)


@pytest.mark.parametrize(
    ("told", "mine", "hers"),
    [
        ("im lefty shes righty", LEFT, RIGHT),
        ("i am left handed and she is right handed", LEFT, RIGHT),
        ("im a lefty dont forget", LEFT, None),
        ("i play left she plays right", PLAYS_LEFT, PLAYS_RIGHT),
        ("she plays right im left", PLAYS_LEFT, PLAYS_RIGHT),
    ],
)
def test_it_waits_until_we_know_who_of_us_writes(
    fresh: Talk, told: str, mine: tuple[str, str, bool], hers: tuple[str, str, bool] | None
) -> None:
    assert fresh.say(told) == ASKED
    fresh.say("who has the middle")
    reply = fresh.say("we are Delphine and Oriane")
    assert reply == "You are Delphine and Oriane.\n\nWhich of you are you?"
    assert fresh.tap("Delphine").startswith("Noted. ")
    assert fresh.claims("Delphine") == {mine}
    assert fresh.claims("Oriane") == ({hers} if hers else set())


def test_the_name_typed_is_as_good_as_the_tap(fresh: Talk) -> None:
    fresh.say("im lefty")
    fresh.say("we are Delphine and Oriane")
    assert fresh.say("im delphine") == "Noted. Delphine: left-handed."


def test_it_is_asked_at_once_where_our_pair_is_known(fresh: Talk) -> None:
    fresh.say("we are Delphine and Oriane")
    assert fresh.say("im lefty") == "Your words are kept. Which of you are you?"
    fresh.tap("Delphine")
    assert fresh.say("i play left") == "Noted. Delphine: plays left."


@pytest.mark.parametrize(
    "told",
    [
        "my partner is Oriane",
        "hi, Oriane is my partner",
        "me and Oriane, im lefty",
    ],
)
def test_who_told_the_partner_is_the_other_of_the_pair(fresh: Talk, told: str) -> None:
    fresh.say("im lefty")
    fresh.say(told)
    assert "Noted. Delphine: left-handed." in fresh.say("we are Delphine and Oriane")


def test_what_stands_behind_my_own_name_is_mine(fresh: Talk) -> None:
    fresh.say("im Delphine, lefty. my partner is Oriane, shes right handed")
    assert (fresh.claims("Delphine"), fresh.claims("Oriane")) == ({LEFT}, {RIGHT})


def test_whoever_left_the_pair_writes_no_more(demo: Talk) -> None:
    """It was noted on Mira that the new partner plays right."""
    before = demo.claims("Mira")
    demo.say("hi, baptiste is my partner")
    demo.say("we are delphine and baptiste, he plays right im left")
    assert demo.claims("Mira") == before
    assert demo.claims("Delphine") == {PLAYS_LEFT}
    assert demo.claims("Baptiste") == {PLAYS_RIGHT}


def test_two_new_names_are_asked_about(demo: Talk) -> None:
    reply = demo.say("we are delphine and baptiste, he plays right im left")
    assert reply.endswith("Which of you are you?")
    assert demo.tap("Delphine") == "Noted. Baptiste: plays right; Delphine: plays left."


def test_a_lefty_is_never_taken_as_right_handed_in_silence(fresh: Talk) -> None:
    fresh.say("we are Delphine and Oriane")
    fresh.say("delphine is lefty, oriane is right handed")
    told = fresh.say("who has the middle")
    assert "Oriane left: two forehands meet" in told  # both ways, since no sides are told
    assert "two backhands meet" in told
    assert "Who plays left?" in told


@pytest.mark.parametrize(
    "told",
    [
        "im right",
        "im right, the ball was out",
        "im left behind when they lob what now",
        "im tired",
        "my backhand is weak",
        "am i right that the server calls",
    ],
)
def test_what_tells_no_hand_and_no_side_waits_for_nobody(fresh: Talk, told: str) -> None:
    assert "Your words are kept" not in fresh.say(told)
    assert fresh.notes() == ()
