"""Rounds: a message, its turn and its reply's lease in one commit; marks by themselves."""

from __future__ import annotations

import asyncio
import time
from collections.abc import Awaitable, Callable, Iterator
from dataclasses import dataclass, field
from pathlib import Path

import pytest
from sqlalchemy import Connection, event

from bot.channels.telegram_bot.deliver import Delivered, Outcome
from bot.channels.telegram_bot.limiter import Limiter
from bot.channels.telegram_bot.rounds import Rounds
from bot.channels.telegram_bot.sender import Sender
from bot.channels.telegram_bot.works import now_micros
from bot.channels.telegram_bot.writer import Writer
from bot.chat.reply import Reply
from bot.post import NO_LIMITS, Arrival, Incoming, IncomingKind, Outgoing, accept
from scouting_db.directory import Directory
from scouting_db.session import Store, open_store
from scouting_db.values import AccountId, InboxRow, Micros

SOON_S = 10.0


def echo(_connection: Connection, row: InboxRow, /, *, now: Micros) -> tuple[Reply, ...]:  # noqa: ARG001
    return (Reply(text=str(row.payload["text"])),)


def said(number: int, text: str) -> Arrival:
    incoming = Incoming(
        kind=IncomingKind.TEXT,
        chat="11",
        user_id="11",
        user_name="Mira",
        at=now_micros(),
        text=text,
    )
    return Arrival(update_id=number, incoming=incoming)


@dataclass(slots=True, kw_only=True)
class Desk:
    """Rounds over an outbox, and a channel that takes everything."""

    store: Store
    account: AccountId
    sent: list[str] = field(default_factory=list)
    commits: int = 0
    writer: Writer = field(init=False)
    sender: Sender = field(init=False)
    rounds: Rounds = field(init=False)

    async def deliver(self, _chat: str, message: Outgoing) -> Outcome:
        await asyncio.sleep(0)
        self.sent.append(message.text)
        return Delivered(external_message_id=len(self.sent))

    def come(self, number: int, text: str) -> None:
        """As the intake does it: behind the updates, a round."""
        now = now_micros()
        self.writer.hand_in(lambda at: accept(at, self.account, [said(number, text)], now=now))
        self.rounds.begin()

    def run(self, use: Callable[[], Awaitable[None]]) -> None:
        async def whole() -> None:
            called = asyncio.Event()
            self.writer = Writer(self.store)
            self.sender = Sender(
                deliver=self.deliver,
                writer=self.writer,
                limiter=Limiter(clock=time.monotonic, paced=False),
                clock=now_micros,
                on_mark=lambda: self.rounds.store_soon(),
                on_change=called.set,
                marks_wait_s=0.05,
            )
            self.rounds = Rounds(
                account=self.account,
                turn=echo,
                limits=NO_LIMITS,
                writer=self.writer,
                sender=self.sender,
                clock=now_micros,
                called=called,
            )
            task = asyncio.create_task(self.rounds.run())
            await asyncio.sleep(0.1)
            self.commits = 0
            await use()
            self.rounds.stop()
            await task
            await self.rounds.finish(within_s=SOON_S)
            await self.sender.close()
            await self.writer.close()

        asyncio.run(whole())

    def states(self) -> list[str]:
        with self.store.reading() as connection:
            found = connection.exec_driver_sql("SELECT state FROM outbox ORDER BY outbox_id")
            return list(found.scalars())


@pytest.fixture
def desk(tmp_path: Path) -> Iterator[Desk]:
    store = open_store(f"sqlite:///{tmp_path / 'rounds.sqlite'}")
    with store.writing() as connection:
        account = Directory(connection).account("telegram", "1")
    found = Desk(store=store, account=account)

    def count(_connection: Connection) -> None:
        found.commits += 1

    event.listen(store.engine, "commit", count)
    yield found
    store.close()


async def until(holds: Callable[[], bool]) -> None:
    async with asyncio.timeout(SOON_S):
        while not holds():
            await asyncio.sleep(0.002)


def test_a_message_and_its_turn_are_one_commit_and_its_mark_another(desk: Desk) -> None:
    async def use() -> None:
        for n in range(5):
            desk.come(n, f"message {n}")
            await until(lambda n=n: len(desk.sent) == n + 1)  # type: ignore[misc]
            await until(lambda: desk.sender.is_idle)

    desk.run(use)
    assert desk.sent == [f"message {n}" for n in range(5)]
    assert desk.states() == ["sent"] * 5
    assert desk.commits == 2 * 5 + 1, "one more at the end"


def test_what_comes_while_a_round_is_begun_is_not_left(desk: Desk) -> None:
    async def use() -> None:
        for n in range(20):
            desk.come(n, f"message {n}")
        await until(lambda: len(desk.sent) == 20)
        await until(lambda: desk.sender.is_idle)

    desk.run(use)
    assert desk.sent == [f"message {n}" for n in range(20)]
    assert desk.states() == ["sent"] * 20


def test_an_end_waits_for_what_is_being_sent_and_stored(desk: Desk) -> None:
    async def use() -> None:
        desk.come(1, "late")

    desk.run(use)
    assert desk.states() == ["sent"]
