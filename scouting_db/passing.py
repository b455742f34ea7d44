"""Database errors that pass by themselves, and say nothing about what was being written."""

from __future__ import annotations

from sqlalchemy.exc import DBAPIError

PASSING_CLASSES = ("08", "40", "53", "57")
"""PostgreSQL, Appendix A, classes of error codes: connection exception, transaction rollback
(deadlock, serialization), insufficient resources (disk full), operator intervention (shutdown)."""


def is_passing(error: BaseException) -> bool:
    """Whether PostgreSQL says so, or the connection to it broke.

    SQLite's errors of this kind (full, locked) come back by themselves: whoever counts the failed
    attempt meets them again.
    """
    if not isinstance(error, DBAPIError):
        return False
    if error.connection_invalidated:
        return True
    state = getattr(error.orig, "sqlstate", None)
    return isinstance(state, str) and state[:2] in PASSING_CLASSES
