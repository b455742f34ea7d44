"""A typed name that is another person's is never taken for somebody on the roster in silence."""

from __future__ import annotations

from collections.abc import Sequence

import pytest
from rosters import roster_of

from scouting_db.known_names import Known, known_first_name, known_surname
from scouting_db.names import Alike, Found, Nobody, lookup
from scouting_db.short_names import is_short_for
from scouting_db.sounds import spoken


def asked(typed: str, names: Sequence[str]) -> set[str]:
    match = lookup(typed, roster_of(*names))
    assert isinstance(match, Alike), match
    return {row.name for row in match.players}


def found(typed: str, names: Sequence[str]) -> str:
    match = lookup(typed, roster_of(*names))
    assert isinstance(match, Found), match
    return match.player.name


@pytest.mark.parametrize(
    ("typed", "known"),
    [
        ("walter", "Nils Walden"),
        ("hooper", "Tess Hopper"),
        ("burke", "Ian Barker"),
        ("weston", "Ola Westen"),
        ("parker", "Ilse Park"),
        ("stella", "Bo Steller"),
        ("brett gordon", "Brett Jordan"),
        ("nina carlson", "Nina Carlton"),
        ("vera moss", "Vera Voss"),
        ("joan birch", "Jean Birch"),
        ("martin dahl", "Marta Dahl"),
    ],
)
def test_another_real_name_is_another_person(typed: str, known: str) -> None:
    assert isinstance(lookup(typed, roster_of(known)), Nobody)


@pytest.mark.parametrize(
    ("typed", "known"),
    [
        ("reade", "Tove Reid"),
        ("clarke", "Uma Clark"),
        ("hooperr", "Tess Hooper"),
        ("galagher", "Rory Gallagher"),
        ("pomfrett", "Ida Pomfret"),
        ("nina carltn", "Nina Carlton"),
        ("mueler", "Jost Müller"),
        ("schroeder", "Anke Schröder"),
        ("pavlovich", "Mila Pavlovič"),
        ("vera wooods", "Vera Woods"),
        ("tim hawkin", "Tim Hawkins"),
    ],
)
def test_a_slip_or_another_spelling_is_the_same_person(typed: str, known: str) -> None:
    assert found(typed, [known, "Joost van der Meer"]) == known


def test_the_near_one_is_offered_where_another_name_was_typed() -> None:
    match = lookup("hooper", roster_of("Tess Hopper", "Ben Hale"))
    assert isinstance(match, Nobody)
    assert [row.name for row in match.nearest][:1] == ["Tess Hopper"]


@pytest.mark.parametrize(
    ("typed", "names"),
    [
        ("chris", ["Chris Doyle", "Christopher Nagy"]),
        ("leo b", ["Leo Brask", "Leon Bauer"]),
        ("gwen", ["Nora Gwen", "Gwenn Adair"]),
        ("stu", ["Stuart Pell", "Stuartina Moe"]),
        ("tilda frost", ["Tilda Frostad", "Mark Frost"]),
        ("frost tilda", ["Tilda Frostad", "Mark Frost"]),
        ("robin lee", ["Lee Robin", "Robyn Lee"]),
        ("mcd", ["Ann McDowell", "Ian McDonagh"]),
        ("rob", ["Robert Kerr", "Robina Salt"]),
    ],
)
def test_who_fits_nearly_as_well_is_asked_about(typed: str, names: Sequence[str]) -> None:
    assert asked(typed, names) == set(names)


def test_a_first_name_as_typed_is_likelier_than_one_that_sounds_like_it() -> None:
    match = lookup("nora", roster_of("Nora Fell", "Norah Quist"))
    assert isinstance(match, Alike)
    assert match.likeliest is not None
    assert match.likeliest.name == "Nora Fell"


def test_a_first_name_of_one_and_a_surname_of_another_is_nobody_unless_it_comes_near() -> None:
    assert isinstance(lookup("megan frost", roster_of("Megan Ode", "Mark Frost")), Nobody)


def test_a_common_surname_is_no_beginning_of_a_longer_one() -> None:
    assert isinstance(lookup("hollist", roster_of("Tim Hollister")), Found)
    assert isinstance(lookup("hollis", roster_of("Tim Hollister")), Nobody)


@pytest.mark.parametrize(
    ("typed", "known"),
    [("bob", "Robert Kerr"), ("ellie", "Eleanor Voss"), ("toby kerr", "Tobias Kerr")],
)
def test_a_short_form_names_its_bearer(typed: str, known: str) -> None:
    assert found(typed, [known, "Sven Dahl"]) == known


def test_mary_is_not_short_for_marcus() -> None:
    assert is_short_for("gary", "gareth")
    assert not is_short_for("mary", "marcus")


def test_a_letter_held_down_is_one_letter() -> None:
    assert found("kerrrr", ["Robert Ker", "Sven Dahl"]) == "Robert Ker"


@pytest.mark.parametrize(
    ("one", "other"),
    [("oaks", "oakes"), ("mayes", "mays"), ("daley", "daly"), ("volkov", "volkoff")],
)
def test_names_said_alike(one: str, other: str) -> None:
    assert spoken(one) == spoken(other)


@pytest.mark.parametrize(("one", "other"), [("boyd", "loyd"), ("smit", "smid"), ("vane", "fane")])
def test_names_said_otherwise(one: str, other: str) -> None:
    assert spoken(one) != spoken(other)


def test_names_commonly_borne_are_known() -> None:
    assert known_first_name("mary") is Known.COMMONLY
    assert known_first_name("zzyzx") is Known.NO
    assert known_surname("smith") is Known.COMMONLY
    assert known_surname("galagher") is Known.RARELY
    assert known_surname("galaghr") is Known.NO
    assert known_surname("") is Known.NO
