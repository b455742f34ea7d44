"""What every table shares: naming of constraints, column types, and the declarative base."""

from __future__ import annotations

from typing import Annotated, Any

from sqlalchemy import (
    BigInteger,
    CheckConstraint,
    Dialect,
    Index,
    Integer,
    MetaData,
    String,
    Text,
    text,
)
from sqlalchemy.orm import DeclarativeBase, mapped_column
from sqlalchemy.types import JSON, TypeDecorator

from knowledge.regex import regex

NAMING = {
    "ix": "ix_%(table_name)s_%(column_0_N_name)s",
    "uq": "uq_%(table_name)s_%(column_0_N_name)s",
    "ck": "ck_%(table_name)s_%(constraint_name)s",
    "fk": "fk_%(table_name)s_%(column_0_N_name)s_%(referred_table_name)s",
    "pk": "pk_%(table_name)s",
}
"""Every constraint has a name that a migration can speak of, on both databases."""

_NOT_KEEPABLE = regex("[\0\ud800-\udfff]")


class Typed(TypeDecorator[str]):
    """Text as people type it, kept to the letter.

    Only what a database cannot keep, NUL and half a surrogate pair, becomes U+FFFD, one for
    one, so that spans into the text stay right.
    """

    impl = Text
    cache_ok = True

    @property
    def python_type(self) -> type[str]:
        return str

    def process_bind_param(self, value: str | None, dialect: Dialect) -> str | None:  # noqa: ARG002
        return None if value is None else _NOT_KEEPABLE.sub("\ufffd", value)


# Ids of rows are at most 2^63 - 1; SQLite gives rowids only to a plain INTEGER key.
Big = BigInteger().with_variant(Integer(), "sqlite")

Id = Annotated[int, mapped_column(Big)]
RowId = Annotated[int, mapped_column(Big, primary_key=True, autoincrement=True)]
KeyId = Annotated[int, mapped_column(Big, primary_key=True, autoincrement=False)]
Micros = Annotated[int, mapped_column(BigInteger)]
"""A time: microseconds since 1970 in UTC. SQLite drops zones, so no zone is stored."""

Changed = Annotated[int, mapped_column(BigInteger, server_default="0")]
"""The book's version that last changed the row or what hangs on it; 0 for rows put in whole."""

Word = Annotated[str, mapped_column(String(64))]
Words = Annotated[str, mapped_column(Typed)]
Json = Annotated[dict[str, Any], mapped_column(JSON)]


class Base(DeclarativeBase):
    """The declarative base: typed models for the schema and its migrations."""

    metadata = MetaData(naming_convention=NAMING)


def index_where(name: str, *columns: str, where: str) -> Index:
    """An index of the rows that it is true of.

    What PostgreSQL is told of it waits for `tell_postgresql`: its dialect, 2 MB with the drivers
    that it knows, is loaded for whoever mentions it.
    """
    return Index(name, *columns, sqlite_where=text(where), info={_WHERE: where})


def tell_postgresql(metadata: MetaData) -> None:
    """Before tables are made or compared there: which rows its indexes have."""
    for table in metadata.tables.values():
        for index in table.indexes:
            if _WHERE in index.info:
                index.dialect_options["postgresql"]["where"] = text(index.info[_WHERE])


_WHERE = "where"


def one_of(column: str, *values: str) -> CheckConstraint:
    """The database refuses any other value (or null, where the column allows it)."""
    listed = ", ".join(f"'{value}'" for value in values)
    return CheckConstraint(f"{column} IN ({listed})", name=column)
