"""Which worker may send to a chat: held by a connection, and free as soon as that ends.

PostgreSQL, "Advisory Locks" (Explicit Locking): a session-level advisory lock is held until it is
released or the session ends, however that ends; the shared form of a lock does not conflict with
itself, only with the exclusive one. So a worker that is killed leaves nothing behind, and a row
marked as being sent whose chat nobody holds was left by one that died.
"""

from __future__ import annotations

import contextlib
import time
from collections.abc import Collection

from sqlalchemy import Connection, TextClause, text
from sqlalchemy.exc import DBAPIError, SQLAlchemyError

from scouting_db.lock_keys import LockKind, lock_key
from scouting_db.session import Store
from scouting_db.sole import LOOK_EVERY_S, AlreadyRunningError, advisory_key
from scouting_db.values import ChatId

_TRY_SHARED = text("SELECT pg_try_advisory_lock_shared(:key)")
# In the list of what is selected, where each row is evaluated once and none is skipped.
_TRY = text(
    "SELECT one.key, pg_try_advisory_lock(one.key) FROM unnest(CAST(:keys AS bigint[])) AS one(key)"
)
_FREE = text(
    "SELECT one.key, pg_advisory_unlock(one.key) FROM unnest(CAST(:keys AS bigint[])) AS one(key)"
)
_FREE_ALL = text("SELECT pg_advisory_unlock_all()")
_STILL_THERE = text("SELECT 1")
# A lock with one 64-bit key: classid holds its upper half, objid its lower, objsubid is 1
# (PostgreSQL, "pg_locks").
_SHARERS = text(
    """
    SELECT count(*) FROM pg_locks
    WHERE locktype = 'advisory' AND granted AND objsubid = 1
      AND classid = :upper AND objid = :lower
      AND database = (SELECT oid FROM pg_database WHERE datname = current_database())
    """
)


class HoldsLostError(Exception):
    """The connection broke, and with it everything that was held."""


class ChatHolds:
    """One worker's chats, on a connection of its own. For one thread at a time.

    `name` is the one under which `sole_worker` would work alone: that lock is shared here, so
    any number of workers run together, and none beside a process that must be alone.
    """

    def __init__(self, store: Store, name: str) -> None:
        self._store = store
        self._name = name
        self._key = advisory_key(name)
        self._connection: Connection | None = None
        self._held: frozenset[ChatId] = frozenset()
        self._is_lost = False

    @property
    def held(self) -> frozenset[ChatId]:
        """The chats that nobody else sends to now."""
        return self._held

    def open(self, *, patience_s: float) -> None:
        """Join the workers; AlreadyRunningError where a process works alone and stays."""
        end = time.monotonic() + patience_s
        while not self._join():
            if time.monotonic() >= end:
                raise AlreadyRunningError(
                    f"Another process already serves {self._name} on this database by itself. "
                    "Stop it first."
                )
            time.sleep(LOOK_EVERY_S)

    def check(self) -> None:
        """HoldsLostError where the connection broke, until `recover`; then there is a new one."""
        if self._is_lost:
            raise HoldsLostError
        if self._connection is None:
            self.open(patience_s=0)
        try:
            self._connected.execute(_STILL_THERE)
        except DBAPIError as error:
            self._lose()
            raise HoldsLostError from error

    def recover(self) -> None:
        """Whoever sent to our chats has stopped; the next `check` joins again."""
        self._is_lost = False

    def take(self, chats: Collection[ChatId]) -> frozenset[ChatId]:
        """Try to hold these too; those of them that were not ours before and are now."""
        wanted = [one for one in dict.fromkeys(chats) if one not in self._held]
        if not wanted:
            return frozenset()
        by_key = {lock_key(LockKind.SENDING, one): one for one in wanted}
        rows = self._run(_TRY, by_key)
        taken = frozenset(by_key[row[0]] for row in rows if row[1])
        self._held |= taken
        return taken

    def release(self, chats: Collection[ChatId]) -> None:
        """Let others send to these; only once what we sent there is committed as sent."""
        ours = self._held.intersection(chats)
        if ours:
            self._run(_FREE, [lock_key(LockKind.SENDING, one) for one in ours])
            self._held -= ours

    def workers(self) -> int:
        """How many workers are connected, this one among them."""
        unsigned = self._key % (1 << 64)
        values = {"upper": unsigned >> 32, "lower": unsigned & 0xFFFF_FFFF}
        return int(self._connected.execute(_SHARERS, values).scalar_one())

    def close(self) -> None:
        """Free everything."""
        if self._connection is not None:
            # At once, where the end of the session is noticed only a moment later.
            with contextlib.suppress(SQLAlchemyError):
                self._connection.execute(_FREE_ALL)
        self._leave()

    @property
    def _connected(self) -> Connection:
        assert self._connection is not None, "opened before"
        return self._connection

    def _join(self) -> bool:
        connection = self._store.engine.connect().execution_options(isolation_level="AUTOCOMMIT")
        try:
            joined = bool(connection.execute(_TRY_SHARED, {"key": self._key}).scalar())
        except BaseException:
            connection.close()
            raise
        if not joined:
            connection.close()
            return False
        # Never back into the pool, where another user of it would hold our locks.
        connection.detach()
        self._connection = connection
        return True

    def _run(self, statement: TextClause, keys: Collection[int]) -> list[tuple[int, bool]]:
        try:
            found = self._connected.execute(statement, {"keys": list(keys)})
            return [tuple(row) for row in found]
        except DBAPIError as error:
            self._lose()
            raise HoldsLostError from error

    def _lose(self) -> None:
        self._is_lost = True
        self._leave()

    def _leave(self) -> None:
        connection, self._connection, self._held = self._connection, None, frozenset()
        if connection is not None:
            # Closing one that is broken already may fail; it is gone either way.
            with contextlib.suppress(SQLAlchemyError):
                connection.close()
