"""One worker per store and name: a lock that ends with the process that holds it."""

from __future__ import annotations

import hashlib
import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from typing import IO

from sqlalchemy import text
from sqlalchemy.exc import DBAPIError

from scouting_db.session import Store, is_in_memory

PATIENCE_S = 12.0
"""How long a new process waits for the old one to finish its replies; a restart overlaps."""

LOOK_EVERY_S = 0.2


class AlreadyRunningError(Exception):
    """Another process works on this store under the same name."""


@contextmanager
def sole_worker(store: Store, name: str, *, patience_s: float = PATIENCE_S) -> Iterator[None]:
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
    with holder:
        yield


@contextmanager
def _nothing() -> Iterator[None]:
    yield


@contextmanager
def _file_lock(path: Path, name: str, patience_s: float) -> Iterator[None]:
    with path.open("a+b") as file:
        end = time.monotonic() + patience_s
        while not _try_lock(file):
            _wait_or_refuse(end, name)
        yield


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
def _advisory_lock(store: Store, name: str, patience_s: float) -> Iterator[None]:
    key = advisory_key(name)
    end = time.monotonic() + patience_s
    with store.engine.connect().execution_options(isolation_level="AUTOCOMMIT") as connection:
        while not connection.scalar(text("SELECT pg_try_advisory_lock(:key)"), {"key": key}):
            _wait_or_refuse(end, name)
        try:
            yield
        finally:
            # A connection that is gone has freed it already.
            with suppress(DBAPIError):
                connection.execute(text("SELECT pg_advisory_unlock(:key)"), {"key": key})


def _wait_or_refuse(end: float, name: str) -> None:
    if time.monotonic() >= end:
        raise AlreadyRunningError(
            f"Another process already serves {name} on this database. Stop it first."
        )
    time.sleep(LOOK_EVERY_S)
