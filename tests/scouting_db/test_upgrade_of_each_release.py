"""Every released schema with rows in it comes up to the newest, and keeps what it held."""

from __future__ import annotations

import json
from functools import cache
from typing import Any

import pytest
from alembic import command
from alembic.script import ScriptDirectory
from databases import NOON, new_team
from hypothesis import HealthCheck, given, settings
from random_books import books
from sqlalchemy import Connection, Engine, MetaData, create_engine, select

from scouting_db.directory import Directory
from scouting_db.exchange import KEPT, import_book
from scouting_db.migrations.configuration import configuration
from scouting_db.session import Store
from scouting_db.upgrade import REVISION, bring_up_to_date, stored_revision
from scouting_db.values import Micros, NewPost

REMADE = {"invitation", "reminder", "alembic_version"}
"""Made anew by a migration, since nothing before it wrote a row (its docstring says so)."""

Rows = dict[str, set[tuple[str, ...]]]


def released() -> list[str]:
    """Every revision that a database may still have, the newest left out."""
    with create_engine("sqlite://").connect() as connection:
        scripts = ScriptDirectory.from_config(configuration(connection))
    return sorted({one.revision for one in scripts.walk_revisions()} - {REVISION})


def rows(connection: Connection, columns: dict[str, list[str]] | None = None) -> Rows:
    """What the tables hold, as the database itself describes them; of `columns` only, if given."""
    tables = MetaData()
    tables.reflect(connection)
    return {
        name: {
            tuple(map(repr, row))
            for row in connection.execute(
                select(*(table.c[key] for key in (columns[name] if columns else table.c.keys())))
            )
        }
        for name, table in tables.tables.items()
        if name not in REMADE and (columns is None or name in columns)
    }


def columns_of(connection: Connection) -> dict[str, list[str]]:
    tables = MetaData()
    tables.reflect(connection)
    return {name: list(table.c.keys()) for name, table in tables.tables.items()}


def take_down(engine: Engine, revision: str) -> None:
    """To an earlier schema. On a plain connection: references kept by SQLite would cascade."""
    plain = create_engine(engine.url)
    with plain.begin() as connection:
        command.downgrade(configuration(connection), revision)
    plain.dispose()


@cache
def drawn() -> tuple[str, ...]:
    """Random books, the same for every release."""
    found: list[str] = []

    @settings(
        max_examples=20,
        database=None,
        derandomize=True,
        deadline=None,
        suppress_health_check=[*HealthCheck],
    )
    @given(book=books())
    def shelve(book: dict[str, Any]) -> None:
        found.append(json.dumps(book))

    shelve()
    return tuple(found)


def fill(store: Store) -> None:
    """A chat with its post, and random books until every table of a book has rows."""
    team = new_team(store, "Mira")
    with store.writing() as connection:
        directory = Directory(connection)
        directory.accept(
            team.account,
            update_id=1,
            chat=team.chat,
            kind="text",
            external_message_id=1,
            payload={"text": "okafor is a lefty"},
            now=Micros(NOON),
        )
        directory.post(team.chat, None, [NewPost(payload={"text": "Noted."})], now=Micros(NOON))

        for book in drawn():
            import_book(connection, book, owner=team.person)


@pytest.mark.parametrize("revision", released())
def test_rows_of_each_release_stay_through_the_upgrade(store: Store, revision: str) -> None:
    fill(store)
    take_down(store.engine, revision)
    with store.reading() as connection:
        assert stored_revision(connection) == revision
        before, columns = rows(connection), columns_of(connection)
    written_since = {"rally_rate"} if revision == "0001" else set()
    wanted = {"inbox", "outbox", "chat", "person", "book", *KEPT} - REMADE - written_since
    assert {name for name, found in before.items() if found} >= wanted
    bring_up_to_date(store.engine)
    with store.reading() as connection:
        assert stored_revision(connection) == REVISION
        assert rows(connection, columns) == before
