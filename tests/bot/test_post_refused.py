"""The database refuses in the middle of a batch, at every statement in turn: nothing half-written.

What may happen then: sqlite.org/lang_transaction.html, "Response To Errors Within A Transaction";
sqlite.org/c3ref/interrupt.html ("the entire transaction will be rolled back automatically");
sqlite.org/pragma.html, max_page_count; PostgreSQL documentation, pg_terminate_backend.
"""

from __future__ import annotations

import sqlite3
from collections import Counter
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from full_disks import full_disk
from sqlalchemy import Connection, Engine, create_engine, event, select, text

from bot.chat.turn import take_turn
from bot.post import Arrival, Incoming, IncomingKind, accept, run_batch
from scouting_db.directory import Directory
from scouting_db.passing import is_passing
from scouting_db.session import Store, open_store
from scouting_db.tables import book, change, chat, inbox, note, observation, outbox, player
from scouting_db.values import Micros

NOW = Micros(1_750_000_000_000_000)
LEASED_UNTIL = Micros(NOW + 60_000_000)
MOST_EVENINGS = 200

WATCHED = (book, player, note, observation, change, chat, inbox, outbox)

LINES = (
    ("mira", "/add Okafor"),
    ("tom", "/add Lindqvist"),
    ("mira", "note okafor: lefty"),
    ("tom", "note lindqvist: lobs often"),
)

Contents = dict[str, list[tuple[Any, ...]]]
Refuse = Callable[[Connection], None]


class Evening:
    """Two people who write to a bot of their own in one database; taken step by step."""

    def __init__(self, store: Store, name: str) -> None:
        self.refusals: Counter[str] = Counter()
        self._store = store
        self._name = name
        with store.writing() as connection:
            self._account = Directory(connection).account("telegram", name)

    def run(self) -> Evening:
        """From arrival to hand-out; each step is taken again until the database lets it."""
        account = self._account
        self._take("accept", lambda one: accept(one, account, self._arrivals(), now=NOW))
        while self._take("turns", lambda one: run_batch(one, account, take_turn, now=NOW).handled):
            continue
        self._take("lease", lambda one: Directory(one).lease(account, now=NOW, until=LEASED_UNTIL))
        return self

    def _arrivals(self) -> list[Arrival]:
        return [self._arrival(number, who, line) for number, (who, line) in enumerate(LINES)]

    def _arrival(self, number: int, who: str, line: str) -> Arrival:
        user = f"{who} of {self._name}"
        incoming = Incoming(
            kind=IncomingKind.TEXT, chat=who, user_id=user, user_name=user, at=NOW, text=line
        )
        return Arrival(update_id=number, incoming=incoming)

    def _take(self, name: str, step: Callable[[Connection], Any]) -> Any:
        while True:
            before = contents(self._store)
            try:
                with self._store.writing() as connection:
                    return step(connection)
            except Exception as error:
                if not is_passing(error):
                    raise
                self.refusals[name] += 1
            assert contents(self._store) == before, "something of a refused step stands"

    def told(self) -> dict[str, list[tuple[str, str]]]:
        """Of each chat, what was noted and what is being said, in order."""
        return {
            who: [
                *(("note", one) for one in self._column(note.c.text, note.c.note_id, note.c, who)),
                *(
                    (state, payload["text"])
                    for state, payload in self._rows(
                        (outbox.c.state, outbox.c.payload), outbox.c.outbox_id, outbox.c, who
                    )
                ),
            ]
            for who in ("mira", "tom")
        }

    def _column(self, column: Any, order: Any, table: Any, who: str) -> list[Any]:
        return [one for (one,) in self._rows((column,), order, table, who)]

    def _rows(self, columns: Any, order: Any, table: Any, who: str) -> list[Any]:
        of_chat = (chat.c.account_id == self._account, chat.c.external_chat_id == who)
        joined = select(*columns).join(chat, chat.c.chat_id == table.chat_id)
        with self._store.reading() as connection:
            return list(connection.execute(joined.where(*of_chat).order_by(order)))


def contents(store: Store) -> Contents:
    """Every row that a batch may write."""
    with store.reading() as connection:
        return {
            table.name: sorted(map(tuple, connection.execute(select(table))), key=repr)
            for table in WATCHED
        }


@contextmanager
def refusing(engine: Engine, number: int, refuse: Refuse) -> Iterator[None]:
    """The writer's statement of that number, counted from here, meets a refusal."""
    seen = [0]

    def look(connection: Connection, *_: Any) -> None:
        if not connection.get_execution_options().get("seamwise_writing"):
            return
        seen[0] += 1
        if seen[0] == number:
            refuse(connection)

    event.listen(engine, "before_cursor_execute", look)
    try:
        yield
    finally:
        event.remove(engine, "before_cursor_execute", look)


def interrupt(connection: Connection) -> None:
    """SQLite: the next statement is interrupted, as by sqlite3_interrupt."""
    raw = connection.connection.dbapi_connection
    assert isinstance(raw, sqlite3.Connection)
    left = [1]
    raw.set_progress_handler(lambda: left.pop() if left else 0, 1)


def cut_off(connection: Connection) -> None:
    """PostgreSQL: the session is ended from outside, and is gone when this returns."""
    raw: Any = connection.connection.dbapi_connection
    other = create_engine(connection.engine.url, isolation_level="AUTOCOMMIT")
    with other.connect() as killer:
        killer.execute(
            text("SELECT pg_terminate_backend(:pid, 5000)"), {"pid": raw.info.backend_pid}
        )
    other.dispose()


def test_a_refusal_at_any_statement_leaves_nothing_half_written(store: Store) -> None:
    # A session is slow to begin, so there every seventh is ended; every third refused elsewhere.
    # Neither divides the statements of a message: all kinds of them are met.
    on_server = store.engine.dialect.name == "postgresql"
    refuse, stride = (cut_off, 7) if on_server else (interrupt, 3)
    expected = Evening(store, "undisturbed").run().told()
    assert [kind for kind, _ in expected["mira"]] == ["note"] + ["sending"] * 2
    number, refusals = 0, Counter("?")
    while refusals:
        number += stride
        evening = Evening(store, f"bot {number}")
        with refusing(store.engine, number, refuse):
            evening.run()
        refusals = evening.refusals
        assert evening.told() == expected, f"at statement {number}"
    assert number > len(LINES) * 5, "the statements of a batch"


def test_a_disk_that_fills_up_anywhere_leaves_nothing_half_written(tmp_path: Path) -> None:
    """ "database or disk is full" wherever the file grows, until each step has met it."""
    store = open_store(f"sqlite:///{tmp_path / 'book.sqlite'}")
    try:
        expected = Evening(store, "undisturbed").run().told()
        refusals: Counter[str] = Counter()
        for number in range(MOST_EVENINGS):
            if min(refusals["accept"], refusals["turns"]) > 1:
                return
            evening = Evening(store, f"bot {number}")
            with full_disk(store, pages_left=number % 3):
                evening.run()
            assert evening.told() == expected
            refusals += evening.refusals
        raise AssertionError(f"not every step has met a full disk: {refusals}")
    finally:
        store.close()
