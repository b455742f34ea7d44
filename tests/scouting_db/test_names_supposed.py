"""Whom a name that is nobody's as it stands is taken for: seldom wrong, and never unsaid."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from name_examples import digest, sources
from name_figures import left_out, own_writers, total
from rosters import roster_of

from scouting_db.name_chances import chances, name_weights
from scouting_db.name_pairing import As, pairing
from scouting_db.name_supposed import SMALL_ROSTER
from scouting_db.name_thumbs import thumb_cost
from scouting_db.names import Match, NameIndex, Nobody

PEOPLE = ("Chidi Okafor", "Ana Ruiz", "Ben Hale", "Lotte Brandt", "Yuki Shimizu", "Sven Lindqvist")

RIGHT_FLOOR, WRONG_CEILING = 0.91, 0.08
"""As recorded on writers left out, half of them at a time: told right of all look-ups, of which the
rules alone tell 83.8%; and wrong of those supposed."""


def supposed(typed: str, *names: str) -> set[str]:
    match: Match = NameIndex(roster_of(*(names or PEOPLE))).lookup(typed)
    assert isinstance(match, Nobody), match
    return {row.name for row in match.supposed}


def test_weights_were_learned_from_these_lines() -> None:
    """After a change of them: python tests/train/train_names.py."""
    assert name_weights().recipe["lines"] == digest()
    assert name_weights().recipe["writers"] == len(sources())


def test_writers_left_out_are_told_right_and_seldom_taken_for_others() -> None:
    told = total(list(left_out(own_writers(), groups=2).values()))
    assert told.right >= RIGHT_FLOOR * told.lookups
    assert told.supposed_wrong <= WRONG_CEILING * told.supposed


@pytest.mark.parametrize(
    ("typed", "name"),
    [
        ("oakfpr", "Chidi Okafor"),
        ("lindkivst", "Sven Lindqvist"),
        ("linsqvisr", "Sven Lindqvist"),
        ("joeki sjimizoe", "Yuki Shimizu"),
        ("shinizy", "Yuki Shimizu"),
        ("ben haal", "Ben Hale"),
    ],
)
def test_badly_misspelt(typed: str, name: str) -> None:
    assert supposed(typed) == {name}


@pytest.mark.parametrize(
    "typed", ["Marisol Vega", "hutchinson", "Ana Morales", "Piet", "xq", "9", "", "Chidi Ferreira"]
)
def test_strangers_stay_strangers(typed: str) -> None:
    assert supposed(typed) == set()


def test_brothers_are_asked_about() -> None:
    brothers = {"Callum Drysdale", "Ffion Drysdale"}
    assert supposed("dryadalr", *brothers, "Zeynep Karaduman", "Ana Ruiz") == brothers


def test_a_longer_roster_needs_more() -> None:
    name = [("Chidi Okafor", ())]
    few, many = (chances(["oakfpr"], name, of=of)[0] for of in (10, 200))
    assert many < few


def test_nobody_is_supposed_on_a_very_long_roster() -> None:
    names = [f"Bo {'abcdefghij'[at % 10]}{'klmnopqrst'[at // 10 % 10]}x{at}" for at in range(2_100)]
    assert len(names) > SMALL_ROSTER
    assert supposed("oakfpr", "Chidi Okafor", *names) == set()


def test_a_part_to_the_letter_leaves_the_rest_to_the_other() -> None:
    pair = pairing(["ana", "roohiz"], "Ana Ruiz")
    assert (pair.taken_as, pair.given) == (As.BOTH, ("ana", "ana"))


@pytest.mark.parametrize(
    ("typed", "name", "cost"),
    [
        ("hale", "hale", 0.0),
        ("hsle", "hale", 0.5),  # a beside s
        ("hlae", "hale", 0.5),  # swapped
        ("halle", "hale", 0.5),  # doubled
        ("hle", "hale", 0.6),  # a vowel left out
        ("hace", "hale", 1.0),  # c is far from l
        ("", "hale", 3.2),  # two consonants and two vowels
    ],
)
def test_what_slips_of_the_thumb_cost(typed: str, name: str, cost: float) -> None:
    assert thumb_cost(typed, name) == pytest.approx(cost)


@given(st.text(alphabet="abcdefghijklmnopqrstuvwxyz", max_size=12))
def test_a_word_costs_nothing_beside_itself_and_never_more_than_all_its_letters(word: str) -> None:
    assert thumb_cost(word, word) == 0
    assert 0 <= thumb_cost(word, "okafor") <= len(word) + len("okafor")


@given(st.text(max_size=60))
def test_any_text_supposes_at_most_players_of_the_roster(text: str) -> None:
    match = NameIndex(roster_of(*PEOPLE)).lookup(text)
    if isinstance(match, Nobody):
        assert {row.name for row in match.supposed} <= set(PEOPLE)
        assert match.nearest[: len(match.supposed)] == match.supposed


NAMES = st.text(alphabet="abo -'(é🙂", max_size=8) | st.sampled_from(("Mori", "Kenji Mori", "Jo"))


@given(NAMES, st.lists(NAMES, max_size=4), st.sampled_from(("mori kenji", "jo b", "abba oba")))
def test_any_roster_is_compared(name: str, others: list[str], typed: str) -> None:
    assert isinstance(NameIndex(roster_of(name, *others)).lookup(typed), Match)
    found = chances(typed.split(), [(one, ()) for one in (name, *others)], of=5)
    assert all(0 <= one <= 1 for one in found)
