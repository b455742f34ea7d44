"""What is wrong with a store, one line per fault."""

from __future__ import annotations

from collections.abc import Iterator

from sqlalchemy import Connection, ForeignKeyConstraint, Table, and_, func, inspect, or_, select

from knowledge.vocabulary import TRAITS, Trait
from scouting_db import tables
from scouting_db.base import Base
from scouting_db.book.scope import NUMBERS_PER_VERSION
from scouting_db.exchange import highest_number
from scouting_db.upgrade import REVISION, stored_revision
from scouting_db.values import BookId
from scouting_db.zones import checked_zone

MOST_TOLD = 20
"""Rows told one by one of one kind of fault; the rest are counted."""


def faults(connection: Connection) -> tuple[str, ...]:
    """Everything wrong with the stored data that can be told; empty is good.

    The file as SQLite's own `PRAGMA integrity_check` and `foreign_key_check` see it; then what
    either database is asked: references to rows that are not there, numbers beyond a book's
    version, zones and traits that nobody knows, and logs that void lines which are not there.
    """
    found = [] if connection.dialect.name != "sqlite" else _damage(connection)
    found += _revision(connection)
    for table in Base.metadata.sorted_tables:
        for key in table.foreign_key_constraints:
            found += _lost_references(connection, table, key)
    found += _books(connection)
    found += _traits(connection)
    found += _voids(connection)
    return tuple(found)


def _damage(connection: Connection) -> list[str]:
    told = [row[0] for row in connection.exec_driver_sql("PRAGMA integrity_check")]
    return [f"file: {each}" for each in told if each != "ok"]


def _revision(connection: Connection) -> list[str]:
    stored = stored_revision(connection)
    tables_there = set(inspect(connection).get_table_names())
    missing = sorted(set(Base.metadata.tables) - tables_there)
    found = [] if stored == REVISION else [f"database: revision {stored}, expected {REVISION}"]
    return [*found, *(f"database: table {name} is missing" for name in missing)]


def _lost_references(
    connection: Connection, table: Table, key: ForeignKeyConstraint
) -> Iterator[str]:
    """Rows whose reference leads nowhere; one without a value refers to nothing."""
    far = key.referred_table.alias("far")
    pairs = [(element.parent, far.c[element.column.name]) for element in key.elements]
    lost = (
        select(*table.primary_key)
        .where(
            and_(*(near.is_not(None) for near, _ in pairs)),
            ~select(1).where(and_(*(near == there for near, there in pairs))).exists(),
        )
        .order_by(*table.primary_key)
    )
    rows = connection.execute(lost).all()
    column = key.elements[-1].parent.name
    for row in rows[:MOST_TOLD]:
        where = ", ".join(f"{name} {value}" for name, value in row._mapping.items())
        yield f"{table.name} ({where}): its {column} is no {key.referred_table.name} of ours"
    if len(rows) > MOST_TOLD:
        yield f"{table.name}: {len(rows) - MOST_TOLD} more of these"


def _books(connection: Connection) -> Iterator[str]:
    book = tables.book
    rows = connection.execute(select(book.c.book_id, book.c.version, book.c.zone))
    for number, version, zone in rows.all():
        highest = highest_number(connection, BookId(number))
        if highest >= (version + 1) * NUMBERS_PER_VERSION:
            yield f"book {number}: row {highest} is beyond version {version}"
        try:
            checked_zone(zone)
        except ValueError as error:
            yield f"book {number}: {error}"


def _traits(connection: Connection) -> Iterator[str]:
    """Claims of traits nobody knows, or of a value that their trait does not take."""
    observation = tables.observation
    known = [
        and_(observation.c.trait == trait.value, observation.c.value.in_([*TRAITS[trait].values]))
        for trait in Trait
    ]
    strange = select(
        observation.c.book_id, observation.c.note_id, observation.c.trait, observation.c.value
    ).where(~or_(*known))
    for row in connection.execute(strange.order_by(observation.c.book_id, observation.c.note_id)):
        where = f"book {row.book_id}, note {row.note_id}"
        yield f"{where}: no trait {row.trait} that is {row.value}"


def _voids(connection: Connection) -> Iterator[str]:
    """Voids of lines that are not there or come later."""
    entry = tables.entry
    target = entry.alias("target")
    is_it = and_(
        target.c.book_id == entry.c.book_id,
        target.c.match_id == entry.c.match_id,
        target.c.n == entry.c.voids,
        target.c.n < entry.c.n,
    )
    lost = (
        select(entry.c.book_id, entry.c.match_id, entry.c.n, entry.c.voids)
        .select_from(entry.outerjoin(target, is_it))
        .where(entry.c.kind == "void", target.c.n.is_(None))
    )
    for row in connection.execute(lost):
        where = f"book {row.book_id}, match {row.match_id}"
        yield f"{where}: entry {row.n} voids {row.voids}, not there"
    after = select(entry.c.book_id, entry.c.match_id, func.max(entry.c.n), func.count()).group_by(
        entry.c.book_id, entry.c.match_id
    )
    for book, match, last, count in connection.execute(after):
        if last != count:
            yield f"book {book}, match {match}: {count} lines, the last is number {last}"
