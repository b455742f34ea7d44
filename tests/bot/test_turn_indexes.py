"""Every statement of a turn finds its rows by an index, on both databases, as each explains it.

SQLite: https://www.sqlite.org/eqp.html ("SEARCH" visits a subset of the rows, "SCAN" all of them).
PostgreSQL: with `enable_seqscan` off its planner reads a whole table only where no index serves
(https://www.postgresql.org/docs/current/runtime-config-query.html).
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Any

from databases import watched
from talk import SATURDAY, Talk

from bot.demo_book import fill
from scouting_db.base import Base
from scouting_db.session import Store

SAID = (
    "okafor pops up backhand dinks",
    "next: okafor and lindqvist at 18:00",
    "we serve",
    "our rally",
    "their rally, i missed a drop",
    "who covers the middle",
    "where do i dink okafor",
    "what are our chances",
    "what do we know about okafor and lindqvist",
    "game plan",
    "cue",
    "scout okafor",
    "what did we write about okafor",
    "undo",
    "review",
)
"""A conversation that reads every part of a book, after changes of each kind."""

WHOLE = frozenset(["account", "alembic_version"])
"""Tables that hold a row or two whatever is written."""

OF_WHAT_IS_OPEN = frozenset(["ix_inbox_open", "ix_outbox_unsent", "ix_reminder_due"])
"""Indexes that hold only what waits: all of such a one may be read."""

SCANNED = re.compile(r"^SCAN (\w+)(?: USING (?:COVERING )?INDEX (\w+))?")
SEQUENTIAL = re.compile(r"Seq Scan on (\w+)()")


def statements_of_a_talk(talk: Talk) -> list[tuple[str, Any]]:
    """Each different statement of the conversation, with parameters it was run with."""
    with watched(talk.store) as seen:
        for text in SAID:
            talk.say(text)
    return list({statement: (statement, given) for statement, given in seen}.values())


def test_a_turn_reads_no_table_from_end_to_end(store: Store) -> None:
    fill(store, now=SATURDAY)
    statements = statements_of_a_talk(Talk(store=store))
    explained = [one for one in statements if one[0].split()[0] in ("SELECT", "UPDATE", "DELETE")]
    assert len(explained) > 30, len(explained)
    found = {
        (table, " ".join(statement.split()))
        for statement, given in explained
        for table in read_whole(store, statement, given)
    }
    assert {one for one in found if one[0] not in WHOLE} == set()


def test_a_table_read_from_end_to_end_is_seen(store: Store) -> None:
    """The other way round: where no index serves, both databases say so."""
    statement = "SELECT note_id FROM note WHERE text = 'x'"
    given: Any = () if store.engine.dialect.name == "sqlite" else {}
    assert list(read_whole(store, statement, given)) == ["note"]


def read_whole(store: Store, statement: str, given: Any) -> Iterator[str]:
    """The tables that the statement reads from end to end."""
    on_sqlite = store.engine.dialect.name == "sqlite"
    with store.writing() as connection:
        if on_sqlite:
            rows = connection.exec_driver_sql(f"EXPLAIN QUERY PLAN {statement}", given).all()
            plan, form = [str(row[-1]) for row in rows], SCANNED
        else:
            connection.exec_driver_sql("SET LOCAL enable_seqscan = off")
            rows = connection.exec_driver_sql(f"EXPLAIN {statement}", given).all()
            plan, form = [str(row[0]) for row in rows], SEQUENTIAL
    for line in plan:
        found = form.search(line)
        if found is None or found[2] in OF_WHAT_IS_OPEN:
            continue
        if found[1] in Base.metadata.tables:
            yield found[1]
