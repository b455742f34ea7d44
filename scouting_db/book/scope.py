"""One book, one person, one moment: what the parts of the book share."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping
from functools import cache
from typing import Any

from sqlalchemy import (
    Connection,
    CursorResult,
    Executable,
    Table,
    bindparam,
    select,
    update,
)
from sqlalchemy.sql.dml import UpdateBase

from scouting_db.parts import PART_OF, VERSION_COLUMNS, stamps_of, version_column
from scouting_db.prepared import Prepared
from scouting_db.tables import book, match, note
from scouting_db.values import BookId, BookRow, MatchId, Micros, Part, PersonId, Stamps
from scouting_db.zones import checked_zone

NUMBERS_PER_VERSION = 64
"""A version of a book numbers at most so many new rows; a turn that makes more takes another."""

_OF_BOOK = book.c.book_id == bindparam("book")
_ABOUT = select(book.c.name, book.c.zone, book.c.version).where(_OF_BOOK)
_NEXT_VERSION = (
    update(book).where(_OF_BOOK).values(version=book.c.version + 1).returning(book.c.version)
)
_TAKE_VERSION = Prepared(_NEXT_VERSION)
_TAKE_VERSION_OF: Mapping[Part, Prepared] = {
    part: Prepared(_NEXT_VERSION.values({version_column(part): book.c.version + 1}))
    for part in Part
}
_MARK_PART: Mapping[Part, Prepared] = {
    part: Prepared(update(book).where(_OF_BOOK).values({version_column(part): book.c.version}))
    for part in Part
}
_STAMPS = select(*VERSION_COLUMNS).where(_OF_BOOK)
_SET_ABOUT = (
    update(book).where(_OF_BOOK).values(name=bindparam("new_name"), zone=bindparam("new_zone"))
)
_OTHER_ZONE = select(book.c.book_id).where(_OF_BOOK, book.c.zone != bindparam("new_zone")).exists()
_EVERY_DAY_SHIFTS = tuple(
    update(table)
    .where(table.c.book_id == bindparam("book"), _OTHER_ZONE)
    .values(changed=bindparam("version"))
    for table in (note, match)
)
"""Days are told in the book's zone: in another one every note and match reads anew."""

_TOUCH = (
    update(match)
    .where(match.c.book_id == bindparam("book"), match.c.match_id == bindparam("touched"))
    .values(changed=bindparam("version"))
)


class Scope:
    """One connection, whose transaction belongs to the caller, and one book on it.

    The first write takes the book's next version. That locks the book's row until the turn
    ends, so writers of one book take turns on either database.
    """

    def __init__(
        self, connection: Connection, book: BookId, *, person: PersonId | None, now: Micros
    ) -> None:
        self._connection = connection
        self._book = book
        self._person = person
        self._now = now
        self._version: int | None = None
        self._used = 0
        self._touched: set[MatchId] = set()
        self._marked: set[Part] = set()
        self._writes: Counter[Part] = Counter()

    @property
    def has_written(self) -> bool:
        """Whether this turn has changed the book, so that what its version gave is stale."""
        return self._version is not None

    def writes_to(self, *parts: Part) -> int:
        """How often this turn wrote to any of the parts: what was read of them since the last time
        still stands, as the book is ours until the turn ends."""
        return sum(self._writes[part] for part in parts)

    def about(self) -> BookRow:
        """The book's name, zone and version; LookupError without such a book."""
        row = self._read(_ABOUT).one_or_none()
        if row is None:
            raise LookupError(f"no book {self._book}")
        return BookRow(book=self._book, name=row.name, zone=row.zone, version=row.version)

    def version(self) -> int:
        """The book's count of changes.

        A cache key only before the turn's first write: a turn that fails gives its version
        back, and another one will use it for something else.
        """
        return self.about().version

    def stamps(self) -> Stamps:
        """Which version last wrote each part: keys of a cache, under the same condition."""
        return stamps_of(self._read(_STAMPS).one())

    def set_about(self, *, name: str, zone: str) -> None:
        """A new name and time zone; ValueError for a zone nobody knows."""
        values = {"new_name": name, "new_zone": checked_zone(zone)}
        for statement in _EVERY_DAY_SHIFTS:
            self._write(statement, {"new_zone": zone, "version": self._stamp()})
        self._write(_SET_ABOUT, values)

    def _read(self, statement: Executable, values: Mapping[str, Any] | None = None) -> Any:
        """Run a statement with this book's id as parameter `book`."""
        return self._connection.execute(statement, {"book": self._book, **(values or {})})

    def _write(
        self,
        statement: UpdateBase,
        values: Mapping[str, Any] | None = None,
        *,
        part: Part | None = None,
    ) -> CursorResult[Any]:
        """The same, after the book is locked and the part that changes is marked: the one that the
        statement's table is of, unless said."""
        self._mark_part(part or _part_of(statement))
        result = self._read(statement, values)
        assert isinstance(result, CursorResult)
        return result

    def _insert(self, statement: UpdateBase, *rows: Mapping[str, Any]) -> None:
        """Insert rows of this book, after the book is locked and the part marked."""
        self._mark_part(_part_of(statement) if rows else None)
        if rows:
            adding = _adding(statement, ("book_id", *rows[0]))
            adding.run_each(self._connection, [{"book_id": self._book, **row} for row in rows])

    def _mark_part(self, part: Part | None) -> None:
        """Lock the book, and let the part bear a version that no earlier turn saw."""
        if part is not None:
            self._writes[part] += 1
        if part is None:
            self._lock()
        elif self._version is None:
            self._take_version(part)
        elif part not in self._marked:
            _MARK_PART[part].run(self._connection, {"book": self._book})
            self._marked.add(part)

    def _stamp(self, part: Part | None = None) -> int:
        """What a changed note or match bears: a version that no earlier turn saw, taken now; with
        the part that is to be written, for which that saves a statement."""
        self._mark_part(part)
        assert self._version is not None, "locked just now"
        return self._version

    def _touch(self, match: MatchId) -> None:
        """Mark the match's log, or what hangs on it, as changed in this turn."""
        if match not in self._touched:
            values = {"touched": match, "version": self._stamp(Part.LOG)}
            self._write(_TOUCH, values, part=Part.LOG)
            self._touched.add(match)

    def _lock(self) -> None:
        if self._version is None:
            self._take_version()

    def _take_version(self, part: Part | None = None) -> int:
        taking = _TAKE_VERSION if part is None else _TAKE_VERSION_OF[part]
        found = taking.row(self._connection, {"book": self._book})
        if found is None:
            raise LookupError(f"no book {self._book}")
        if part is not None:
            self._marked.add(part)
        self._version, self._used = int(found.version), 0
        return self._version

    def _number(self, part: Part | None = None) -> int:
        """A number no other row of this book has, later ones larger; of the part if it is said."""
        self._mark_part(part)
        version = self._version
        if version is None or self._used == NUMBERS_PER_VERSION:
            version = self._take_version()
        number = version * NUMBERS_PER_VERSION + self._used
        self._used += 1
        return number


@cache
def _adding(statement: UpdateBase, fills: tuple[str, ...]) -> Prepared:
    """One of the few INSERTs of the book's parts, for rows of these columns."""
    return Prepared(statement, fills=fills)


def _part_of(statement: UpdateBase) -> Part | None:
    assert isinstance(statement.table, Table), "our statements write tables"
    return PART_OF[statement.table]
