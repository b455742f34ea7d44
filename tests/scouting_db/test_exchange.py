"""A book leaves as one document and comes back the same; what is wrong is told by its place."""

from __future__ import annotations

import json
from typing import Any

import pytest
from databases import NOON, Team, new_team
from hypothesis import HealthCheck, given, settings
from random_books import books
from sqlalchemy import Connection, text

from knowledge.given_plan import GivenLine
from knowledge.vocabulary import Seen, Trait, Value
from scouting_db.base import Base
from scouting_db.book import Book
from scouting_db.book_check import faults
from scouting_db.book_document import ExchangeError, read_document
from scouting_db.exchange import (
    KEPT,
    TABLES_LEFT_BEHIND,
    export_book,
    import_book,
    summary_of,
)
from scouting_db.session import Store
from scouting_db.values import BookId, EntryKind, Micros, NewObservation, Winner

BOOK = {"name": "x", "zone": "UTC", "version": 1}


def document(**more: Any) -> str:
    return json.dumps({"seamwise": 2, "book": BOOK, "people": [], "tables": {}} | more)


def fill(connection: Connection, team: Team) -> None:
    book = team.book(connection)
    okafor, hale = book.add_player("Okafor"), book.add_player("Hale")
    book.add_alias(okafor, "Big Ö")
    theirs = book.pair_of(okafor, hale)
    claim = NewObservation(
        player=okafor, trait=Trait.HAND, value=Value.LEFT, weight=1.5, seen=Seen.LIVE, span=(0, 5)
    )
    book.add_note("lefty\nwith a “quote”", [claim], chat=team.chat, external_message_id=5)
    match = book.announce(our_pair=None, their_pair=theirs, format={"target": 11})
    book.append(match, EntryKind.RALLY, won_by=Winner.US, detail={"lineup": [1, 2]})
    book.void(match, 1)
    book.store_plan(our_pair=None, their_pair=theirs, variant="full", lines=[GivenLine(do="Dink")])
    book.prefer("units", "feet")


def test_every_table_of_a_book_is_exported_or_left_behind_on_purpose() -> None:
    of_books = {name for name, table in Base.metadata.tables.items() if "book_id" in table.c}
    assert of_books - {"book", "chat"} == set(KEPT) | TABLES_LEFT_BEHIND


@settings(
    max_examples=20, suppress_health_check=[HealthCheck.function_scoped_fixture, *HealthCheck]
)
@given(book=books())
def test_import_and_export_give_the_same_document(store: Store, book: dict[str, Any]) -> None:
    """Exported, imported into an empty book and exported again: the same to the letter."""
    mira = new_team(store, "Mira")
    with store.writing() as connection:
        first = import_book(connection, json.dumps(book), owner=mira.person)
        once = export_book(connection, first)
        assert json.loads(once) == book
        second = import_book(connection, once, owner=mira.person)
        assert export_book(connection, second) == once


def test_random_books_have_rows_in_every_table() -> None:
    """Else the property above would pass for want of rows."""
    seen: set[str] = set()

    @settings(max_examples=80, database=None, suppress_health_check=[*HealthCheck])
    @given(book=books())
    def look(book: dict[str, Any]) -> None:
        seen.update(name for name, rows in book["tables"].items() if rows)

    look()
    assert seen == set(KEPT)


def test_a_book_comes_back_as_it_left(store: Store) -> None:
    mira, tom = new_team(store, "Mira"), new_team(store, "Tom")
    with store.writing() as connection:
        fill(connection, mira)
        told = export_book(connection, mira.book_id)
        copy = import_book(connection, told, owner=tom.person)
        assert export_book(connection, copy) == told
        before, after = (
            Book(connection, each, person=None, now=Micros(NOON)) for each in (mira.book_id, copy)
        )
        assert after.players() == before.players()
        assert after.matches() == before.matches()
        assert [(row.text, row.author) for row in after.recent_notes()] == [
            ("lefty\nwith a “quote”", "Mira")
        ]


