"""Stores for tests: a SQLite file, and a database of its own on the PostgreSQL that .ci/run starts.

A conftest.py makes the fixture `store` (both databases) known to its folder:
`from databases import database_url, migrated, store` and the same names in `__all__`.
"""

from __future__ import annotations

import os
import shutil
import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import Any
from uuid import uuid4

import pytest
from compiled import compiling_once
from sqlalchemy import Connection, Engine, create_engine, event, inspect, text
from sqlalchemy.engine import URL, make_url

from scouting_db.base import Base
from scouting_db.book import Book
from scouting_db.directory import Directory
from scouting_db.session import Store, is_in_memory, open_store
from scouting_db.upgrade import REVISION
from scouting_db.values import AccountId, BookId, ChatId, Micros, PersonId

NOON = 1_750_000_000_000_000
"""Some moment of June 2025, in microseconds since 1970."""

POSTGRES = "SEAMWISE_TEST_POSTGRES"

BOTH = [
    pytest.param("sqlite", id="sqlite"),
    pytest.param("postgresql", id="postgresql", marks=pytest.mark.postgres),
]


@pytest.fixture(params=BOTH)
def database_url(request: pytest.FixtureRequest, tmp_path: Path) -> Iterator[str]:
    """The URL of an empty database that nobody else uses."""
    if request.param == "sqlite":
        yield f"sqlite:///{tmp_path / 'book.sqlite'}"
    else:
        with new_postgresql() as url:
            yield shown(url)


@pytest.fixture(scope="session", params=BOTH)
def migrated(
    request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory
) -> Iterator[URL]:
    """A migrated database, so that the migrations run once and not in every test: a SQLite file to
    copy, or a database on PostgreSQL to empty, for which a new one would cost five times as long.
    """
    if request.param == "sqlite":
        url = make_url(f"sqlite:///{tmp_path_factory.mktemp('migrated') / 'book.sqlite'}")
        open_store(shown(url)).close()
        yield url
    else:
        with new_postgresql() as url:
            open_store(shown(url)).close()
            yield url


@pytest.fixture
def store(migrated: URL, tmp_path: Path) -> Iterator[Store]:
    """An open store with nothing in it."""
    if migrated.get_backend_name() == "sqlite":
        copy = tmp_path / "book.sqlite"
        shutil.copy(str(migrated.database), copy)
        with opened(f"sqlite:///{copy}") as made:
            yield made
    else:
        with opened(shown(migrated)) as made:
            yield made
        empty(migrated)


@contextmanager
def opened(url: str) -> Iterator[Store]:
    """The store at the URL, closed afterwards."""
    made = Store(compiling_once(open_store(url).engine))
    if made.engine.dialect.name == "sqlite" and not is_in_memory(made.engine.url):
        made.engine.dispose()
        event.listen(made.engine, "connect", _not_waiting_for_the_disk)
    yield made
    made.close()


def _not_waiting_for_the_disk(connection: sqlite3.Connection, _record: object) -> None:
    """What a power cut would lose no test of these looks at, and each commit waits for the disk."""
    connection.execute("PRAGMA synchronous = OFF")


def empty(url: URL) -> None:
    """As it was when it was migrated: no row in any of our tables, no connection that a test
    forgot, and whole again where a test took a table away or set the revision back.
    """
    engine = create_engine(url, isolation_level="AUTOCOMMIT")
    _run(
        engine,
        "SELECT pg_terminate_backend(pid) FROM pg_stat_activity"
        " WHERE datname = current_database() AND pid <> pg_backend_pid()",
    )
    is_whole = _is_whole(engine)
    if is_whole:
        _run(engine, f"TRUNCATE {', '.join(Base.metadata.tables)} RESTART IDENTITY CASCADE")
    else:
        _run(engine, "DROP SCHEMA public CASCADE")
        _run(engine, "CREATE SCHEMA public")
    engine.dispose()
    if not is_whole:
        open_store(shown(url)).close()


def _is_whole(engine: Engine) -> bool:
    with engine.connect() as connection:
        tables = {*inspect(connection).get_table_names()}
        if not tables >= {*Base.metadata.tables, "alembic_version"}:
            return False
        revision = connection.execute(text("SELECT version_num FROM alembic_version")).scalar()
        return bool(revision == REVISION)


@contextmanager
def new_postgresql() -> Iterator[URL]:
    """A new database on the test server, dropped afterwards."""
    server = os.environ.get(POSTGRES)
    if not server:
        pytest.skip(f"{POSTGRES} is not set: no PostgreSQL server to test on")
    name = f"seamwise_{uuid4().hex}"
    engine = create_engine(server, isolation_level="AUTOCOMMIT")
    _run(engine, f"CREATE DATABASE {name} TEMPLATE template0{_strategy(engine)}")
    try:
        yield make_url(server).set(database=name)
    finally:
        _run(engine, f"DROP DATABASE {name} WITH (FORCE)")
        engine.dispose()


def _strategy(engine: Engine) -> str:
    """Files are copied as they are, and not through the log ("CREATE DATABASE", PostgreSQL 15)."""
    with engine.connect() as connection:
        version = connection.dialect.server_version_info or (0,)
    return " STRATEGY FILE_COPY" if version >= (15,) else ""


def _run(engine: Engine, statement: str) -> None:
    with engine.connect() as connection:
        connection.execute(text(statement))


def shown(url: URL) -> str:
    return url.render_as_string(hide_password=False)


@dataclass(frozen=True, slots=True, kw_only=True)
class Team:
    """A person with an account, a chat and a book of their own."""

    account: AccountId
    chat: ChatId
    person: PersonId
    book_id: BookId

    def book(self, connection: Connection, *, now: int = NOON) -> Book:
        return Book(connection, self.book_id, person=self.person, now=Micros(now))


def new_team(store: Store, name: str) -> Team:
    """A team that has just started; every name is another team on the same account."""
    with store.writing() as connection:
        directory = Directory(connection)
        account = directory.account("console", "console:test")
        chat = directory.chat(account, f"chat of {name}")
        person = directory.person(account, f"user {name}", name)
        book = directory.settle_book(chat, person, name=f"Book of {name}")
        return Team(account=account, chat=chat.chat, person=person, book_id=book)


@contextmanager
def watched(store: Store) -> Iterator[list[tuple[str, Any]]]:
    """The statements run inside, with their parameters."""
    seen: list[tuple[str, Any]] = []

    def note(
        _connection: Any, _cursor: Any, statement: str, parameters: Any, _context: Any, _many: Any
    ) -> None:
        if not statement.startswith(("BEGIN", "SAVEPOINT", "RELEASE", "ROLLBACK")):
            seen.append((statement, parameters))

    event.listen(store.engine, "before_cursor_execute", note)
    yield seen
    event.remove(store.engine, "before_cursor_execute", note)
