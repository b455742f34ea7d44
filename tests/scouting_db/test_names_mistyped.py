"""Names as thumbs, short memories and dictation spell them. Common practice, no source."""

from __future__ import annotations

import random

import pytest
from rosters import roster_of

from scouting_db.name_slips import are_neighbours, is_slip, lacks_vowels
from scouting_db.names import Alike, Found, NameIndex, Nobody, lookup

PEOPLE = (
    "Tobias Hale",
    "Renske Vos",
    "Leif Norling",
    "Marek Sobol",
    "Ruth Madsen",
    "Ulrich Baumgartner",
    "Siobhán O'Keeffe",
    "Jean-Luc Perrault",
    "Magnus Østergaard (Moose)",
    "Xavier Quiroga",
    "Zofia Jabłońska",
    "Pat Mulcahy",
    "Dmitri Volkov",
)


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ("halr", "Tobias Hale"),
        ("jale", "Tobias Hale"),
        ("hle", "Tobias Hale"),
        ("morling", "Leif Norling"),
        ("orling", "Leif Norling"),
        ("aobol", "Marek Sobol"),
        ("rith", "Ruth Madsen"),
        ("ruth madson", "Ruth Madsen"),
        ("bmgrtnr", "Ulrich Baumgartner"),
        ("vlkv", "Dmitri Volkov"),
        ("qrga", "Xavier Quiroga"),
        ("demetri", "Dmitri Volkov"),
        ("havier", "Xavier Quiroga"),
        ("v0lkov", "Dmitri Volkov"),
        ("0stergaard", "Magnus Østergaard (Moose)"),
        ("moose ostergaard", "Magnus Østergaard (Moose)"),
        ("Magnus 'Moose' Østergaard", "Magnus Østergaard (Moose)"),
        ("jl perrault", "Jean-Luc Perrault"),
        ("perrault jl", "Jean-Luc Perrault"),
        ("keeffe", "Siobhán O'Keeffe"),
        ("sok", "Siobhán O'Keeffe"),
        ("toby", "Tobias Hale"),
        ("that tall sobol", "Marek Sobol"),
        ("P Mulcahy Jr", "Pat Mulcahy"),
        ("Hale, the one with the cap", "Tobias Hale"),
        ("ya blond ska", "Zofia Jabłońska"),
        ("key rogue a", "Xavier Quiroga"),
    ],
)
def test_is_found(typed: str, meant: str) -> None:
    match = lookup(typed, roster_of(*PEOPLE))
    assert isinstance(match, Found), match
    assert match.player.name == meant


@pytest.mark.parametrize(
    "typed",
    [
        "gale",  # a surname of its own, one key from Hale
        "tobol",  # "t" and "s" are no neighbours
        "mark",
        "volkova",
        "ale",
        "Hale, Peter",
        "tall order",
        "out of nowhere",
        "hale or somebody",
    ],
)
def test_is_nobody(typed: str) -> None:
    assert isinstance(lookup(typed, roster_of(*PEOPLE)), Nobody)


@pytest.mark.parametrize(
    ("typed", "names", "likeliest"),
    [
        ("larsen", ("Erik Larsen", "Erika Larsson"), "Erik Larsen"),
        ("reeve", ("Jonathan Reeve", "John Reeves"), "Jonathan Reeve"),
        ("stef", ("Stefan Vogel", "Stephanie Vogler"), "Stefan Vogel"),
        ("jose p", ("José Pinto", "Josephine Paal"), "José Pinto"),
        ("mads or leif", ("Mads Ørum", "Leif Norling"), None),
        ("fi", ("Fiona Black", "Finn Bray"), None),
    ],
)
def test_is_asked_about(typed: str, names: tuple[str, ...], likeliest: str | None) -> None:
    match = lookup(typed, roster_of(*names, "Ola Kvam"))
    assert isinstance(match, Alike), match
    assert {row.name for row in match.players} == set(names)
    assert (match.likeliest and match.likeliest.name) == likeliest


@pytest.mark.parametrize("typed", ["halr", "hlae", "halle", "hle", "gale"])
def test_slips_of_the_thumb(typed: str) -> None:
    assert is_slip(typed, "hale")


def test_keys_beside_one_another() -> None:
    assert are_neighbours("h", "g")
    assert are_neighbours("a", "q")
    assert not are_neighbours("s", "p")
    assert not are_neighbours("é", "e")


def test_what_is_no_slip() -> None:
    assert not is_slip("haxe", "hale")
    assert not is_slip("volkova", "volkov")
    assert not is_slip("ale", "hale")
    assert not is_slip("hale", "hale")


def test_vowels_left_out() -> None:
    assert lacks_vowels("bmgrtnr", "baumgartner")
    assert not lacks_vowels("bmgrtn", "baumgartner")
    assert not lacks_vowels("hl", "hale")


def test_a_slip_is_found_among_many_names_of_its_consonants() -> None:
    """More keys than are looked at closely: the nearest of them must be among those that are."""
    rng = random.Random(3)
    vowels = "aeiou"
    others = {
        "n" + "".join(rng.choice(vowels) + letter for letter in ("r", "l", "n", "t"))
        for _ in range(400)
    }
    names = ["Leif Narolonit", *(f"Bo {name.title()}" for name in sorted(others))]
    match = NameIndex(roster_of(*names)).lookup("narolonitt")
    assert isinstance(match, Found | Alike)
    found = match.player if isinstance(match, Found) else match.likeliest
    assert found is not None
    assert found.name == "Leif Narolonit"
