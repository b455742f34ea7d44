"""A store: where the books are kept, opened by SQLAlchemy URL."""

from __future__ import annotations

import os
import sqlite3
from collections.abc import Iterator
from contextlib import AbstractContextManager, contextmanager, nullcontext
from pathlib import Path
from threading import RLock
from time import monotonic, sleep
from typing import Any

from platformdirs import user_data_path
from sqlalchemy import Connection, Engine, create_engine, event
from sqlalchemy.engine import URL, make_url
from sqlalchemy.exc import ArgumentError, OperationalError
from sqlalchemy.pool import StaticPool

from scouting_db.base import Base, tell_postgresql
from scouting_db.passing import is_passing
from scouting_db.prepared import run_text
from scouting_db.upgrade import StoreError, bring_up_to_date, make_in_memory

__all__ = ["Store", "StoreError", "default_url", "open_store", "savepoint"]

BUSY_TIMEOUT_MS = 10_000
"""How long a writer waits for another before it fails; turns take milliseconds."""

BETWEEN_TRIES_S = 0.005
"""Pause before the switch to write-ahead logging is tried again."""

LOG_PAGES = 8_000
"""Pages in SQLite's write-ahead log (32 MB) at which a commit itself moves them into the database:
eight times SQLite's own default, since a commit that does is some 20 ms late (measured, ext4) and
whoever serves does it beside its commits (`Store.tidy`). A guess; the log is that large at most."""

OLDEST_SQLITE = (3, 35, 0)
"""The first SQLite with RETURNING."""

_WRITING = "seamwise_writing"


class Store:
    """An open database. Writers on SQLite take turns (BEGIN IMMEDIATE); readers never wait."""

    def __init__(self, engine: Engine, *, late: bool = False) -> None:
        """`late` as `open_store` has it."""
        self.engine = engine
        self._writer = engine.execution_options(**{_WRITING: True})
        self._reader = engine.execution_options(**_reading_options(engine))
        # A database in memory is one connection, so there transactions take turns.
        alone = isinstance(engine.pool, StaticPool)
        self._turn: AbstractContextManager[Any] = RLock() if alone else nullcontext()
        self._log = _log_of(engine) if late else None

    @contextmanager
    def writing(self) -> Iterator[Connection]:
        """A transaction that commits at the end, or rolls back when an exception leaves it."""
        with self._turn, self._writer.connect() as connection, connection.begin():
            yield connection

    @contextmanager
    def reading(self) -> Iterator[Connection]:
        """A consistent view; never commits."""
        with self._turn, self._reader.connect() as connection:
            yield connection

    @property
    def is_late(self) -> bool:
        """Whether a power cut may take what was committed since the last `sync`."""
        return self._log is not None

    def sync(self) -> None:
        """From now on a power cut leaves what was committed until now; OSError where the disk does
        not take it. Not needed, and nothing done, where each commit is on the disk by itself.

        The log is opened anew since SQLite may have made another; it holds no lock on this file,
        which closing it could lose (SQLite, "How To Corrupt", 2.2, is of the database's own).
        """
        if self._log is None:
            return
        try:
            log = os.open(self._log, os.O_RDWR)
        except FileNotFoundError:  # moved into the database, and that synced, with its last user
            return
        try:
            os.fsync(log)
        finally:
            os.close(log)

    def tidy(self) -> None:
        """Move what was committed from SQLite's log into the database, beside whoever writes.

        SQLite, "wal_checkpoint": PASSIVE does as much as it can without waiting for anybody.
        Nothing to do on PostgreSQL, which has a process of its own for that.
        """
        if self.engine.dialect.name == "sqlite":
            with self.reading() as connection:
                connection.exec_driver_sql("PRAGMA wal_checkpoint(PASSIVE)")

    def close(self) -> None:
        """Close every connection."""
        self.engine.dispose()


@contextmanager
def savepoint(connection: Connection) -> Iterator[None]:
    """What is done inside is undone where an exception leaves it, the rest of the transaction not.

    As `Connection.begin_nested`, which makes its statements anew each time: for a turn that is as
    much work as four statements. One inside another is a mistake here: they have the same name.
    Where the database refuses, the whole transaction is over and the caller's to roll back.
    """
    run_text(connection, "SAVEPOINT turn")
    try:
        yield
    except BaseException as error:
        if is_passing(error):
            raise
        run_text(connection, "ROLLBACK TO SAVEPOINT turn")
        run_text(connection, "RELEASE SAVEPOINT turn")
        raise
    run_text(connection, "RELEASE SAVEPOINT turn")


def _reading_options(engine: Engine) -> dict[str, Any]:
    """SQLite's readers see one moment anyway."""
    if engine.dialect.name == "postgresql":
        return {"isolation_level": "REPEATABLE READ"}
    return {}


def default_url() -> str:
    """A SQLite file in the user's data folder."""
    path = user_data_path("seamwise", appauthor=False, ensure_exists=True) / "seamwise.sqlite"
    return str(URL.create("sqlite", database=str(path)))


