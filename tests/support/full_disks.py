"""A full disk, as a store on SQLite meets it: "database or disk is full" (SQLITE_FULL).

Source: sqlite.org/pragma.html, max_page_count.
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager

from sqlalchemy import Connection, event

from scouting_db.session import Store

MOST_PAGES = 1_073_741_823
"""As many as a file may have (sqlite.org/limits.html, before 3.45)."""


@contextmanager
def full_disk(store: Store, *, pages_left: int, until_refused: bool = True) -> Iterator[None]:
    """The file may grow by so many pages; there is room again after the first refusal, or else at
    the end."""
    with store.reading() as connection:
        has = int(connection.exec_driver_sql("PRAGMA page_count").scalar_one())
    most = [has + pages_left]

    def begin(connection: Connection) -> None:
        connection.exec_driver_sql(f"PRAGMA max_page_count = {most[0]}")

    def rollback(connection: Connection) -> None:
        if until_refused and connection.get_execution_options().get("seamwise_writing"):
            most[0] = MOST_PAGES

    event.listen(store.engine, "begin", begin)
    event.listen(store.engine, "rollback", rollback)
    try:
        yield
    finally:
        event.remove(store.engine, "begin", begin)
        event.remove(store.engine, "rollback", rollback)
        most[0] = MOST_PAGES
        with store.writing() as connection:
            begin(connection)
