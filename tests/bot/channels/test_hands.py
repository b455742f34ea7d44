"""Two senders over one outbox: each message once and in order, past a lost connection too.

Beside the checks: PostgreSQL documentation, "Advisory Locks" (what a session holds goes with it).
A connection that breaks may repeat one message of a chat, the one on its way; never another.
"""

from __future__ import annotations

import asyncio
import time
from collections import Counter, defaultdict
from collections.abc import Awaitable, Callable, Iterator, Sequence
from dataclasses import dataclass, field

import pytest
from databases import new_postgresql, shown
from sqlalchemy import text

from bot.channels.telegram_bot.deliver import Delivered, Outcome
from bot.channels.telegram_bot.hands import AmongOthers
from bot.channels.telegram_bot.limiter import Limiter
from bot.channels.telegram_bot.rounds import Rounds
from bot.channels.telegram_bot.sender import Sender
from bot.channels.telegram_bot.works import now_micros
from bot.channels.telegram_bot.writer import Writer
from bot.chat.reply import Reply
from bot.post import NO_LIMITS, Outgoing
from scouting_db.directory import Directory
from scouting_db.holds import ChatHolds
from scouting_db.session import Store, open_store
from scouting_db.values import AccountId, InboxRow, Micros

CHATS = [f"chat {n}" for n in range(8)]
EACH = 6
SOON_S = 20.0

pytestmark = pytest.mark.postgres


@pytest.fixture(scope="module")
def store() -> Iterator[Store]:
    with new_postgresql() as url:
        opened = open_store(shown(url))
        yield opened
        opened.close()


@dataclass(slots=True)
class Channel:
    """Takes every message after a moment, and knows who brought it."""

    slow_s: float = 0.002
    sent: dict[str, list[str]] = field(default_factory=lambda: defaultdict(list))
    by: Counter[str] = field(default_factory=Counter)

    def taken_from(self, worker: str) -> Callable[[str, Outgoing], Awaitable[Outcome]]:
        async def deliver(chat: str, message: Outgoing) -> Outcome:
            self.sent[chat].append(message.text)
            self.by[worker] += 1
            await asyncio.sleep(self.slow_s)
            return Delivered(external_message_id=self.by.total())

        return deliver


def no_turn(_at: object, _row: InboxRow, /, *, now: Micros) -> Sequence[Reply]:
    raise AssertionError(f"no turn is due at {now}")


class Worker:
    """Rounds, a sender, and a place among others."""

    def __init__(self, store: Store, account: AccountId, name: str, channel: Channel) -> None:
        self.holds = ChatHolds(store, "telegram-test")
        self.holds.open(patience_s=1)
        self.writer = Writer(store)
        called = asyncio.Event()
        limiter = Limiter(clock=time.monotonic, paced=False)
        self.sender = Sender(
            deliver=channel.taken_from(name),
            writer=self.writer,
            limiter=limiter,
            clock=now_micros,
            on_mark=called.set,
        )
        self.counted = 0
        self.rounds = Rounds(
            account=account,
            turn=no_turn,  # type: ignore[arg-type]
            limits=NO_LIMITS,
            writer=self.writer,
            sender=self.sender,
            clock=now_micros,
            called=called,
            hands=AmongOthers(self.holds, clock=time.monotonic, on_workers=self.count),
        )
        self.task = asyncio.create_task(self.rounds.run())

    def count(self, workers: int) -> None:
        self.counted = workers

    async def stop(self) -> None:
        self.rounds.stop()
        await self.task
        await self.sender.close()
        await self.rounds.store_marks()
        await self.writer.close()
        self.holds.close()

    async def die(self) -> None:
        """As killed: nothing more is sent or stored, the connections end."""
        self.task.cancel()
        await self.sender.abandon()
        await self.writer.close()
        self.holds.close()


def new_account(store: Store) -> AccountId:
    with store.writing() as connection:
        bot = f"console:{now_micros()}"
        return Directory(connection).account("console", bot)


def post_all(store: Store, account: AccountId) -> None:
    for n in range(EACH):
        for chat in CHATS:
            with store.writing() as connection:
                directory = Directory(connection)
                known = directory.chat(account, chat).chat
                directory.post(known, None, [Outgoing(text=str(n)).to_post()], now=now_micros())


async def until(holds: Callable[[], bool]) -> None:
    async with asyncio.timeout(SOON_S):
        while not holds():
            await asyncio.sleep(0.02)


def unsent(store: Store, account: AccountId) -> int:
    with store.reading() as connection:
        return Directory(connection).unsent_rows(account).count


def assert_in_order(channel: Channel, *, repeated: int) -> None:
    for chat in CHATS:
        sent = channel.sent[chat]
        once = [one for n, one in enumerate(sent) if n == 0 or one != sent[n - 1]]
        assert once == [*map(str, range(EACH))]
        assert len(sent) <= EACH + repeated


def test_two_share_the_outbox(store: Store) -> None:
    async def work() -> None:
        account, channel = new_account(store), Channel()
        one, other = (Worker(store, account, name, channel) for name in ("one", "other"))
        await asyncio.to_thread(post_all, store, account)
        await until(lambda: unsent(store, account) == 0)
        await until(lambda: one.counted == other.counted == 2)
        await one.stop()
        await other.stop()
        assert_in_order(channel, repeated=0)
        assert not one.holds.held

    asyncio.run(work())


@pytest.mark.parametrize("after", [1, 9, 23])
def test_a_lost_connection_repeats_one_message_of_a_chat_at_most(store: Store, after: int) -> None:
    async def work() -> None:
        account, channel = new_account(store), Channel(slow_s=0.01)
        await asyncio.to_thread(post_all, store, account)
        one, other = (Worker(store, account, name, channel) for name in ("one", "other"))
        await until(lambda: channel.by.total() >= after)
        await asyncio.to_thread(end_all_connections, store)
        await until(lambda: unsent(store, account) == 0)
        await one.stop()
        await other.stop()
        assert_in_order(channel, repeated=1)

    asyncio.run(work())


def end_all_connections(store: Store) -> None:
    """As a database that restarts does."""
    with store.engine.connect() as connection:
        connection.execute(
            text(
                "SELECT pg_terminate_backend(pid) FROM pg_stat_activity "
                "WHERE datname = current_database() AND pid <> pg_backend_pid()"
            )
        )


def test_what_a_dead_sender_had_in_hand_is_sent_without_waiting_for_its_lease(
    store: Store,
) -> None:
    async def work() -> None:
        account, slow, channel = new_account(store), Channel(slow_s=60), Channel()
        await asyncio.to_thread(post_all, store, account)
        dead = Worker(store, account, "dead", slow)
        await until(lambda: slow.by["dead"] == len(CHATS))
        other = Worker(store, account, "other", channel)
        await asyncio.sleep(0.3)
        assert not channel.sent, "held by one who lives"
        await dead.die()
        await until(lambda: unsent(store, account) == 0)
        await other.stop()
        assert_in_order(channel, repeated=0)

    asyncio.run(work())
