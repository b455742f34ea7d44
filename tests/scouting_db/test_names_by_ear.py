"""Names as ears, haste and other languages' spelling have them. Common practice, no source."""

from __future__ import annotations

import pytest
from rosters import roster_of

from scouting_db.name_ear import likeness
from scouting_db.names import Alike, Found, Nobody, likeliest_of, lookup

CLUB = (
    "Isabella Moreau",
    "Caoimhe Donnelly",
    "Tadhg Rafferty",
    "Joaquín Villaseñor",
    "Wojciech Jabłoński",
    "Nguyễn Thị Lan",
    "Giuseppe Marchetti",
    "Benedict Hale (Bones)",
    "Priya Raghunathan",
    "Sean O'Malley",
)
LEAGUE = (
    "Guillermo Ortega",
    "Niamh Kavanagh",
    "Llewellyn Price",
    "Zbigniew Kowalczyk",
    "Ahmed Al-Farsi",
    "João Magalhães",
    "Katarzyna Nowak",
    "Maximilian Vogel",
    "Rosalind Achterberg",
    "Philippa Weatherby",
    "Catrin Pugh-Jones",
)
COURT = (
    "Margaret Thistlewood",
    "Theodore Castlebury",
    "Jean-Baptiste Lefèvre",
    "Svetlana Petrova",
    "Hyun-woo Park",
    "Marisol de la Fuente",
    "Aleksandra Wiśniewska",
    "Ignacio Etxeberria",
    "Fiona MacAllister",
    "Desmond Achebe (Dez)",
    "Jocelyn Hurst",
)


def told(typed: str, *names: str) -> str | set[str] | None:
    """The one found, the names asked about, or None for nobody."""
    match lookup(typed, roster_of(*names)):
        case Found(player=row):
            return row.name
        case Alike(players=players):
            return {row.name for row in players}
        case Nobody():
            return None


@pytest.mark.parametrize(
    ("typed", "surname"),
    [
        ("walking villa senior", "Villaseñor"),
        ("voy check yab lonski", "Jabłoński"),
        ("win tea lan", "Lan"),
        ("pria ragu nathan", "Raghunathan"),
        ("keeva donnelly", "Donnelly"),
        ("queeva donley", "Donnelly"),
        ("tiger rafferty", "Rafferty"),
        ("joseppy markety", "Marchetti"),
        ("mark eddie", "Marchetti"),
        ("shaun omalley", "O'Malley"),
    ],
)
def test_dictated_in_everyday_words(typed: str, surname: str) -> None:
    found = told(typed, *CLUB)
    assert isinstance(found, str)
    assert found.endswith(surname)


@pytest.mark.parametrize(
    ("typed", "surname"),
    [
        ("geeyermo ortega", "Ortega"),
        ("neve cavanaugh", "Kavanagh"),
        ("lou ellen price", "Price"),
        ("big new koval chick", "Kowalczyk"),
        ("kovalchik", "Kowalczyk"),
        ("a med al farcy", "Al-Farsi"),
        ("jo ow mag a lice", "Magalhães"),
        ("magalaes", "Magalhães"),
        ("kate novak", "Nowak"),
        ("actor berg", "Achterberg"),
    ],
)
def test_names_of_many_languages(typed: str, surname: str) -> None:
    found = told(typed, *LEAGUE)
    assert isinstance(found, str)
    assert found.endswith(surname)


@pytest.mark.parametrize(
    ("typed", "name"),
    [
        ("thisselwood", "Margaret Thistlewood"),
        ("cassel bury", "Theodore Castlebury"),
        ("ted castleberry", "Theodore Castlebury"),
        ("lefever", "Jean-Baptiste Lefèvre"),
        ("janbaptist", "Jean-Baptiste Lefèvre"),
        ("sweat lana", "Svetlana Petrova"),
        ("vish nev ska", "Aleksandra Wiśniewska"),
        ("etcheberria", "Ignacio Etxeberria"),
        ("mcalister", "Fiona MacAllister"),
        ("a chee bay", "Desmond Achebe (Dez)"),
    ],
)
def test_sounds_that_spelling_hides(typed: str, name: str) -> None:
    assert told(typed, *COURT) == name


@pytest.mark.parametrize(
    ("typed", "name"),
    [
        ("ess o'malley", "Sean O'Malley"),
        ("jay villasenor", "Joaquín Villaseñor"),
        ("gee marchetti", "Giuseppe Marchetti"),
        ("tee rafferty", "Tadhg Rafferty"),
        ("pee raghunathan", "Priya Raghunathan"),
        ("eye moreau", "Isabella Moreau"),
        ("see donnelly", "Caoimhe Donnelly"),
        ("isabella em", "Isabella Moreau"),
        ("sean oh", "Sean O'Malley"),
        ("priya are", "Priya Raghunathan"),
    ],
)
def test_a_letter_said_by_its_name(typed: str, name: str) -> None:
    assert told(typed, *CLUB) == name


