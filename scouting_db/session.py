"""A store: where the books are kept, opened by SQLAlchemy URL."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager

from sqlalchemy import Connection


class StoreError(Exception):
    """The store cannot be opened; the message says why and what to do."""


class Store:
    """An open database. Writers on SQLite take turns (BEGIN IMMEDIATE); readers never wait."""

    @contextmanager
    def writing(self) -> Iterator[Connection]:
        """A transaction that commits at the end, or rolls back when an exception leaves it."""
        raise NotImplementedError
        yield

    @contextmanager
    def reading(self) -> Iterator[Connection]:
        """A consistent view; never commits."""
        raise NotImplementedError
        yield

    def close(self) -> None:
        """Close every connection."""
        raise NotImplementedError


def open_store(url: str | None = None) -> Store:
    """The store at the URL, made or upgraded as needed; None is the file in the user's data folder.

    `sqlite://` is a database in memory; `sqlite:////folder/file` a file; `postgresql://...` a
    server. StoreError where it is newer than this program, or not ours.
    """
    raise NotImplementedError
