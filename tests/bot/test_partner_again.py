"""Two partners of one player: told by event, played with again, asked for. Our own wordings."""

from __future__ import annotations

import pytest
from talk import Talk

TWO = "You are Marisol and Benedikt.\nMarisol plays with Anouk too: say “back with Anouk”."


@pytest.fixture
def marisol(fresh: Talk) -> Talk:
    fresh.user, fresh.name = "sol", "S"
    fresh.say("we are marisol and benedikt")
    fresh.say("we are marisol and anouk")
    return fresh


@pytest.mark.parametrize(
    "text",
    [
        "we are marisol and benedikt again for the final",
        "we're marisol and benedikt in mixed now",
        "we are marisol and benedikt for the next match",
        "im back with benedikt now",
        "back with benedikt",
        "ok back to benedikt for mixed",
        "i'm with benedikt again",
        "playing with benedikt in the final",
    ],
)
def test_a_partner_is_played_with_again(marisol: Talk, text: str) -> None:
    assert marisol.say(text) == "You are Marisol and Benedikt."


@pytest.mark.parametrize(
    "text",
    [
        "im with benedikt on that",
        "is it back with benedikt now?",
        "we are up for the final",
        "benedikt is back now",
        "back with anouk in the middle",
        "we are nervous for the final",
    ],
)
def test_what_names_no_pair_changes_none(marisol: Talk, text: str) -> None:
    marisol.say(text)
    assert marisol.say("who are we").startswith("You are Marisol and Anouk.")


@pytest.mark.parametrize(
    "text",
    [
        "im marisol and i play with benedikt in mixed and anouk in womens",
        "hello, i am Marisol. today i play mixed with Benedikt and womens doubles with Anouk",
        "I'm Marisol, playing mixed doubles with Benedikt and women's doubles with Anouk",
    ],
)
def test_two_partners_are_told_by_event(fresh: Talk, text: str) -> None:
    fresh.user, fresh.name = "sol", "S"
    assert fresh.say(text) == TWO
    assert fresh.say("back with anouk").startswith("You are Marisol and Anouk.")


@pytest.mark.parametrize(
    "text", ["who are we", "who am i playing with", "whos my partner", "who are my partners now"]
)
def test_who_we_are_can_be_asked(marisol: Talk, text: str) -> None:
    told = "You are Marisol and Anouk.\nMarisol plays with Benedikt too: say “back with Benedikt”."
    assert marisol.say(text) == told


def test_a_book_that_knows_nobody_asks_who_we_are(fresh: Talk) -> None:
    assert fresh.say("who are we") == "Who are you two? Write: we are Mira and Tom"


@pytest.mark.parametrize("text", ["who are we playing next", "who are we playing", "who is next"])
def test_against_whom_is_another_question(marisol: Talk, text: str) -> None:
    assert "You are" not in marisol.say(text)
