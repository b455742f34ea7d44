"""Somebody not in the book, named in small letters: never taken for a known player."""

from __future__ import annotations

import pytest
from voices import IN_TALK, PEOPLE

from bot.chat.message import read_message
from bot.chat.said import Certainty, NoteSaid, Question
from bot.chat.understand import understand


def _named(text: str) -> tuple[list[str], list[str]]:
    """The strangers and the known people of the last thing that a message says."""
    said = understand(text, chat=IN_TALK)[-1]
    assert isinstance(said, NoteSaid | Question)
    mentions = said.mentions if isinstance(said, NoteSaid) else said.slots.mentions
    strangers = [one.typed for one in mentions if one.certainty is Certainty.NOBODY]
    sure = [one for one in mentions if one.certainty is Certainty.SURE and not one.pronoun]
    return strangers, [PEOPLE[one.players[0] - 1] for one in sure]


@pytest.mark.parametrize(
    ("text", "strangers"),
    [
        ("okafor slow, kerr erne happy", ["kerr"]),
        ("kerr erne happy, okafor slow", ["kerr"]),
        ("kerr lefty, tran 2h bh", ["kerr", "tran"]),
        ("okafor lobs a lot / diaz pops up bh dinks", ["diaz"]),
        ("hailey erne happy but okafor never", ["hailey"]),
        ("okafor is the big hitter rashid is steady, hates the lob", ["rashid"]),
        ("okafor bangs everything denise hates the lob", ["denise"]),
    ],
)
def test_what_is_told_of_a_stranger_is_not_the_known_players(
    text: str, strangers: list[str]
) -> None:
    assert _named(text)[0] == strangers


@pytest.mark.parametrize(
    ("text", "strangers"),
    [
        ("where i srv kerr", ["kerr"]),
        ("where do i serve tran", ["tran"]),
        ("dink tran where", ["tran"]),
        ("speed up kerr where", ["kerr"]),
        ("where do we speed up on diaz", ["diaz"]),
        ("who do i target, tran or kerr", ["tran", "kerr"]),
    ],
)
def test_a_question_about_a_stranger_is_about_nobody_else(text: str, strangers: list[str]) -> None:
    assert _named(text) == (strangers, [])


@pytest.mark.parametrize(
    "text",
    [
        "okafor slow, polite on calls",
        "okafor bangs from the backcourt is slow",
        "okafor lobs a lot grace is needed",
        "okafor slow, she'll lob all day",
        "okafor slow, crushes forehands",
        "okafor lefty, plain backhand",
        "where do i dink wide",
        "attack or bail",
        "serve deep where",
        "dink okafor where",
        "who do i lob, okafor or hale",
        "stay on okafor or dodge it",
        "serve okafor or wait",
        "dink okafor or body",
        "speed up now or settle",
    ],
)
def test_words_that_people_bear_too_name_nobody(text: str) -> None:
    said = understand(text, chat=IN_TALK)[-1]
    if isinstance(said, NoteSaid | Question):
        assert _named(text)[0] == []


@pytest.mark.parametrize("text", ["lindqvist in a cast last mo", "hale had a cast on"])
def test_a_thing_behind_its_article_is_nobody_cut_short(text: str) -> None:
    message = read_message(text, IN_TALK)
    assert [PEOPLE[one.players[0] - 1] for one in message.mentions if "cast" in one.typed] == []


@pytest.mark.parametrize("text", ["cast lobs a lot", "a lindq lob, what now", "is that a hale lob"])
def test_somebody_cut_short_is_still_named(text: str) -> None:
    assert len(read_message(text, IN_TALK).mentions) == 1


@pytest.mark.parametrize("text", ["who do we target okafor or tran", "serve okafor or kerr"])
def test_a_stranger_who_may_be_meant_as_well_is_heard(text: str) -> None:
    strangers, known = _named(text)
    assert (len(strangers), known) == (1, ["Chidi Okafor"])


@pytest.mark.parametrize("text", ["lindqvist in a cast", "okafor wears a sling"])
def test_who_is_hurt_is_told_of_and_asks_for_no_report(text: str) -> None:
    (said,) = understand(text, chat=IN_TALK)
    assert isinstance(said, NoteSaid)
