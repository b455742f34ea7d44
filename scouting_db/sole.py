"""One worker per store and name: a lock that ends with the process that holds it."""

from __future__ import annotations

import hashlib
import sys
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from typing import IO

from sqlalchemy import Connection, text
from sqlalchemy.exc import SQLAlchemyError

from scouting_db.session import Store, is_in_memory

PATIENCE_S = 12.0
"""How long a new process waits for the old one to finish its replies; a restart overlaps."""

LOOK_EVERY_S = 0.2

_TRY = text("SELECT pg_try_advisory_lock(:key)")
_FREE = text("SELECT pg_advisory_unlock(:key)")
_STILL_THERE = text("SELECT 1")


StillAlone = Callable[[], None]
"""To ask before each piece of work: AlreadyRunningError where the lock was lost meanwhile and
another has it. A PostgreSQL that is restarted frees every lock; then it is taken once more."""


class AlreadyRunningError(Exception):
    """Another process works on this store under the same name."""


@contextmanager
def sole_worker(store: Store, name: str, *, patience_s: float = PATIENCE_S) -> Iterator[StillAlone]:
    """Hold the lock while the block runs; AlreadyRunningError where another keeps it.

    SQLite: a lock on a file beside the database. PostgreSQL: an advisory lock, held by a
    connection of its own. A database in memory needs none. Blocks while it waits.
    """
    if store.engine.dialect.name == "postgresql":
        holder = _advisory_lock(store, name, patience_s)
    elif is_in_memory(store.engine.url):
        holder = _nothing()
    else:
        holder = _file_lock(Path(f"{store.engine.url.database}.{name}.lock"), name, patience_s)
    with holder as still_alone:
        yield still_alone


def _surely() -> None:
    """Nobody can take the lock from a process that lives."""


@contextmanager
def _nothing() -> Iterator[StillAlone]:
    yield _surely


@contextmanager
def _file_lock(path: Path, name: str, patience_s: float) -> Iterator[StillAlone]:
    with path.open("a+b") as file:
        end = time.monotonic() + patience_s
        while not _try_lock(file):
            _wait_or_refuse(end, name)
        yield _surely


def _try_lock(file: IO[bytes]) -> bool:
    """The operating system frees such a lock when the process ends, however it ends."""
    try:
        if sys.platform == "win32":
            import msvcrt

            msvcrt.locking(file.fileno(), msvcrt.LK_NBLCK, 1)
        else:
            import fcntl

            fcntl.flock(file.fileno(), fcntl.LOCK_EX | fcntl.LOCK_NB)
    except OSError:
        return False
    return True


def advisory_key(name: str) -> int:
    """PostgreSQL's key for the lock of that name, which workers beside each other share."""
    return int.from_bytes(hashlib.sha256(name.encode()).digest()[:8], "big", signed=True)


@contextmanager
def _advisory_lock(store: Store, name: str, patience_s: float) -> Iterator[StillAlone]:
    lock = _AdvisoryLock(store, name)
    end = time.monotonic() + patience_s
    while not lock.take():
        _wait_or_refuse(end, name)
    try:
        yield lock.check
    finally:
        lock.free()


class _AdvisoryLock:
    """On a connection of its own, and not back into the pool, where another user would hold it."""

    def __init__(self, store: Store, name: str) -> None:
        self._store = store
        self._name = name
        self._key = {"key": advisory_key(name)}
        self._connection: Connection | None = None

    def take(self) -> bool:
        connection = self._store.engine.connect().execution_options(isolation_level="AUTOCOMMIT")
        if not connection.scalar(_TRY, self._key):
            connection.close()
            return False
        connection.detach()
        self._connection = connection
        return True

    def check(self) -> None:
        if self._connection is not None and self._is_there(self._connection):
            return
        self.free()
        if not self.take():
            raise _refusal(self._name)

    def _is_there(self, connection: Connection) -> bool:
        try:
            connection.execute(_STILL_THERE)
        except SQLAlchemyError:
            return False
        return True

    def free(self) -> None:
        connection, self._connection = self._connection, None
        if connection is not None:
            # A connection that is gone has freed it already.
            with suppress(SQLAlchemyError):
                connection.execute(_FREE, self._key)
            with suppress(SQLAlchemyError):
                connection.close()


def _wait_or_refuse(end: float, name: str) -> None:
    if time.monotonic() >= end:
        raise _refusal(name)
    time.sleep(LOOK_EVERY_S)


def _refusal(name: str) -> AlreadyRunningError:
    return AlreadyRunningError(
        f"Another process already serves {name} on this database. Stop it first."
    )
