"""Notes in free text: claims with their spans, and the words that no claim covers."""

from __future__ import annotations

import tomllib
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from voices import EVENING, IN_TALK, PEOPLE

from bot.chat.said import Claim
from bot.chat.trait_lexicon import LexiconError, Role, Sense, sense_of_entry, traits_data
from bot.chat.understand import understand_note
from knowledge.vocabulary import TRAITS, PlayerId, Seen, Tag, Trait

CASES = tomllib.loads((Path(__file__).parent.parent / "cases" / "notes.toml").read_text("utf-8"))[
    "note"
]


def told(claim: Claim) -> str:
    name = PEOPLE[claim.player - 1].removesuffix(" (Bones)")
    short = name if name.startswith("Joost") else name.split()[-1]
    denied = " denied" if claim.denied else ""
    return f"{short}: {claim.trait} {claim.value}{denied}"


@pytest.mark.parametrize("case", CASES, ids=lambda case: case["text"])
def test_case(case: dict[str, Any]) -> None:
    said = understand_note(case["text"], chat=EVENING)
    assert sorted(map(told, said.claims)) == sorted(case["claims"])
    if "weight" in case:
        assert [claim.weight for claim in said.claims] == [pytest.approx(case["weight"])]
    if "tag" in case:
        assert [claim.tag for claim in said.claims] == [case["tag"]]
    if "kept" in case:
        assert list(said.kept) == case["kept"]
    assert said.seen == case.get("seen", Seen.LIVE)


@pytest.mark.parametrize(
    ("text", "tags", "kept"),
    [
        ("hale righty, drives when pulled wide", {None}, ("drives when pulled wide",)),
        ("lefty ruiz lobs when pulled wide", {None, Tag.PULLED_WIDE}, ()),
        ("hale is slow, when pulled wide", {Tag.PULLED_WIDE}, ()),
    ],
)
def test_a_hand_holds_at_all_times(text: str, tags: set[Tag | None], kept: tuple[str, ...]) -> None:
    said = understand_note(text, chat=IN_TALK)
    assert {claim.tag for claim in said.claims} == tags
    assert {claim.tag for claim in said.claims if claim.trait is Trait.HAND} <= {None}
    assert said.kept == kept


NOTE_WORDS = st.lists(
    st.sampled_from(
        [
            "okafor",
            "hale",
            "weak",
            "backhand",
            "dink",
            "serve",
            "not",
            "and",
            "but",
            "slow",
            "lobs",
            "poaches",
            "never",
            ",",
            ".",
            "lefty",
            "is",
            "a",
        ]
    ),
    max_size=14,
    unique=True,
)


@given(NOTE_WORDS)
def test_claims_fit_the_vocabulary_and_point_at_words(words: list[str]) -> None:
    text = " ".join(words)
    said = understand_note(text, chat=EVENING)
    assert said.text == text
    for claim in said.claims:
        assert claim.value in TRAITS[claim.trait].values
        assert text[slice(*claim.span)].strip()
        assert claim.weight > 0
    assert all(kept in text for kept in said.kept)


@given(NOTE_WORDS)
def test_kept_words_are_in_no_claim(words: list[str]) -> None:
    text = " ".join(words)
    said = understand_note(text, chat=EVENING)
    claimed = [text[slice(*claim.span)] for claim in said.claims]
    assert not any(kept == span for kept in said.kept for span in claimed)


def test_an_unsettled_name_gets_no_claims_before_it_is_settled() -> None:
    said = understand_note("note Petrov: lefty, lobs", chat=EVENING)
    assert said.claims == ()
    assert [one.typed for one in said.mentions] == ["Petrov"]


def test_nobody_named_means_the_one_player_spoken_of() -> None:
    hale = PlayerId(6)
    said = understand_note("lefty", chat=replace(EVENING, focus=(hale,)))
    assert [(claim.player, claim.trait) for claim in said.claims] == [(hale, Trait.HAND)]
    assert understand_note("lefty", chat=EVENING).claims == ()


def test_a_forwarded_note_is_hearsay() -> None:
    said = understand_note("Hale is a lefty", chat=replace(EVENING, forwarded=True))
    assert said.seen is Seen.HEARSAY


@pytest.mark.parametrize(
    ("text", "about_body"),
    [
        ("Hale had knee surgery", True),
        ("Hale is pregnant", True),
        ("Hale bad left ankle", True),
        ("Hale is tired and nervous", False),
        ("Hale is bad with balls at the body", False),
        ("Hale weak at the right hip", False),
    ],
)
def test_bodies_are_told_from_play(text: str, about_body: bool) -> None:
    assert understand_note(text, chat=EVENING).about_body is about_body


def test_the_command_word_is_no_part_of_the_note() -> None:
    text = "/note okafor lefty"
    said = understand_note(text, chat=EVENING)
    assert said.text == text
    (claim,) = said.claims
    assert text[slice(*claim.span)] == "lefty"


def test_every_trait_can_be_noted() -> None:
    data, naming = traits_data(), (Role.DIRECT, Role.NOUN, Role.HABIT)
    direct = {sense_of_entry(role, entry).trait for role in naming for entry in data[role]} - {None}
    by_wing = {trait for trait in Trait if trait.startswith(("forehand", "backhand", "counter"))}
    assert direct | by_wing == set(Trait)


def test_a_value_that_a_trait_does_not_take_is_refused_at_load() -> None:
    with pytest.raises(LexiconError, match="hand takes"):
        sense_of_entry(Role.DIRECT, {"trait": "hand", "value": "often"})
    assert sense_of_entry(Role.DIRECT, {"trait": "hand", "value": "left"}) == Sense(
        role=Role.DIRECT, trait=Trait.HAND, value=TRAITS[Trait.HAND].values[0]
    )


@pytest.mark.parametrize(
    "text",
    [
        "they stack. both hale and brandt every point",
        "They don't speak to each other, Hale and Brandt, not a word",
    ],
)
def test_they_before_several_names_is_nobody_spoken_of_before(text: str) -> None:
    claims = understand_note(text, chat=IN_TALK).claims
    assert {one.player for one in claims} == {6, 7}