def test_several_letters_said_by_their_names() -> None:
    assert told("ana are pee", "Ana Ruiz-Peña", "Ben Hale") == "Ana Ruiz-Peña"


@pytest.mark.parametrize(
    ("typed", "name"),
    [
        ("maxvogel", "Maximilian Vogel"),
        ("max vog", "Maximilian Vogel"),
        ("kat now", "Katarzyna Nowak"),
        ("roz acht", "Rosalind Achterberg"),
        ("cat pj", "Catrin Pugh-Jones"),
        ("lew pri", "Llewellyn Price"),
        ("pip weath", "Philippa Weatherby"),
        ("rosalacht", "Rosalind Achterberg"),
        ("ahm alf", "Ahmed Al-Farsi"),
        ("phil weath", "Philippa Weatherby"),
    ],
)
def test_both_names_cut_short(typed: str, name: str) -> None:
    assert told(typed, *LEAGUE) == name


@pytest.mark.parametrize(
    ("typed", "name"),
    [
        ("benny hale", "Benedict Hale"),
        ("izzy n", "Isabeau Norling"),
        ("ronnie lind", "Ronan Lindell"),
        ("zhenya", "Yevgenia Marchuk"),
        ("tad birch", "Thaddeus Birch"),
        ("zibi", "Zbigniew Pawlak"),
        ("oli steen", "Ólafur Steen"),
        ("kate pawlak", "Katarzyna Pawlak"),
        ("sveta", "Svetlana Petrova"),
        ("fee quist", "Fiona Quist"),
    ],
)
def test_short_forms(typed: str, name: str) -> None:
    assert told(typed, name, "Hugo Dahl", "Mabel Orr") == name


def test_every_bearer_of_a_short_form_is_asked_about() -> None:
    assert told("izzy n", "Isabella Navarro", "Isabeau Norling", "Hugo Dahl") == {
        "Isabella Navarro",
        "Isabeau Norling",
    }
    assert told("charlie abernathy", "Charlotte Abernathy", "Charles Abernethy") == {
        "Charlotte Abernathy",
        "Charles Abernethy",
    }


@pytest.mark.parametrize(
    ("typed", "name"),
    [
        ("ezkeil m", "Ezekiel Marsh"),
        ("gewn", "Gwendolyn Ashby"),
        ("haddda", "Samir Haddad"),
        ("Mişel Çu", "Michelle Chu"),
        ("Şantal Düşen", "Chantal Duchesne"),
        ("cefri", "Geoffrey Wainwright"),
        ("Yunis Cefsın", "Eunice Jephson"),
        ("nathanil g", "Nathaniel Greer"),
        ("bnejamin", "Benjamin Loft"),
        ("Kiara", "Chiara Bonfante"),
    ],
)
def test_slips_and_other_alphabets(typed: str, name: str) -> None:
    assert told(typed, name, "Hugo Dahl", "Mabel Orr") == name


@pytest.mark.parametrize(
    ("typed", "names"),
    [
        ("Ahmed El Sayed", ("Mohammed El-Sayed",)),
        ("violet van der Meer", ("Joost van der Meer",)),
        ("edie Ruiz-Peña", ("Ana Ruiz-Peña",)),
        ("china Nguyen-Brandt", ("Lien Nguyen-Brandt",)),
        ("kitty Fuentes-Mora", ("Lucía Fuentes-Mora",)),
        ("rufus van der Berg", ("Joris van der Berg",)),
        ("Carlos de la Fuente", COURT),
        ("Jun-ho Park", COURT),
        ("Hassan Al Farsi", LEAGUE),
        ("Megan Pugh-Jones", LEAGUE),
        ("Philip Weatherby", LEAGUE),
        ("Nora Hale", CLUB),
        ("petra zielinska", ("Petra Zelenka",)),
        ("nurten bilgin", ("Nurcan Bilgiç",)),
        ("johansen", ("Johanna Senn",)),
    ],
)
def test_a_stranger_with_a_known_surname_stays_one(typed: str, names: tuple[str, ...]) -> None:
    assert told(typed, *names) is None


def test_whoever_is_near_in_both_parts_comes_first() -> None:
    match = lookup("owen mul cahey", roster_of("Eoghan Mulcahy", "Owen Maddox"))
    row = likeliest_of(match)
    assert row is not None
    assert row.name == "Eoghan Mulcahy"


@pytest.mark.parametrize(
    ("typed", "name", "other"),
    [
        ("tekeri", "thackeray", "kramer"),
        ("jefsin", "jephson", "jarvis"),
        ("whitlow", "vitlo", "whitman"),
        ("zender", "xander", "zelda"),
    ],
)
def test_an_ear_hears_one_name_rather_than_another(typed: str, name: str, other: str) -> None:
    assert likeness(typed, typed) == 1.0
    assert likeness(typed, name) == likeness(name, typed) > 0.8 > likeness(typed, other)
