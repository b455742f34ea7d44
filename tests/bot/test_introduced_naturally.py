"""Who we are, as people introduce themselves: hands, events and how new it is beside the names."""

from __future__ import annotations

import pytest
from talk import Talk

from bot.chat.own_pair_told import one_with_partner


@pytest.mark.parametrize(
    ("text", "pair", "rest"),
    [
        (
            "my name is marisol, righty. mixed partner is pelle, lefty",
            "marisol and pelle",
            "im righty, pelle is lefty",
        ),
        (
            "im marisol (left handed), playing mixed with pelle (righty)",
            "marisol and pelle",
            "im left handed, pelle is righty",
        ),
        (
            "im marisol, playing with pelle today first tournament, bit nervous",
            "marisol and pelle",
            "bit nervous",
        ),
        ("im marisol, first time here, playing with pelle holm", "marisol and pelle holm", ""),
    ],
)
def test_names_stand_apart_from_what_is_told(text: str, pair: str, rest: str) -> None:
    assert one_with_partner(text) == (pair, rest)


@pytest.mark.parametrize(
    "text", ["im lefty, playing with pain", "im first, with you", "im tired, lefty with power"]
)
def test_who_tells_how_they_are_names_nobody(text: str) -> None:
    assert one_with_partner(text) is None


def test_the_partner_of_another_event_is_told_beside_the_pair(fresh: Talk) -> None:
    fresh.say("my name is marisol, righty. mixed partner is pelle, lefty")
    told = fresh.say("and womens with anouk holm, lefty")
    assert told.startswith("You are Marisol and Pelle.\nMarisol plays with Anouk too")
    assert "Anouk: left-handed" in told
    for text in (
        "im with pelle today first",
        "im marisol",
        "who are we then",
        "who are we again lol",
    ):
        assert fresh.say(text).startswith("You are Marisol and Pelle.")
    assert not fresh.say("im gassed").startswith("You are")


def test_who_writes_is_nobody_to_watch_or_to_play(fresh: Talk) -> None:
    told = fresh.say("hi this is Marja I am watching two sisters Ines Roe and Elin Roe")
    assert told == "No Ines Roe and Elin Roe in your book yet."
    opens = "yo its teo me n marco got doubles today first match 9:20"
    assert fresh.say(f"{opens} vs lena jansen and ruud vos").endswith(
        "No lena jansen and ruud vos in your book yet."
    )
