"""Who of our pair writes, and whom the hands and sides of one line are. Wordings: our own."""

from __future__ import annotations

import pytest
from talk import Talk


def noted(talk: Talk, text: str) -> str:
    return talk.say(text).split("\n")[0]


@pytest.fixture
def zoe(fresh: Talk) -> Talk:
    """Somebody whose account bears neither name of the pair."""
    fresh.user, fresh.name = "zoe", "Zoe"
    fresh.say("we are petronella and bronagh")
    return fresh


@pytest.mark.parametrize(
    "text",
    [
        "bronagh lefty im righty",
        "im righty bronaghs lefty",
        "bronagh: lefty, me: righty",
        "i'm right handed and bronagh's left handed",
        "me righty bronagh lefty",
        "me being right handed, bronagh left handed",
    ],
)
def test_each_hand_is_its_own_players(zoe: Talk, text: str) -> None:
    answered = noted(zoe, text)
    assert "Bronagh: left-handed" in answered
    assert "Petronella: right-handed" in answered


@pytest.mark.parametrize(
    "text", ["my partners lefty", "my partner is a lefty", "im righty, partner is a lefty"]
)
def test_my_partner_is_the_other_of_us_once_it_is_known_who_writes(zoe: Talk, text: str) -> None:
    zoe.say("bronagh plays left i play right")
    assert "Bronagh: left-handed" in noted(zoe, text)


def test_who_is_told_to_play_with_whom_writes(fresh: Talk) -> None:
    fresh.user, fresh.name = "zoe", "Zoe"
    fresh.say("im petronella, playing with bronagh")
    assert noted(fresh, "im a lefty") == "Noted. Petronella: left-handed."


def test_the_name_of_the_account_tells_it_too(fresh: Talk) -> None:
    fresh.say("we are mira and tom")
    assert noted(fresh, "i play left") == "Noted. Mira: plays left."


def test_in_a_group_each_speaks_for_themselves(fresh: Talk) -> None:
    fresh.chat, fresh.is_group = "group", True
    fresh.bind_new_book()
    fresh.say("we are mira and tom")
    tom = fresh.of("Tom")
    tom.join()
    assert noted(fresh, "im a lefty") == "Noted. Mira: left-handed."
    assert noted(tom, "im a righty") == "Noted. Tom: right-handed."


def test_nobody_is_guessed_where_nothing_tells_who_writes(zoe: Talk) -> None:
    assert "Noted" not in zoe.say("im a lefty")
    assert not any(note.observations for note in zoe.notes()), "the words wait for who it is"


@pytest.mark.parametrize(
    "text",
    [
        "she plays left i play right",
        "i play right and she plays left",
        "he plays left im on the right",
    ],
)
def test_who_has_the_other_side_than_i_is_my_partner(demo: Talk, text: str) -> None:
    demo.say("okafor is slow")
    answered = noted(demo, text)
    assert "Tom: plays left" in answered
    assert "Mira: plays right" in answered


@pytest.mark.parametrize(
    ("said", "noted"),
    [
        ("im lefty and i play the left side", "left-handed, plays left"),
        ("im a lefty, i play the left side", "left-handed, plays left"),
        ("im right handed and i play the right side", "right-handed, plays right"),
        ("im lefty and i lob a lot", "left-handed, lob often"),
    ],
)
def test_my_hand_is_read_whatever_i_say_next(fresh: Talk, said: str, noted: str) -> None:
    fresh.say("hi im marisol and my partner is benedikt")
    assert fresh.say(said).startswith(f"Noted. Marisol: {noted}.")


@pytest.mark.parametrize(
    "text", ["me being right handed and her left handed", "him a lefty and me right handed"]
)
def test_a_hand_told_in_one_breath_with_mine_is_my_partners(demo: Talk, text: str) -> None:
    demo.say("okafor is slow")
    answered = noted(demo, text)
    assert "Tom: left-handed" in answered
    assert "Mira: right-handed" in answered


@pytest.mark.parametrize(
    ("text", "hand"),
    [
        ("no im right handed", "right-handed"),
        ("no i am left handed", "left-handed"),
        ("no im not right handed", "not right-handed"),
    ],
)
def test_a_no_that_answers_denies_nothing_of_my_hand(demo: Talk, text: str, hand: str) -> None:
    demo.say("should i go left or right")
    assert f"Mira: {hand}." in noted(demo, text)


def test_both_our_hands_are_read_beside_more(fresh: Talk) -> None:
    fresh.say("we are marisol and benedikt")
    told = fresh.say(
        "benedikt is right handed and im right handed too i have a good forehand "
        "but he has the bigger one"
    )
    assert told.startswith("Noted. Benedikt: right-handed; Marisol: right-handed.")


@pytest.mark.parametrize("said", ["what did i note about marisol", "what do i know about marisol"])
def test_who_asks_for_notes_on_one_of_us_may_be_either(fresh: Talk, said: str) -> None:
    fresh.say("we are marisol and benedikt")
    fresh.say("im right handed")
    assert "right-handed" not in fresh.say(said)
