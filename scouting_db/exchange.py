"""A book as one JSON document: exported, and imported again as a new book.

The form is `book_document`'s. Rows come in the order of their keys, so the same book gives the
same text.

Left behind, because they belong to a chat and not to the book: who may read it, undo history,
reminders, and which message a note came from. What was exported, imported and exported again is
the same to the letter.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import groupby
from typing import Any

from sqlalchemy import JSON, Connection, Table, func, insert, select
from sqlalchemy.exc import StatementError

from knowledge.dataclass import dataclass
from scouting_db import tables
from scouting_db.book.scope import NUMBERS_PER_VERSION
from scouting_db.book_document import PEOPLE, ExchangeError, read_document, written
from scouting_db.values import BookId, PersonId, Role
from scouting_db.zones import checked_zone

MOST_VERSIONS = 2**40
"""More changes than a book can see; a larger number in an import would overflow ids."""

# In the order in which rows can be put in: what is referred to comes first.
KEPT: Mapping[str, Table] = {
    table.name: table
    for table in (
        tables.preference,
        tables.player,
        tables.alias,
        tables.pair,
        tables.agreement,
        tables.event,
        tables.note,
        tables.observation,
        tables.match,
        tables.entry,
        tables.rally,
        tables.rally_rate,
        tables.choice,
        tables.plan,
    )
}
LEFT_BEHIND = frozenset({"book_id", "chat_id", "external_message_id", "inbox_id", "changed"})
"""Columns that say nothing outside this database."""

TABLES_LEFT_BEHIND = frozenset({"member", "invitation", "change", "reminder"})
"""Tables with a book's number whose rows belong to people and chats of this database."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BookSummary:
    """What a document holds, to tell before it is imported."""

    name: str
    players: int
    notes: int
    matches: int


def export_book(connection: Connection, book: BookId) -> str:
    """The document as text; LookupError without such a book."""
    head = _head_of(connection, book)
    people = list(_people(connection, book))
    places = {number: place for place, (number, _) in enumerate(people, start=1)}
    rows = {name: list(_rows_of(connection, table, book, places)) for name, table in KEPT.items()}
    return written(head, [name for _, name in people], rows)


def summary_of(document: Mapping[str, Any]) -> BookSummary:
    """What the document holds; ExchangeError where its head is wrong."""
    head = _head(document)
    rows = _tables(document)
    counts = [len(rows.get(name, ())) for name in ("player", "note", "match")]
    return BookSummary(name=head.name, players=counts[0], notes=counts[1], matches=counts[2])


def import_book(connection: Connection, text: str, *, owner: PersonId) -> BookId:
    """A new book from a document, with its first editor. ExchangeError where it is wrong.

    Never commits: on an error roll the transaction back, and nothing is left of it.
    """
    document = read_document(text)
    book = _new_book(connection, _head(document), owner)
    people = _new_people(connection, document.get("people", []))
    for name, rows in _tables(document).items():
        _take_rows(connection, book, people, name, rows)
    _never_reuse_numbers(connection, book)
    return book


@dataclass(frozen=True, slots=True, kw_only=True)
class _Head:
    name: str
    zone: str
    version: int


def _head_of(connection: Connection, book: BookId) -> dict[str, Any]:
    row = connection.execute(
        select(tables.book.c.name, tables.book.c.zone, tables.book.c.version).where(
            tables.book.c.book_id == book
        )
    ).one_or_none()
    if row is None:
        raise LookupError(f"no book {book}")
    return {"name": row.name, "zone": row.zone, "version": row.version}


def _people(connection: Connection, book: BookId) -> Iterator[tuple[int, str]]:
    """The people who wrote something in the book, with their numbers here."""
    note, entry, person = tables.note, tables.entry, tables.person
    wrote = select(note.c.author).where(note.c.book_id == book, note.c.author.is_not(None))
    logged = select(entry.c.person_id).where(
        entry.c.book_id == book, entry.c.person_id.is_not(None)
    )
    named = (
        select(person.c.person_id, person.c.name)
        .where(person.c.person_id.in_(wrote.union(logged)))
        .order_by(person.c.person_id)
    )
    for row in connection.execute(named):
        yield row.person_id, row.name


def _rows_of(
    connection: Connection, table: Table, book: BookId, places: Mapping[int, int]
) -> Iterator[dict[str, Any]]:
    """Sorted here and not by the database, whose order of words depends on its settings."""
    columns = [column for column in table.c if column.name not in LEFT_BEHIND]
    keys = [column.name for column in table.primary_key if column.name not in LEFT_BEHIND]
    found = connection.execute(select(*columns).where(table.c.book_id == book)).mappings()
    for row in sorted(found, key=lambda one: tuple(one[key] for key in keys)):
        yield {
            key: places[value] if key in PEOPLE else value
            for key, value in row.items()
            if value is not None
        }


