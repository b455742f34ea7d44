"""Inserts that yield to a row already there, in either database's dialect."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from typing import TYPE_CHECKING, Protocol, Self, cast

from sqlalchemy import Connection, Table
from sqlalchemy.dialects import sqlite
from sqlalchemy.sql.dml import Insert

if TYPE_CHECKING:
    from sqlalchemy.dialects import postgresql


class _Yielding(Protocol):
    """What the two dialects' inserts have in common."""

    def on_conflict_do_nothing(self, *, index_elements: list[str]) -> Self: ...

    def on_conflict_do_update(
        self, *, index_elements: list[str], set_: Mapping[str, object]
    ) -> Self: ...


def insert_unless_there(connection: Connection, table: Table, *key: str) -> Insert:
    """Insert, or do nothing where a row with that key stands."""
    return _unless_there(connection.dialect.name, table, key)


def insert_or_replace(connection: Connection, table: Table, *key: str) -> Insert:
    """Insert, or set every column outside the key where a row with that key stands."""
    return _or_replace(connection.dialect.name, table, key)


# Kept, because a statement object carries its own key into the cache of compiled statements.
@cache
def _unless_there(dialect: str, table: Table, key: tuple[str, ...]) -> Insert:
    statement = cast(_Yielding, _insert(dialect, table))
    return cast(Insert, statement.on_conflict_do_nothing(index_elements=list(key)))


@cache
def _or_replace(dialect: str, table: Table, key: tuple[str, ...]) -> Insert:
    statement = _insert(dialect, table)
    news = {each.name: statement.excluded[each.name] for each in table.c if each.name not in key}
    return cast(
        Insert,
        cast(_Yielding, statement).on_conflict_do_update(index_elements=list(key), set_=news),
    )


def _insert(dialect: str, table: Table) -> postgresql.Insert | sqlite.Insert:
    """The other database's dialect is loaded where it is spoken."""
    if dialect == "postgresql":
        from sqlalchemy.dialects import postgresql

        return postgresql.insert(table)
    return sqlite.insert(table)
