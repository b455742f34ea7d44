"""One book, one person, one moment: what the parts of the book share."""

from __future__ import annotations

from sqlalchemy import Connection

from scouting_db.values import BookId, BookRow, Micros, PersonId


class Scope:
    """One connection, whose transaction belongs to the caller, and one book on it."""

    def __init__(
        self, connection: Connection, book: BookId, *, person: PersonId | None, now: Micros
    ) -> None:
        self._connection = connection
        self._book = book
        self._person = person
        self._now = now

    def about(self) -> BookRow:
        """The book's name, zone and version."""
        raise NotImplementedError

    def version(self) -> int:
        """The book's count of changes: a cache key, but only before the turn's first write."""
        raise NotImplementedError

    def set_about(self, *, name: str, zone: str) -> None:
        """A new name and time zone; ValueError for a zone nobody knows."""
        raise NotImplementedError
