"""Somebody with several partners: each pair is come back to in a word, and asked for."""

from __future__ import annotations

import pytest
from talk import Talk


@pytest.fixture
def two_pairs(fresh: Talk) -> Talk:
    fresh.say("we are marisol and benedikt")
    fresh.say("we are marisol and anouk")
    return fresh


@pytest.mark.parametrize(
    "said",
    [
        "we are marisol and benedikt again for the final",
        "im back with benedikt now",
        "back with benedikt for the mixed final",
        "were marisol and benedikt now",
        "its marisol and benedikt again",
        "playing with benedikt again",
        "ok mixed again with benedikt",
    ],
)
def test_the_first_partner_is_come_back_to(two_pairs: Talk, said: str) -> None:
    answered = two_pairs.say(said)
    assert "Marisol and Benedikt." in answered
    assert two_pairs.say("who are we").startswith("You are Marisol and Benedikt.")
    assert not two_pairs.notes()


@pytest.mark.parametrize(
    "asked",
    ["who are we", "who am i playing with?", "who are my partners", "whos my partner now",
     "ok who am i partnered with", "who do you have us as"],
)  # fmt: skip
def test_who_we_are_is_told_with_the_other_pair(two_pairs: Talk, asked: str) -> None:
    before = two_pairs.stored()
    assert two_pairs.say(asked).splitlines() == [
        "You are Marisol and Anouk.",
        "To change, send: we are Marisol and Benedikt",
    ]
    assert two_pairs.stored() == before


def test_nobody_known_is_asked_for(fresh: Talk) -> None:
    assert fresh.say("who are we") == "Who are you two? Write: we are Mira and Tom"


@pytest.mark.parametrize(
    "said",
    [
        "benedikt is back now",
        "we are back with benedikt at the net",
        "who am i playing next",
        "who should we target now",
        "should i play with benedikt again?",
        "benedikt lobs again and again",
    ],
)
def test_what_tells_or_asks_more_changes_no_pair(two_pairs: Talk, said: str) -> None:
    assert "Marisol and Benedikt." not in two_pairs.say(said)
    assert two_pairs.say("who are we").startswith("You are Marisol and Anouk.")


@pytest.mark.parametrize(
    "said",
    [
        "hi im marisol i play mixed with benedikt and womens with anouk",
        "hi im marisol, i play mixed with benedikt and womens doubles with anouk",
    ],
)
def test_a_partner_in_each_event_is_kept_as_one(fresh: Talk, said: str) -> None:
    assert fresh.say(said).splitlines()[:2] == [
        "You are Marisol and Benedikt.",
        "To change, send: we are Marisol and Anouk",
    ]
    assert not fresh.notes()
    fresh.say("we are marisol and anouk")
    assert fresh.say("back with benedikt now") == "You are Marisol and Benedikt."


def test_a_second_partner_whose_name_is_not_read_is_asked_for(fresh: Talk) -> None:
    said = "hi im marisol i play mixed with benedict and womens with a nook"
    assert fresh.say(said).splitlines()[1].startswith("And with whom else?")
    assert not fresh.notes()
