"""When the database as a whole refuses: its disk is full, another holds it, it went away."""

from __future__ import annotations

import sqlite3

from sqlalchemy.exc import DBAPIError, OperationalError, PendingRollbackError

_SQLITE = frozenset(
    (
        sqlite3.SQLITE_BUSY,
        sqlite3.SQLITE_LOCKED,
        sqlite3.SQLITE_NOMEM,
        sqlite3.SQLITE_READONLY,
        sqlite3.SQLITE_INTERRUPT,
        sqlite3.SQLITE_IOERR,
        sqlite3.SQLITE_FULL,
        sqlite3.SQLITE_CANTOPEN,
        sqlite3.SQLITE_PROTOCOL,
    )
)
"""sqlite.org/rescode.html."""

_POSTGRESQL = frozenset(("08", "40", "53", "57", "58"))
"""Classes of codes: connection, deadlock, resources (a full disk is one), operator, system.
PostgreSQL documentation, appendix A."""

PRIMARY_CODE = 0xFF
"""The bits of SQLite's extended codes that say what it is at all."""


def is_passing(error: BaseException) -> bool:
    """Whether the database refused, and not this statement: the same may do in a moment.

    Then the transaction is over, whole: SQLite may have rolled it back by itself
    (sqlite.org/lang_transaction.html, "Response To Errors Within A Transaction"), and what
    was written afterwards would stand alone.
    """
    if isinstance(error, PendingRollbackError):
        return True
    if not isinstance(error, DBAPIError):
        return False
    if error.connection_invalidated:
        return True
    if isinstance(error.orig, sqlite3.Error):
        code = getattr(error.orig, "sqlite_errorcode", 0)
        return (code & PRIMARY_CODE) in _SQLITE
    state = getattr(error.orig, "sqlstate", None)
    if state is None:  # no connection, and so nobody who could give a code
        return isinstance(error, OperationalError)
    return state[:2] in _POSTGRESQL
