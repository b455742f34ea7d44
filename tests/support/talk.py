"""One side of a conversation: sends messages, taps and media down the real path of a store."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field, replace
from functools import cache
from itertools import count
from typing import Any

from compiled import compiling_once
from sqlalchemy import Column, Table, select
from sqlalchemy.engine import make_url

from bot.channels.console import CHAT, USER
from bot.chat.context import Context
from bot.chat.reply import Button
from bot.chat.turn import Heard, hear
from bot.chat.uniform import Uniform, unforeseeable
from bot.chat.wording import wording
from bot.demo_book import demo_store
from bot.post import Arrival, Incoming, IncomingKind, Outgoing, answer
from knowledge.vocabulary import PlayerId
from scouting_db import tables
from scouting_db.book import Book
from scouting_db.directory import Directory
from scouting_db.session import Store, _engine, open_store
from scouting_db.values import BookId, Micros, NoteRow, Role

SATURDAY = Micros(1_750_500_000_000_000)
"""21 June 2025, 10:00 UTC: a moment of no importance that never changes."""

UPDATES = count(1)

KEPT = (
    tables.player, tables.alias, tables.pair, tables.agreement, tables.note, tables.observation,
    tables.match, tables.entry, tables.rally, tables.plan,
)  # fmt: skip
"""What a book holds; the memory of changes, the post and chats are not part of it."""


def _kept_of(table: Table) -> list[Column[Any]]:
    return [column for column in table.c if column.name != "changed"]


@dataclass(slots=True, kw_only=True)
class Talk:
    """A person in a chat. `heard` is what the last turn understood, `last` what was answered."""

    store: Store
    bot: str = "console"
    chat: str = CHAT
    user: str = USER
    name: str = "You"
    is_group: bool = False
    now: Micros = SATURDAY
    last: tuple[Outgoing, ...] = ()
    heard: Heard | None = None
    uniform: Uniform = unforeseeable
    sent: list[str] = field(default_factory=list)

    def say(self, text: str, **more: Any) -> str:
        """Send a text; the reply's text."""
        return self.send(IncomingKind.TEXT, text=text, **more)

    def press(self, payload: str) -> str:
        """Press a button by its payload, whether or not it was ever offered."""
        return self.send(IncomingKind.TAP, payload=payload)

    def tap(self, label: str) -> str:
        """Press the button of that label under the last reply."""
        return self.press(self.button(label).payload)

    def button(self, label: str) -> Button:
        found = [one for one in self.buttons if one.label == label]
        assert len(found) == 1, f"{label!r} among {[one.label for one in self.buttons]}"
        return found[0]

    @property
    def buttons(self) -> list[Button]:
        return [one for reply in self.last for row in reply.buttons for one in row]

    def send(self, kind: IncomingKind, **more: Any) -> str:
        incoming = Incoming(
            kind=kind,
            chat=self.chat,
            user_id=self.user,
            user_name=self.name,
            at=self.now,
            is_group=self.is_group,
            **more,
        )
        arrival = Arrival(update_id=next(UPDATES), incoming=incoming)
        with self.store.writing() as connection:
            account = Directory(connection).account("console", self.bot)
        self.last = answer(self.store, account, arrival, self._turn, now=self.now)
        text = "\n\n".join(one.text for one in self.last)
        assert text != wording("apology"), f"{kind} {more} failed"
        self.sent.append(text)
        return text

    def _turn(self, connection: Any, row: Any, *, now: Micros) -> Any:
        self.heard = hear(connection, row, now=now, uniform=self.uniform)
        return self.heard.replies

    def of(self, name: str, *, chat: str | None = None) -> Talk:
        """Somebody else, in this chat or another."""
        return replace(self, user=name, name=name, chat=chat or self.chat, last=(), sent=[])

    def bind_new_book(self) -> None:
        """Give a group a new book of its own, with this person as its editor."""
        self.say("/bind")
        self.press("1:book:bind:fresh")

    def later(self, *, days: int) -> None:
        self.now = Micros(self.now + days * 86_400_000_000)

    @property
    def reply_number(self) -> int:
        """The number by which the last reply can be replied to: the outbox's own here."""
        with self.store.reading() as connection:
            return int(
                connection.execute(
                    select(tables.outbox.c.external_message_id)
                    .where(tables.outbox.c.chat_id == self.chat_row().chat)
                    .order_by(tables.outbox.c.outbox_id.desc())
                ).scalars().first()
                or 0
            )  # fmt: skip

    def chat_row(self) -> Any:
        with self.store.writing() as connection:
            directory = Directory(connection)
            account = directory.account("console", self.bot)
            return directory.chat(account, self.chat, is_group=self.is_group)

    @property
    def context(self) -> Context:
        return Context.from_json(self.chat_row().context)

    @contextmanager
    def book(self) -> Iterator[Book]:
        """The chat's book, to read from or to prepare."""
        with self.store.writing() as connection:
            directory = Directory(connection)
            account = directory.account("console", self.bot)
            row = directory.chat(account, self.chat, is_group=self.is_group)
            person = directory.person(account, self.user, self.name)
            book = row.book or directory.settle_book(row, person, name=f"{self.name}'s book")
            yield Book(connection, BookId(book), person=person, now=self.now)

    def join(self, role: Role = Role.EDITOR) -> None:
        """Become a member of the chat's book."""
        with self.store.writing() as connection:
            directory = Directory(connection)
            account = directory.account("console", self.bot)
            row = directory.chat(account, self.chat, is_group=self.is_group)
            assert row.book is not None, "a book comes with the first message"
            directory.add_member(row.book, directory.person(account, self.user, self.name), role)

    def player(self, name: str) -> int:
        with self.book() as book:
            return next(row.player for row in book.players() if name in row.name)

    def notes(self, limit: int = 50) -> tuple[NoteRow, ...]:
        """The newest notes, deleted ones left out."""
        with self.book() as book:
            return book.recent_notes(limit=limit)

    def claims(self, name: str) -> set[tuple[str, str, bool]]:
        """Every claim that stands about a player: trait, value, denied."""
        player = self.player(name)
        with self.book() as book:
            return {
                (one.trait.value, one.value.value, one.denied)
                for one in book.observations([PlayerId(player)])
            }

    def stored(self) -> dict[str, list[tuple[Any, ...]]]:
        """Every row of what all books hold, to compare before and after.

        Which version changed a row is left out: undo changes it once more.
        """
        with self.store.reading() as connection:
            return {
                table.name: sorted(
                    tuple(map(repr, row)) for row in connection.execute(select(*_kept_of(table)))
                )
                for table in KEPT
            }


def demo_talk() -> Talk:
    """The console's user with the demo book, a copy of one that a process writes only once."""
    return Talk(store=_copied(_demo_book()))


def fresh_talk() -> Talk:
    """Somebody who has just started, in a private chat and an empty store in memory."""
    return Talk(store=_copied(_empty()), chat="private", user="mira", name="Mira")


def copy_of(talk: Talk) -> Talk:
    """Somebody who has come just as far, in a store of their own; both are in memory."""
    return replace(talk, store=_copied(talk.store), sent=list(talk.sent))


def _copied(store: Store) -> Store:
    # Opened without the migrations, which the written one went through.
    copy = Store(compiling_once(_engine(make_url("sqlite://"))))
    with raw_of(store) as written, raw_of(copy) as empty:
        written.backup(empty)
    return copy


@cache
def _empty() -> Store:
    return open_store("sqlite://")


@cache
def _demo_book() -> Store:
    return demo_store(now=SATURDAY)


@contextmanager
def raw_of(store: Store) -> Iterator[sqlite3.Connection]:
    """The driver's own connection of a store in memory."""
    with store.engine.connect() as connection:
        raw = connection.connection.dbapi_connection
        assert isinstance(raw, sqlite3.Connection)
        yield raw
