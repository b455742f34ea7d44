"""How a name is written, told where dictation wrote it otherwise. Wordings: our own, no source."""

from __future__ import annotations

import pytest
from talk import Talk


@pytest.fixture
def heard(fresh: Talk) -> Talk:
    fresh.say("we are marisol and benedict")
    fresh.say("next: gretel hoffmann and sunniva")
    fresh.say("add both")
    return fresh


@pytest.mark.parametrize(
    "text",
    [
        "sunniva's last name is aas a a s",
        "sunnivas surname is aas",
        "ok sunniva's last name is ars spelled a a s",
        "sunnivas family name is aas not ass",
    ],
)
def test_a_surname_is_added_by_its_letters(heard: Talk, text: str) -> None:
    assert heard.say(text) == "Sunniva is now Sunniva Aas."
    assert heard.say("aas is slow").startswith("Noted. Aas: foot speed weak.")


@pytest.mark.parametrize(
    "text",
    [
        "no its benedikt with a k",
        "it's benedict with a k not a c",
        "his name is benedikt not benedict",
        "sorry its benedikt spelled with a k",
    ],
)
def test_a_name_is_written_otherwise(heard: Talk, text: str) -> None:
    assert heard.say(text) == "Benedict is now Benedikt."
    assert heard.say("we are marisol and benedikt") == "You are Marisol and Benedikt."


def test_a_surname_told_anew_takes_the_place_of_the_old(heard: Talk) -> None:
    assert heard.say("gretels last name is hofmann") == "Gretel Hoffmann is now Gretel Hofmann."
    heard.say("undo")
    assert "Gretel Hoffmann" in heard.say("who is in my book")


@pytest.mark.parametrize(
    "text",
    [
        "no its sunniva not gretel",
        "i mean benedict not marisol",
        "gretels last name is what",
        "whats sunnivas last name?",
        "its sunniva with a weak backhand",
        "sunnivas last name is hard to say",
        "gretel is slow not sunniva",
        "its a drive not a drop",
    ],
)
def test_who_is_meant_or_how_they_play_renames_nobody(heard: Talk, text: str) -> None:
    before = heard.say("who is in my book")
    heard.say(text)
    assert heard.say("who is in my book") == before
