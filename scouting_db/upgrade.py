"""Bringing a database to this program's schema, with a copy of a SQLite file taken before."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterator
from contextlib import closing, contextmanager
from pathlib import Path

from sqlalchemy import Connection, Engine, inspect, text

import scouting_db.models  # noqa: F401 - fills the metadata
from scouting_db.base import Base

REVISION = "0007"
"""The newest migration; a test compares it with the scripts. Equal means nothing to do."""

SCRIPTS = "scouting_db:migrations"
"""Where the migrations are."""

_UPGRADE_LOCK = 7_326_114
"""Number of the PostgreSQL advisory lock under which upgrades take turns; any constant would do."""


class StoreError(Exception):
    """The store cannot be opened; the message says why and what to do."""


def bring_up_to_date(engine: Engine, *, newest: str = REVISION, scripts: str = SCRIPTS) -> None:
    """Make or upgrade the tables where they are behind; StoreError where that cannot be done.

    1. Compare the stored revision: the usual start ends here. 2. Take the lock and look again,
    since another process may have been faster. 3. Copy a SQLite file. 4. Run the migrations in
    the same transaction: all or nothing.
    """
    with engine.connect() as connection:
        if stored_revision(connection) == newest:
            return
    with _locked(engine) as connection:
        revision = stored_revision(connection)
        if revision == newest:
            return
        if revision is None:
            _refuse_foreign_tables(connection)
        else:
            _copy_file(engine, revision)
        _migrate(connection, revision, newest=newest, scripts=scripts)


def make_in_memory(engine: Engine) -> None:
    """The newest tables in a database in memory, at once: nothing older was ever in it.

    What all migrations together would have made (a test compares), without importing Alembic.
    """
    with engine.begin() as connection:
        Base.metadata.create_all(connection, checkfirst=False)
        connection.execute(text(_VERSION_TABLE))
        connection.execute(text("INSERT INTO alembic_version VALUES (:n)"), {"n": REVISION})


_VERSION_TABLE = """CREATE TABLE alembic_version (
    version_num VARCHAR(32) NOT NULL, CONSTRAINT alembic_version_pkc PRIMARY KEY (version_num)
)"""
"""As Alembic itself makes it, so that a copy kept as a file can be upgraded later."""


def stored_revision(connection: Connection) -> str | None:
    """The revision that the database says it has; None without one."""
    if not inspect(connection).has_table("alembic_version"):
        return None
    return connection.execute(text("SELECT version_num FROM alembic_version")).scalar()


@contextmanager
def _locked(engine: Engine) -> Iterator[Connection]:
    """A transaction that no other upgrade shares; commits at the end."""
    if engine.dialect.name == "postgresql":
        with engine.begin() as connection:
            connection.execute(text("SELECT pg_advisory_xact_lock(:n)"), {"n": _UPGRADE_LOCK})
            yield connection
        return
    with engine.connect() as connection:
        raw = connection.connection.dbapi_connection
        assert isinstance(raw, sqlite3.Connection)
        # A migration that rebuilds a table drops the old one, which would cascade; SQLite
        # changes this setting only outside a transaction.
        raw.execute("PRAGMA foreign_keys = OFF")
        try:
            with connection.execution_options(seamwise_writing=True).begin():
                yield connection
                _refuse_broken_references(connection)
        finally:
            raw.execute("PRAGMA foreign_keys = ON")


def _refuse_broken_references(connection: Connection) -> None:
    broken = connection.exec_driver_sql("PRAGMA foreign_key_check").fetchall()
    if broken:
        raise StoreError(f"The upgrade would break references: {broken[:3]}. Nothing was changed.")


def _refuse_foreign_tables(connection: Connection) -> None:
    tables = inspect(connection).get_table_names()
    if tables:
        raise StoreError(
            f"This database has tables that are not Seamwise's ({', '.join(sorted(tables)[:3])}). "
            "Name another file or database."
        )


def _copy_file(engine: Engine, revision: str) -> Path | None:
    """A copy beside the file, as it was at the revision; None for a database that is no file.

    The backup reads what is committed while our own transaction keeps writers out.
    """
    if engine.dialect.name != "sqlite" or engine.url.database in (None, "", ":memory:"):
        return None
    source = Path(str(engine.url.database))
    target = _free_name(source, revision)
    with closing(sqlite3.connect(source)) as old, closing(sqlite3.connect(target)) as copy:
        old.backup(copy)
    return target


def _free_name(source: Path, revision: str) -> Path:
    """A name not yet taken: an earlier copy may be the good one."""
    target = source.with_name(f"{source.name}.{revision}.bak")
    count = 1
    while target.exists():
        count += 1
        target = source.with_name(f"{source.name}.{revision}.{count}.bak")
    return target


def _migrate(connection: Connection, revision: str | None, *, newest: str, scripts: str) -> None:
    """Run the migrations in the caller's transaction; alembic is imported only here."""
    from alembic import command
    from alembic.util import CommandError

    from scouting_db.migrations.configuration import configuration

    try:
        command.upgrade(configuration(connection, scripts), newest)
    except CommandError as error:
        raise StoreError(
            f"This database was written by another version of Seamwise (revision {revision}, "
            f"this program knows {newest}). Install the newer version. ({error})"
        ) from error
