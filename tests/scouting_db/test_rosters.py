"""Rosters and draws as desks send them: any sensible header, delimiter, encoding and order."""

from __future__ import annotations

import csv
import io

import pytest
from hypothesis import given
from hypothesis import strategies as st

from knowledge.vocabulary import Value
from scouting_db.csv_reading import Field, field_of, read_table, text_of
from scouting_db.roster_reading import Roster, read_roster


def roster(text: str) -> Roster:
    return read_roster(read_table(text))


def names(text: str) -> list[str]:
    return [one.name for one in roster(text).entrants]


@pytest.mark.parametrize(
    "text",
    [
        "Name,Hand\nAna Ruiz,L\nBen Hale,R\n",
        "Player;Plays\nAna Ruiz;left\nBen Hale;right\n",
        "FULL NAME\tHandedness\nAna Ruiz\tLeft-handed\nBen Hale\tRight-handed\n",
        "First Name,Last Name,Hand\nAna,Ruiz,l\nBen,Hale,r\n",
        "Last,First,Dominant Hand\nRuiz,Ana,lefty\nHale,Ben,righty\n",
        'Seed|player_name|hand\n1|"Ruiz, Ana"|LH\n2|"Hale, Ben"|RH\n',
        "Saltmarsh Autumn Doubles\n\nName,Hand,Club\nAna Ruiz,L,\nBen Hale,R,Dunes\n",
        "Club,Hand,Athlete\nDunes,L,(1) Ana Ruiz\n,R,2. Ben Hale [WC]\n",
        "name,hand\r\nAna Ruiz,L\r\n\r\nBen Hale,R\r\nana ruiz,\r\n",
    ],
)
def test_people_with_their_hands(text: str) -> None:
    found = {one.name: one.hand for one in roster(text).entrants}
    assert found == {"Ana Ruiz": Value.LEFT, "Ben Hale": Value.RIGHT}


@pytest.mark.parametrize(
    "text",
    [
        "Player 1,Player 2\nAna Ruiz,Ben Hale\n",
        "Name;Partner\nAna Ruiz;Ben Hale\nBen Hale;Ana Ruiz\n",
        "Team\nAna Ruiz / Ben Hale\n",
        "team,pool\nAna Ruiz & Ben Hale,A\n",
        "Pair\nAna Ruiz and Ben Hale\n",
        "Doubles Team\nAna Ruiz - Ben Hale\n",
        "First,Last,Partner Name\nAna,Ruiz,Ben Hale\n",
        "name\nAna Ruiz/Ben Hale\n",
    ],
)
def test_pairs(text: str) -> None:
    found = roster(text)
    assert [one.name for one in found.entrants] == ["Ana Ruiz", "Ben Hale"]
    assert found.pairs == (("Ana Ruiz", "Ben Hale"),)


def test_a_draw_names_both_sides_of_a_match() -> None:
    found = roster(
        "Time,Court,Team 1,Team 2\n"
        "10:40,7,Ana Ruiz / Ben Hale,Chidi Okafor / Sven Lindqvist\n"
        "11:20,2,Ana Ruiz / Ben Hale,BYE\n"
    )
    assert found.pairs == (("Ana Ruiz", "Ben Hale"), ("Chidi Okafor", "Sven Lindqvist"))
    assert found.unread == ()


def test_lines_without_a_name_are_told_by_number() -> None:
    assert roster("Name,Hand\nAna Ruiz,L\n,R\nTBD,\n42,L\n").unread == (3, 4, 5)


def test_without_a_header_the_first_column_is_names() -> None:
    table = read_table("Ana Ruiz,3.5\nBen Hale,4.0\n")
    assert not table.has_header
    assert names("Ana Ruiz,3.5\nBen Hale,4.0\n") == ["Ana Ruiz", "Ben Hale"]
    assert names("Ana Ruiz\nBen Hale\n") == ["Ana Ruiz", "Ben Hale"]


@pytest.mark.parametrize("text", ["", "\n\n", "Name\n", ",,,\n;;\n", "\0\0"])
def test_nobody_is_an_answer_too(text: str) -> None:
    assert names(text) == []


TABLE = "Name;Hand\nZoë Çelik;L\nÅsa Brandt;R\n"


@pytest.mark.parametrize(
    "encoding", ["utf-8", "utf-8-sig", "utf-16", "utf-16-le", "cp1252", "latin-1"]
)
def test_encodings_and_byte_order_marks(encoding: str) -> None:
    """Byte order marks: the Unicode Standard, section 23.8. Windows-1252 is what is left."""
    assert text_of(TABLE.encode(encoding)) == TABLE


@given(st.binary(max_size=400))
def test_no_bytes_are_too_strange(content: bytes) -> None:
    read_roster(read_table(text_of(content)))


_JOINS = {"And", "With"}
"""Between two people they make a pair, and behind one somebody is missing: no surnames here."""

_NAME = st.from_regex(r"[A-Z][a-z]{2,8} [A-Z][a-z]{2,8}", fullmatch=True).filter(
    lambda name: field_of(name) is None and not _JOINS & {*name.split()}
)


@given(
    people=st.lists(_NAME, min_size=1, max_size=8, unique_by=str.lower),
    delimiter=st.sampled_from(",;\t|"),
    quoting=st.sampled_from([csv.QUOTE_MINIMAL, csv.QUOTE_ALL]),
    column=st.integers(0, 2),
)
def test_a_table_written_by_the_csv_library_is_read(
    people: list[str], delimiter: str, quoting: int, column: int
) -> None:
    """The reference is Python's own writer (RFC 4180 with other delimiters)."""
    out = io.StringIO()
    writer = csv.writer(out, delimiter=delimiter, quoting=quoting)  # type: ignore[arg-type]
    header = ["Seed", "Club", "Pool"]
    writer.writerow([*header[:column], "Name", *header[column:]])
    for number, name in enumerate(people, start=1):
        writer.writerow([*map(str, range(column)), name, *[str(number)] * (3 - column)])
    assert names(out.getvalue()) == people


def test_every_header_is_of_one_field() -> None:
    assert field_of("Player's Name") is None
    assert field_of("PLAYER_1") is Field.NAME
    assert field_of(" e-mail ") is None