def test_a_summary_tells_what_a_document_holds(store: Store) -> None:
    mira = new_team(store, "Mira")
    with store.writing() as connection:
        fill(connection, mira)
        found = summary_of(read_document(export_book(connection, mira.book_id)))
    assert (found.name, found.players, found.notes, found.matches) == ("Book of Mira", 2, 1, 1)


def test_an_imported_book_goes_on_numbering_without_a_clash(store: Store) -> None:
    mira = new_team(store, "Mira")
    with store.writing() as connection:
        fill(connection, mira)
        told = json.loads(export_book(connection, mira.book_id))
        told["book"]["version"] = 0
        copy = import_book(connection, json.dumps(told), owner=mira.person)
        book = Book(connection, copy, person=mira.person, now=Micros(NOON))
        assert book.add_player("Brandt") > max(row.player for row in book.players()[:-1])
        assert faults(connection) == ()


def test_an_export_tells_nothing_of_chats_and_accounts(store: Store) -> None:
    mira = new_team(store, "Mira")
    with store.writing() as connection:
        fill(connection, mira)
        told = export_book(connection, mira.book_id)
    assert "chat" not in told
    assert "user Mira" not in told


def test_the_form_before_is_still_read(store: Store) -> None:
    lines = [
        {"seamwise": 1, "name": "Old", "zone": "UTC", "version": 3},
        {"table": "person", "person_id": 9, "name": "Mira"},
        {"table": "player", "player_id": 64, "name": "Hale", "ours": False,
         "merged_into": None, "forgotten_at": None},
        {"table": "note", "note_id": 128, "author": 9, "at": 5, "text": "tall", "unread": False,
         "deleted_at": None},
    ]  # fmt: skip
    mira = new_team(store, "Mira")
    with store.writing() as connection:
        text_ = "\n".join(map(json.dumps, lines))
        book = Book(
            connection,
            import_book(connection, text_, owner=mira.person),
            person=None,
            now=Micros(NOON),
        )
        assert [row.name for row in book.players()] == ["Hale"]
        assert [(row.text, row.author) for row in book.recent_notes()] == [("tall", "Mira")]


@pytest.mark.parametrize(
    ("told", "said"),
    [
        ("", "not JSON"),
        ("{", "not JSON"),
        ("[]", "not a JSON object"),
        ('{"seamwise":3}', "no export of a book"),
        ('{"seamwise":1}', "name, zone and version"),
        (document(book={}), "name, zone and version"),
        (document(book=BOOK | {"zone": "Mars"}), "Mars"),
        (document(book=BOOK | {"version": -1}), "out of range"),
        (document(people={}), "a list of names"),
        (document(tables=[]), "an object with the rows"),
        (document(tables={"chat": []}), "'chat' is no table"),
        (document(tables={"player": {}}), "player must be a list"),
        (document(tables={"player": [[]]}), "player 1 is not an object"),
        (document(tables={"player": [{"book_id": 1}]}), "player has no book_id"),
        (document(tables={"player": [{"player_id": "a"}]}), "player_id must be a int"),
        (document(tables={"player": [{"player_id": 1}]}), "player 1 does not fit"),
        (document(tables={"note": [{"note_id": 1, "author": 1}]}), "author 1 is none"),
        (
            document(tables={"pair": [{"pair_id": 9, "player_a": 1, "player_b": 2}]}),
            "pair 1 does not fit",
        ),
    ],
)
def test_what_is_wrong_is_told_by_its_place(store: Store, told: str, said: str) -> None:
    mira = new_team(store, "Mira")
    with store.writing() as connection:
        savepoint = connection.begin_nested()
        with pytest.raises(ExchangeError, match=said):
            import_book(connection, told, owner=mira.person)
        savepoint.rollback()
        assert connection.execute(text("SELECT count(*) FROM book")).scalar() == 1


def test_a_book_that_is_not_there_cannot_be_exported(store: Store) -> None:
    with store.reading() as connection, pytest.raises(LookupError):
        export_book(connection, BookId(99))
