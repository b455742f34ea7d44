"""Whom a note is about when a name is corrected in it, or comes after its pronoun."""

from __future__ import annotations

from dataclasses import replace

import pytest
from talk import Talk
from voices import EVENING, IN_TALK, PEOPLE

from bot.chat.message import read_message, weighed_note
from bot.chat.understand import understand_note
from knowledge.vocabulary import PlayerId

AFTER_OKAFOR = replace(EVENING, focus=(PlayerId(3),))


def told_of(text: str) -> set[str]:
    claims = understand_note(text, chat=AFTER_OKAFOR).claims
    return {PEOPLE[one.player - 1].split(" (")[0].split()[-1] for one in claims}


@pytest.mark.parametrize(
    ("text", "who"),
    [
        ("hale is a lefty, scratch that, it was lindqvist", "Lindqvist"),
        ("ruiz backhand dink is weak - scratch that, was castellano", "Castellano"),
        ("brandt poaches a lot. sorry i mean ruiz", "Ruiz"),
        ("hale lobs all day no wait that was brandt", "Brandt"),
        ("weak overhead, hale. correction: castellano", "Castellano"),
        ("lindqvist is slow, my mistake, ruiz not him", "Ruiz"),
    ],
)
def test_a_name_put_right_is_whose_note_it_is(text: str, who: str) -> None:
    assert told_of(text) == {who}


@pytest.mark.parametrize(
    ("text", "who"),
    [
        ("his backhand dink is weak, hale i mean", {"Hale"}),
        ("he is a lefty, that lindqvist", {"Lindqvist"}),
        ("he is a lefty", {"Okafor"}),
        ("hale is a lefty and he poaches a lot", {"Hale"}),
    ],
)
def test_a_pronoun_before_the_only_name_is_that_name_s(text: str, who: set[str]) -> None:
    assert told_of(text) == who


@pytest.mark.parametrize(
    "text",
    [
        "hale is slow, i mean really slow, and brandt poaches a lot",
        "hale is a lefty and sorry to say brandt poaches a lot",
        "ruiz is quick, not him, hale is slow",
    ],
)
def test_two_told_of_are_no_correction(text: str) -> None:
    assert len(told_of(text)) == 2


@pytest.mark.parametrize(
    "text",
    [
        "okafor hates lobs, sorry lindqvist hates lobs",
        "okafor hates lobs, no wait lindqvist hates lobs",
        "okafor hates lobs. i mean lindqvist hates lobs",
        "okafor hates lobs, sorry lindqvist",
        "okafor hates lobs oops lindqvist does",
    ],
)
def test_a_slip_of_the_name_counts_for_the_right_one_alone(demo: Talk, text: str) -> None:
    assert demo.say(text).startswith("Noted. Lindqvist: lob defence weak.")
    assert ("lob_defense", "weakness", False) not in demo.claims("Okafor")


def test_what_is_true_of_the_second_too_takes_nothing_back(demo: Talk) -> None:
    answered = demo.say("okafor is slow. sorry lindqvist is slow too")
    assert "Okafor: foot speed weak; Lindqvist: foot speed weak." in answered


@pytest.mark.parametrize(
    "text", ["actually both", "both of them", "they both do", "no, both", "both do actually"]
)
def test_a_note_that_is_true_of_both_is_noted_of_both(demo: Talk, text: str) -> None:
    demo.say("okafor is slow")
    answered = demo.say(text)
    assert answered == "Changed. Okafor: foot speed weak; Lindqvist: foot speed weak."
    demo.tap("undo")
    assert ("foot_speed", "weakness", False) not in demo.claims("Lindqvist")


def test_both_are_the_two_that_the_note_names(fresh: Talk) -> None:
    fresh.say("we are mira and tom")
    fresh.say("pool: oduya/halvorsen, dov/marisela")
    fresh.say("marisela hates lobs, sorry dov hates lobs")
    answered = fresh.say("actually both")
    assert answered == "Changed. Dov: lob defence weak; Marisela: lob defence weak."


@pytest.mark.parametrize(
    ("text", "player", "claim"),
    [
        ("okafor wait no lindqvist is a lefty", "Sven Lindqvist", ("hand", "left")),
        (
            "hang on okafor no lindqvist has the weak bh",
            "Sven Lindqvist",
            ("backhand_dink", "weakness"),
        ),
        ("okafor no wait hale is tall", "Ben Hale (Bones)", ("height", "tall")),
        ("ok so hale i mean lindqvist poaches a lot", "Sven Lindqvist", ("poaching", "often")),
        ("okafor, sorry, lindqvist lobs a lot", "Sven Lindqvist", ("lob", "often")),
    ],
)
def test_the_no_that_takes_a_name_back_denies_nothing(
    text: str, player: str, claim: tuple[str, str]
) -> None:
    note = weighed_note(read_message(text, IN_TALK), IN_TALK)
    told = [(PEOPLE[one.player - 1], str(one.trait), str(one.value)) for one in note.claims]
    assert told == [(player, *claim)]
    assert not any(one.denied for one in note.claims)


@pytest.mark.parametrize(
    "text", ["okafor no lob, lindqvist no drop", "okafor no, lindqvist yes poaches"]
)
def test_a_no_that_answers_takes_no_name_back(text: str) -> None:
    note = weighed_note(read_message(text, IN_TALK), IN_TALK)
    assert {PEOPLE[one.player - 1] for one in note.claims} == {"Chidi Okafor", "Sven Lindqvist"}
