"""A book as JSON lines, ours alone: export, import into a new book, and a check for faults.

Line 1 is the head; every further line is one row: {"table": ..., columns without book_id}.
People are written by name only; chats, messages and undo history stay behind.
"""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from sqlalchemy import JSON, Connection, Table, func, insert, select
from sqlalchemy.exc import StatementError

from scouting_db import tables
from scouting_db.book.scope import NUMBERS_PER_VERSION
from scouting_db.values import BookId, PersonId, Role
from scouting_db.zones import checked_zone

FORMAT = 1

MOST_VERSIONS = 2**40
"""More changes than a book can see; a larger number in an import would overflow ids."""

# In the order in which rows can be put in: what is referred to comes first.
_KEPT: Mapping[str, Table] = {
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
_LEFT_BEHIND = frozenset({"book_id", "chat_id", "external_message_id", "inbox_id", "changed"})
_PEOPLE = frozenset({"author", "person_id"})
"""Columns that refer to a person, whose number changes on import."""


class ExchangeError(Exception):
    """The lines are no export of a book; the message names the line."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Head:
    name: str
    zone: str
    version: int


def export_book(connection: Connection, book: BookId) -> Iterator[str]:
    """The book's lines, without line ends; the same book gives the same lines."""
    yield _line(_head_of(connection, book))
    yield from map(_line, _people(connection, book))
    for name, table in _KEPT.items():
        for row in connection.execute(_rows_of(table, book)).mappings():
            yield _line({"table": name, **row})


def import_book(connection: Connection, lines: Iterable[str], *, owner: PersonId) -> BookId:
    """A new book from its lines, with its first editor. ExchangeError where they are wrong.

    Never commits: on an error roll the transaction back, and nothing is left of it.
    """
    numbered = ((n, line) for n, line in enumerate(lines, start=1) if line.strip())
    first, line = next(numbered, (1, "{}"))
    book = _new_book(connection, _head(first, line), owner)
    people: dict[int, int] = {}
    for n, line in numbered:
        _take_row(connection, book, people, n, line)
    _never_reuse_numbers(connection, book)
    return book


def faults(connection: Connection) -> tuple[str, ...]:
    """Everything wrong with the stored data that can be told; empty is good."""
    found: list[str] = []
    if connection.dialect.name == "sqlite":
        found += _sqlite_faults(connection)
    for book, version in connection.execute(select(tables.book.c.book_id, tables.book.c.version)):
        highest = _highest_number(connection, book)
        if highest >= (version + 1) * NUMBERS_PER_VERSION:
            found.append(f"book {book}: row {highest} is beyond version {version}")
    found += _log_faults(connection)
    return tuple(found)


def _line(row: Mapping[str, Any]) -> str:
    return json.dumps(row, ensure_ascii=False, separators=(",", ":"))


def _head_of(connection: Connection, book: BookId) -> dict[str, Any]:
    row = connection.execute(
        select(tables.book.c.name, tables.book.c.zone, tables.book.c.version).where(
            tables.book.c.book_id == book
        )
    ).one_or_none()
    if row is None:
        raise LookupError(f"no book {book}")
    return {"seamwise": FORMAT, "name": row.name, "zone": row.zone, "version": row.version}


def _people(connection: Connection, book: BookId) -> Iterator[dict[str, Any]]:
    """The people who wrote something in the book."""
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
        yield {"table": "person", "person_id": row.person_id, "name": row.name}


def _rows_of(table: Table, book: BookId) -> Any:
    columns = [column for column in table.c if column.name not in _LEFT_BEHIND]
    return select(*columns).where(table.c.book_id == book).order_by(*table.primary_key)


def _parsed(n: int, line: str) -> dict[str, Any]:
    try:
        value = json.loads(line)
    except ValueError as error:
        raise ExchangeError(f"line {n} is not JSON: {error}") from None
    if not isinstance(value, dict):
        raise ExchangeError(f"line {n} is not an object")
    return value


def _head(n: int, line: str) -> _Head:
    value = _parsed(n, line)
    if value.get("seamwise") != FORMAT:
        raise ExchangeError(f'line {n} is no head of an export: expected "seamwise": {FORMAT}')
    name, zone, version = value.get("name"), value.get("zone"), value.get("version")
    if not (isinstance(name, str) and isinstance(zone, str) and isinstance(version, int)):
        raise ExchangeError(f"line {n}: name, zone and version are needed")
    if not 0 <= version < MOST_VERSIONS:
        raise ExchangeError(f"line {n}: version {version} is out of range")
    try:
        return _Head(name=name, zone=checked_zone(zone), version=version)
    except ValueError as error:
        raise ExchangeError(f"line {n}: {error}") from None


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


def _take_row(
    connection: Connection, book: BookId, people: dict[int, int], n: int, line: str
) -> None:
    value = _parsed(n, line)
    name = value.pop("table", None)
    if name == "person":
        people[_number(n, value, "person_id")] = _new_person(connection, n, value)
        return
    table = _KEPT.get(name) if isinstance(name, str) else None
    if table is None:
        raise ExchangeError(f"line {n}: {name!r} is no table of a book")
    _check_columns(n, table, value)
    for column in _PEOPLE & value.keys():
        value[column] = people.get(value[column])
    try:
        connection.execute(insert(table), {"book_id": book, **value})
    except StatementError as error:
        raise ExchangeError(f"line {n} does not fit: {error.orig}") from None


def _check_columns(n: int, table: Table, value: Mapping[str, Any]) -> None:
    """SQLite would store words in a column of numbers, so types are looked at here."""
    strange = value.keys() - (set(table.c.keys()) - _LEFT_BEHIND)
    if strange:
        raise ExchangeError(f"line {n}: {table.name} has no {', '.join(sorted(strange))}")
    for key, one in value.items():
        kind = table.c[key].type
        fits = one is None or isinstance(kind, JSON) or _is_a(one, kind.python_type)
        if not fits:
            raise ExchangeError(f"line {n}: {key} must be a {kind.python_type.__name__}")


def _is_a(one: object, kind: type) -> bool:
    if kind is float:
        return isinstance(one, int | float) and not isinstance(one, bool)
    return type(one) is kind


def _new_person(connection: Connection, n: int, value: Mapping[str, Any]) -> int:
    name = value.get("name")
    if not isinstance(name, str):
        raise ExchangeError(f"line {n}: a person needs a name")
    person = tables.person
    made = connection.execute(insert(person).returning(person.c.person_id), {"name": name})
    return int(made.scalar_one())


def _number(n: int, value: Mapping[str, Any], key: str) -> int:
    number = value.get(key)
    if not isinstance(number, int):
        raise ExchangeError(f"line {n}: {key} must be a number")
    return number


_NUMBERED = (
    tables.player.c.player_id,
    tables.pair.c.pair_id,
    tables.event.c.event_id,
    tables.note.c.note_id,
    tables.match.c.match_id,
    tables.plan.c.plan_id,
)


def _highest_number(connection: Connection, book: BookId) -> int:
    """The highest number that the book gave to a row."""
    highest = (
        connection.execute(select(func.max(column)).where(column.table.c.book_id == book)).scalar()
        for column in _NUMBERED
    )
    return max(int(one or 0) for one in highest)


def _never_reuse_numbers(connection: Connection, book: BookId) -> None:
    """Lift the version above every imported number, whatever the head said."""
    least = _highest_number(connection, book) // NUMBERS_PER_VERSION
    connection.execute(
        tables.book.update()
        .where(tables.book.c.book_id == book, tables.book.c.version < least)
        .values(version=least)
    )


def _sqlite_faults(connection: Connection) -> list[str]:
    damage = [row[0] for row in connection.exec_driver_sql("PRAGMA integrity_check")]
    broken = connection.exec_driver_sql("PRAGMA foreign_key_check").fetchall()
    return [f"file: {each}" for each in damage if each != "ok"] + [
        f"{row[0]}: row {row[1]} refers to a missing {row[2]}" for row in broken
    ]


def _log_faults(connection: Connection) -> list[str]:
    """Voids of lines that are not there or come later."""
    entry = tables.entry
    target = entry.alias("target")
    lost = (
        select(entry.c.book_id, entry.c.match_id, entry.c.n, entry.c.voids)
        .select_from(
            entry.outerjoin(
                target,
                (target.c.book_id == entry.c.book_id)
                & (target.c.match_id == entry.c.match_id)
                & (target.c.n == entry.c.voids)
                & (target.c.n < entry.c.n),
            )
        )
        .where(entry.c.kind == "void", target.c.n.is_(None))
    )
    return [
        f"book {row.book_id}, match {row.match_id}: entry {row.n} voids {row.voids}, not there"
        for row in connection.execute(lost)
    ]
