"""Matches told with our partner in them, or with fillers, as people talk. Our own wordings."""

from __future__ import annotations

import pytest
from talk import Talk


@pytest.fixture
def marisol(fresh: Talk) -> Talk:
    fresh.user, fresh.name = "sol", "S"
    fresh.say("we are marisol and anouk")
    fresh.say("we are marisol and benedikt")
    return fresh


@pytest.mark.parametrize(
    "text",
    [
        "so our first match is at nine forty on court three against um whats her name "
        "philippa langford and a guy called dez okoro i think",
        "next is mixed with benedikt against philippa langford and dez okoro nine forty "
        "court three",
        "next mixed final with benedikt vs philippa langford and dez okoro, 9:40, court 3",
        "Our next match, with Benedikt against Philippa Langford and Dez Okoro at 9:40, court 3",
        "next up at 9:40 on court 3 against uh some woman named philippa langford and dez okoro",
    ],
)
def test_both_are_added_with_time_and_court(marisol: Talk, text: str) -> None:
    assert "hilippa" in marisol.say(text)
    told = marisol.say("add both")
    assert told.startswith("Next: Philippa Langford and Dez Okoro, 09:40, court 3, best of 3")
    assert marisol.say("who are we").startswith("You are Marisol and Benedikt.")


@pytest.mark.parametrize(
    "text",
    [
        "ok next is womens with anouk against gretel hoffmann and sunniva aas 2:30 court five",
        "next match with anouk vs gretel hoffmann and sunniva aas at half past two, court 5",
    ],
)
def test_the_partner_named_in_it_plays_with_us_from_now_on(marisol: Talk, text: str) -> None:
    assert marisol.say(text).startswith("You are Marisol and Anouk.")
    told = marisol.say("add both")
    assert told.startswith("Next: Gretel Hoffmann and Sunniva Aas, 14:30, court 5")


def test_whom_we_are_with_is_never_one_of_two_opponents(marisol: Talk) -> None:
    pair = "gretel hoffmann and sunniva aas"
    told = marisol.say(f"womens doubles with anouk now, 12:15, court 3, against {pair}")
    assert told.startswith("You are Marisol and Anouk.")
    told = marisol.say("add both")
    assert told.startswith("Next: Gretel Hoffmann and Sunniva Aas, 12:15, court 3,")
    told = marisol.say(f"back with benedikt, same opponents {pair} at 16:20")
    assert told.startswith("You are Marisol and Benedikt.")
    assert "Next: Gretel Hoffmann and Sunniva Aas, 16:20," in told


@pytest.mark.parametrize(
    "text",
    [
        "how do i play next match with benedikt against gretel hoffmann and sunniva aas",
        "what do we change in the next game with anouk against gretel and sunniva?",
        "i think gretel hoffmann lobs against everyone",
        "um gretel hoffmann is slow i think",
        "benedikt is good with anouk against lefties",
    ],
)
def test_questions_and_notes_announce_nothing(marisol: Talk, text: str) -> None:
    marisol.say(text)
    assert marisol.say("when do we play").startswith("No match is on.")
    assert marisol.say("who are we").startswith("You are Marisol and Benedikt.")


@pytest.mark.parametrize(
    "text", ["match moved to one forty five", "our game is pushed back to 1:45", "moved to 13:45"]
)
def test_what_moves_where_nothing_is_announced_is_asked(marisol: Talk, text: str) -> None:
    assert marisol.say(text) == "Which match? Say: next: NAME and NAME, 13:45"
    assert marisol.say("when do we play").startswith("No match is on.")