def open_store(url: str | None = None, *, late: bool = False) -> Store:
    """The store at the URL, made or upgraded as needed; None is the file in the user's data folder.

    `sqlite://` is a database in memory; `sqlite:////folder/file` a file; `postgresql://...` a
    server. `late`: whoever opens it calls `sync` before it promises anybody that something is kept;
    for a file of SQLite only, elsewhere each commit is kept as it is made.
    StoreError where it is newer than this program, not ours, or cannot be reached.
    """
    engine = _engine(_parsed(url or default_url()), late=late)
    try:
        if is_in_memory(engine.url):
            make_in_memory(engine)
        else:
            bring_up_to_date(engine)
    except OperationalError as error:
        engine.dispose()
        raise StoreError(f"Cannot open {_shown(engine.url)}: {error.orig}") from error
    except BaseException:
        engine.dispose()
        raise
    return Store(engine, late=late)


def _parsed(text: str) -> URL:
    try:
        url = make_url(text)
    except ArgumentError:
        raise StoreError(
            f"{text!r} is not a database URL. Expected sqlite:////folder/file.sqlite "
            "or postgresql://user@host/name."
        ) from None
    if url.drivername in ("postgres", "postgresql"):
        return url.set(drivername="postgresql+psycopg")
    if url.get_backend_name() not in ("sqlite", "postgresql"):
        raise StoreError(f"Only sqlite and postgresql are supported, not {url.drivername}.")
    return url


def _shown(url: URL) -> str:
    return url.render_as_string(hide_password=True)


def _engine(url: URL, *, late: bool = False) -> Engine:
    if url.get_backend_name() == "postgresql":
        return _postgresql(url)
    return _sqlite(url, late=late)


def _postgresql(url: URL) -> Engine:
    tell_postgresql(Base.metadata)
    try:
        return create_engine(url, pool_pre_ping=True, hide_parameters=True)
    except ModuleNotFoundError:
        raise StoreError(
            "PostgreSQL needs its driver: install with pip install '.[postgres]'."
        ) from None


def _sqlite(url: URL, *, late: bool) -> Engine:
    if sqlite3.sqlite_version_info < OLDEST_SQLITE:
        raise StoreError(f"SQLite {sqlite3.sqlite_version} is too old: 3.35 or newer is needed.")
    arguments: dict[str, Any] = {
        # Errors are logged, and what people write is not for the log.
        "hide_parameters": True,
        "connect_args": {
            # The driver must not begin transactions of its own: it would do so only at the
            # first write, and a read-then-write would lose another writer's change.
            "isolation_level": None,
            "check_same_thread": False,
            "timeout": BUSY_TIMEOUT_MS / 1000,
        },
    }
    if is_in_memory(url):
        arguments["poolclass"] = StaticPool
    else:
        _make_folder(Path(str(url.database)).parent)
    engine = create_engine(url, **arguments)
    event.listen(engine, "connect", _set_up_late if late else _set_up_sqlite)
    event.listen(engine, "begin", _begin_sqlite)
    return engine


def _make_folder(folder: Path) -> None:
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise StoreError(f"Cannot open a database in {folder}: {error.strerror}") from None


def is_in_memory(url: URL) -> bool:
    return url.database in (None, "", ":memory:")


def _log_of(engine: Engine) -> Path | None:
    """Where SQLite writes what is committed (https://sqlite.org/wal.html): the database's name and
    `-wal`. None where nothing is written to a file, or not by us.
    """
    if engine.dialect.name != "sqlite" or is_in_memory(engine.url):
        return None
    return Path(f"{engine.url.database}-wal")


def _set_up_sqlite(connection: sqlite3.Connection, _record: object) -> None:
    """Pragmas of each connection.

    synchronous FULL: neither kill -9 nor a power cut takes a commit once it is made.
    """
    _set_up(connection)
    connection.execute("PRAGMA synchronous = FULL")


def _set_up_late(connection: sqlite3.Connection, _record: object) -> None:
    """The same, but a commit does not wait for the disk (2 to 4 ms, measured on ext4).

    synchronous NORMAL: kill -9 takes no commit; a power cut may take the last ones, but none before
    one that is left, and none from before the last `Store.sync` (SQLite, "pragma synchronous").
    """
    _set_up(connection)
    connection.execute("PRAGMA synchronous = NORMAL")


def _set_up(connection: sqlite3.Connection) -> None:
    _switch_to_wal(connection)
    connection.execute("PRAGMA foreign_keys = ON")
    connection.execute(f"PRAGMA wal_autocheckpoint = {LOG_PAGES}")


def _switch_to_wal(connection: sqlite3.Connection) -> None:
    """Several that open a fresh file at once: SQLite answers this pragma alone without waiting."""
    last_try = monotonic() + BUSY_TIMEOUT_MS / 1000
    while True:
        try:
            connection.execute("PRAGMA journal_mode = WAL")
            return
        except sqlite3.OperationalError as error:
            if error.sqlite_errorcode != sqlite3.SQLITE_BUSY or monotonic() > last_try:
                raise
            sleep(BETWEEN_TRIES_S)


def _begin_sqlite(connection: Connection) -> None:
    """A writer takes the lock at once; a reader's view is fixed by its first read."""
    writing = connection.get_execution_options().get(_WRITING, False)
    connection.exec_driver_sql("BEGIN IMMEDIATE" if writing else "BEGIN")