def _head(document: Mapping[str, Any]) -> _Head:
    value = document.get("book")
    if not isinstance(value, dict):
        raise ExchangeError("book: name, zone and version are needed")
    name, zone, version = value.get("name"), value.get("zone"), value.get("version")
    if not (isinstance(name, str) and isinstance(zone, str) and type(version) is int):
        raise ExchangeError("book: name, zone and version are needed")
    if not 0 <= version < MOST_VERSIONS:
        raise ExchangeError(f"book: version {version} is out of range")
    try:
        return _Head(name=name, zone=checked_zone(zone), version=version)
    except ValueError as error:
        raise ExchangeError(f"book: {error}") from None


def _tables(document: Mapping[str, Any]) -> dict[str, list[Any]]:
    """The tables in the order in which they go in."""
    given = document.get("tables")
    if not isinstance(given, dict):
        raise ExchangeError("tables: an object with the rows of each table is needed")
    strange = given.keys() - KEPT.keys()
    if strange:
        raise ExchangeError(
            f"tables: {', '.join(sorted(map(repr, strange)))} is no table of a book"
        )
    for name, rows in given.items():
        if not isinstance(rows, list):
            raise ExchangeError(f"tables: {name} must be a list of rows")
    return {name: given[name] for name in KEPT if name in given}


def _new_book(connection: Connection, head: _Head, owner: PersonId) -> BookId:
    row = {"name": head.name, "zone": head.zone, "version": head.version}
    made = connection.execute(
        insert(tables.book).returning(tables.book.c.book_id), row
    ).scalar_one()
    connection.execute(
        insert(tables.member),
        {"book_id": made, "person_id": owner, "role": Role.EDITOR.value},
    )
    return BookId(made)


def _new_people(connection: Connection, names: object) -> list[int]:
    if not isinstance(names, list) or not all(isinstance(name, str) for name in names):
        raise ExchangeError("people: a list of names is needed")
    person = tables.person
    adding = insert(person).returning(person.c.person_id)
    return [int(connection.execute(adding, {"name": name}).scalar_one()) for name in names]


def _take_rows(
    connection: Connection, book: BookId, people: Sequence[int], name: str, rows: Sequence[Any]
) -> None:
    table = KEPT[name]
    ready = [
        {"book_id": book, **_checked(f"{name} {n}", table, row, people)}
        for n, row in enumerate(rows, start=1)
    ]
    first = 1
    for _, alike in groupby(ready, key=lambda one: tuple(sorted(one))):
        batch = list(alike)
        where = (
            f"{name} {first}" if len(batch) == 1 else f"{name} {first} to {first + len(batch) - 1}"
        )
        try:
            connection.execute(insert(table), batch)
        except StatementError as error:
            raise ExchangeError(f"{where} does not fit: {error.orig}") from None
        first += len(batch)


def _checked(where: str, table: Table, row: object, people: Sequence[int]) -> dict[str, Any]:
    """The row with people by their new numbers.

    SQLite would store words in a column of numbers, so types are looked at here.
    """
    if not isinstance(row, dict):
        raise ExchangeError(f"{where} is not an object")
    strange = row.keys() - (set(table.c.keys()) - LEFT_BEHIND)
    if strange:
        raise ExchangeError(f"{where}: {table.name} has no {', '.join(sorted(strange))}")
    for key, one in row.items():
        kind = table.c[key].type
        fits = one is None or isinstance(kind, JSON) or _is_a(one, kind.python_type)
        if not fits:
            raise ExchangeError(f"{where}: {key} must be a {kind.python_type.__name__}")
    told = {key: value for key, value in row.items() if value is not None}
    for key in PEOPLE & told.keys():
        if not 1 <= told[key] <= len(people):
            raise ExchangeError(f"{where}: {key} {told[key]} is none of the people")
        told[key] = people[told[key] - 1]
    return told


def _is_a(one: object, kind: type) -> bool:
    if kind is float:
        return isinstance(one, int | float) and not isinstance(one, bool)
    return type(one) is kind


_NUMBERED = (
    tables.player.c.player_id,
    tables.pair.c.pair_id,
    tables.event.c.event_id,
    tables.note.c.note_id,
    tables.match.c.match_id,
    tables.plan.c.plan_id,
)


def highest_number(connection: Connection, book: BookId) -> int:
    """The highest number that the book gave to a row."""
    highest = (
        connection.execute(select(func.max(column)).where(column.table.c.book_id == book)).scalar()
        for column in _NUMBERED
    )
    return max(int(one or 0) for one in highest)


def _never_reuse_numbers(connection: Connection, book: BookId) -> None:
    """Lift the version above every imported number, whatever the head said."""
    least = highest_number(connection, book) // NUMBERS_PER_VERSION
    connection.execute(
        tables.book.update()
        .where(tables.book.c.book_id == book, tables.book.c.version < least)
        .values(version=least)
    )
