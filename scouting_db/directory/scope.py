"""The connection that the parts of the directory share."""

from __future__ import annotations

from sqlalchemy import Connection


class Scope:
    """One connection; the transaction it is in belongs to the caller."""

    def __init__(self, connection: Connection) -> None:
        self._connection = connection
