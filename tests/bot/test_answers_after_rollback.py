"""What a turn read in a transaction that was rolled back is not answered with later."""

from __future__ import annotations

from typing import Any

import pytest
from sqlalchemy import Connection

from bot.chat.turn import take_turn
from bot.post import Arrival, Incoming, IncomingKind, accept, run_batch
from scouting_db.directory import Directory
from scouting_db.session import Store
from scouting_db.tables import outbox
from scouting_db.values import AccountId, Micros

NOW = Micros(1_750_000_000_000_000)


class DiskFullError(Exception):
    """Stands for whatever ends the transaction after its turns were taken."""


def arrival(number: int, line: str) -> Arrival:
    incoming = Incoming(
        kind=IncomingKind.TEXT, chat="mira", user_id="mira", user_name="Mira", at=NOW, text=line
    )
    return Arrival(update_id=number, incoming=incoming)


class Chat:
    """One chat, whose messages come in with numbers of their own."""

    def __init__(self, store: Store) -> None:
        self._store = store
        self._count = 0
        with store.writing() as connection:
            self._account: AccountId = Directory(connection).account("telegram", "4")

    def take(self, connection: Connection, *lines: str) -> None:
        """Accept and answer within the caller's transaction."""
        for line in lines:
            self._count += 1
            accept(connection, self._account, [arrival(self._count, line)], now=NOW)
        while run_batch(connection, self._account, take_turn, now=NOW).handled:
            continue

    def say(self, *lines: str) -> str:
        """The same in a transaction of its own; the last reply's text."""
        with self._store.writing() as connection:
            self.take(connection, *lines)
            last: Any = connection.execute(
                outbox.select().order_by(outbox.c.outbox_id.desc()).limit(1)
            ).one()
        return str(last.payload["text"])

    def say_in_vain(self, *lines: str) -> None:
        """The same, and then nothing of it is stored."""
        with self._store.writing() as connection:
            self.take(connection, *lines)
            raise DiskFullError


@pytest.mark.parametrize(
    ("undone", "instead", "question"),
    [
        ("/add Okafor", "/add Lindqvist", "/players"),
        ("note okafor: pops up backhand dinks", "note okafor: lefty", "where do I dink okafor"),
        ("note okafor: lefty", "note okafor: pops up forehand dinks", "who is okafor"),
    ],
)
def test_a_version_that_was_given_back_is_read_anew(
    store: Store, undone: str, instead: str, question: str
) -> None:
    other = Chat(store)
    before = () if undone.startswith("/add") else ("/add Okafor",)
    other.say(*before, "/players")
    with pytest.raises(DiskFullError):
        other.say_in_vain(undone, question)
    after = other.say(instead, question)
    word = "Okafor" if undone.startswith("/add") else undone.split(": ")[1]
    assert word not in after
    assert after == fresh_answer(*before, instead, question)


def fresh_answer(*lines: str) -> str:
    """What a store says in which nothing was ever undone."""
    from scouting_db.session import open_store

    store = open_store("sqlite://")
    try:
        return Chat(store).say(*lines)
    finally:
        store.close()
