"""Lanes: order in a chat, chats apart, one answer to each outcome, nothing ahead of its mark."""

from __future__ import annotations

import asyncio
import time
from collections import deque
from collections.abc import Awaitable, Callable, Iterator
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

import pytest
from sqlalchemy import Connection

from bot.channels.telegram_bot import sender as sender_module
from bot.channels.telegram_bot.deliver import (
    Broken,
    Delivered,
    Moved,
    Outcome,
    Refused,
    ShutOut,
    Wait,
)
from bot.channels.telegram_bot.limiter import Limiter
from bot.channels.telegram_bot.sender import TRIES_AFTER_A_BREAK, Sender
from bot.channels.telegram_bot.writer import Writer
from bot.post import Outgoing
from scouting_db.directory import Directory
from scouting_db.session import Store, open_store
from scouting_db.values import AccountId, Micros, OutboxRow

MIRA, TOM = "11", "22"
LEASE_MICROS = 60_000_000


class FakeChannel:
    """Takes every message, unless a chat has outcomes of its own lined up."""

    def __init__(self) -> None:
        self.tried: list[tuple[str, str]] = []
        self.lined_up: dict[str, deque[Outcome]] = {}

    async def deliver(self, chat: str, message: Outgoing) -> Outcome:
        await asyncio.sleep(0)
        self.tried.append((chat, message.text))
        lined_up = self.lined_up.get(chat)
        return lined_up.popleft() if lined_up else Delivered(external_message_id=len(self.tried))

    def to(self, chat: str) -> list[str]:
        return [text for tried, text in self.tried if tried == chat]


@dataclass(slots=True, kw_only=True)
class Office:
    """An outbox, and a sender that empties it into a fake channel."""

    store: Store
    account: AccountId
    channel: FakeChannel = field(default_factory=FakeChannel)
    now: int = 1_700_000_000_000_000
    marks_wait_s: float = 0.0
    sender: Sender = field(init=False)
    writer: Writer = field(init=False)
    marked: asyncio.Event = field(init=False)

    def post(self, chat: str, *texts: str) -> None:
        with self.store.writing() as connection:
            directory = Directory(connection)
            known = directory.chat(self.account, chat).chat
            posts = [Outgoing(text=text).to_post() for text in texts]
            directory.post(known, None, posts, now=Micros(self.now))

    async def hand_out(self) -> None:
        """Lease what is due and give it to the sender."""
        until = Micros(self.now + LEASE_MICROS)
        now = Micros(self.now)

        def leased(connection: Connection) -> tuple[tuple[OutboxRow, ...], bool]:
            directory = Directory(connection)
            rows = directory.lease(self.account, now=now, until=until)
            return rows, directory.any_held_up(self.account, now=now)

        rows, held_up = await self.writer.run(leased)
        self.sender.take(rows, held_up=held_up)

    async def store_marks(self) -> None:
        marks = self.sender.marks()
        await self.writer.run(lambda connection: Directory(connection).mark_sent(marks))
        self.sender.marks_stored(marks)

    async def settle(self) -> None:
        """Hand out and store until nothing is left in hand."""
        await self.hand_out()
        for _ in range(200):
            await asyncio.sleep(0.005)
            await self.store_marks()
            if self.sender.is_idle:
                return
        raise AssertionError("the lanes do not end")

    def run(self, use: Callable[[], Awaitable[None]]) -> None:
        async def whole() -> None:
            self.marked = asyncio.Event()
            self.writer = Writer(self.store)
            self.sender = Sender(
                deliver=self.channel.deliver,
                writer=self.writer,
                limiter=Limiter(clock=time.monotonic, paced=False),
                clock=lambda: Micros(self.now),
                on_mark=self.marked.set,
                marks_wait_s=self.marks_wait_s,
            )
            try:
                await use()
            finally:
                await self.sender.close()
                await self.writer.close()

        asyncio.run(whole())

    def states(self, chat: str) -> list[str]:
        query = (
            "SELECT state FROM outbox JOIN chat USING (chat_id) "
            f"WHERE external_chat_id = '{chat}' ORDER BY outbox_id"
        )
        with self.store.reading() as connection:
            return list(connection.exec_driver_sql(query).scalars())


@pytest.fixture
def office(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Office]:
    monkeypatch.setattr(sender_module, "FIRST_PAUSE_S", 0.001)
    store = open_store(f"sqlite:///{tmp_path / 'post.sqlite'}")
    with store.writing() as connection:
        account = Directory(connection).account("telegram", "1")
    yield Office(store=store, account=account)
    store.close()


def test_a_chat_gets_its_messages_in_order(office: Office) -> None:
    texts = [f"message {n}" for n in range(10)]
    office.post(MIRA, *texts)
    office.run(office.settle)
    assert office.channel.to(MIRA) == texts
    assert office.states(MIRA) == ["sent"] * 10


def test_nothing_is_sent_ahead_of_the_mark_before_it(office: Office) -> None:
    """Else a crash would repeat several replies in a chat."""
    office.post(MIRA, "one", "two")

    async def use() -> None:
        await office.hand_out()
        await office.marked.wait()
        await asyncio.sleep(0.05)
        assert office.channel.to(MIRA) == ["one"]
        await office.store_marks()
        await asyncio.sleep(0.05)
        assert office.channel.to(MIRA) == ["one", "two"]

    office.run(use)


def test_a_mark_waits_for_a_round_that_comes_by(office: Office) -> None:
    office.marks_wait_s = 0.1
    office.post(MIRA, "one")
    office.post(TOM, "two")

    async def use() -> None:
        await office.hand_out()
        await asyncio.sleep(0.02)
        assert len(office.sender.marks()) == 2
        assert not office.marked.is_set()
        await asyncio.wait_for(office.marked.wait(), timeout=5)
        assert len(office.sender.marks()) == 2

    office.run(use)


@pytest.mark.parametrize("together", [True, False])
def test_a_chat_s_next_message_does_not_let_a_mark_wait(office: Office, together: bool) -> None:
    """Neither one handed out with the first, nor one that came while the first was being sent."""
    office.marks_wait_s = 60.0
    office.post(MIRA, "one", *(["two"] if together else []))

    async def use() -> None:
        await office.hand_out()
        if not together:
            await asyncio.sleep(0.02)
            office.post(MIRA, "two")
            assert not office.marked.is_set()
            await office.hand_out()
        await asyncio.wait_for(office.marked.wait(), timeout=5)
        assert office.channel.to(MIRA) == ["one"]
        await office.store_marks()
        await office.hand_out()
        await asyncio.sleep(0.02)
        assert office.channel.to(MIRA) == ["one", "two"]

    office.run(use)


def test_a_chat_that_must_wait_holds_up_no_other(office: Office) -> None:
    office.post(MIRA, "later")
    office.post(TOM, "at once")
    office.channel.lined_up[MIRA] = deque([Wait(seconds=0.1)])
    office.run(office.settle)
    assert office.channel.tried == [(MIRA, "later"), (TOM, "at once"), (MIRA, "later")]
    assert office.states(MIRA) == ["sent"]


def test_rows_handed_out_twice_are_sent_once(office: Office) -> None:
    """A lease may run out while the row waits its turn."""
    office.post(MIRA, "one", "two", "three")

    async def use() -> None:
        await office.hand_out()
        office.now += 2 * LEASE_MICROS
        await office.hand_out()
        await office.settle()

    office.run(use)
    assert office.channel.to(MIRA) == ["one", "two", "three"]


def test_a_refused_message_is_dropped_and_the_next_goes(office: Office) -> None:
    office.post(MIRA, "bad", "good")
    office.channel.lined_up[MIRA] = deque([Refused(because="too odd")])
    office.run(office.settle)
    assert office.states(MIRA) == ["dropped", "sent"]


def test_who_shuts_us_out_gets_nothing_more(office: Office) -> None:
    office.post(MIRA, "one", "two")
    office.channel.lined_up[MIRA] = deque([ShutOut(because="blocked")])
    office.run(office.settle)
    assert office.channel.to(MIRA) == ["one"]
    assert office.states(MIRA) == ["dropped", "dropped"]


def test_a_moved_group_gets_the_rest_under_its_new_id(office: Office) -> None:
    office.post("-5", "one", "two")
    office.channel.lined_up["-5"] = deque(
        [Delivered(external_message_id=1), Moved(new_chat="-100")]
    )

    async def use() -> None:
        await office.settle()
        await office.settle()

    office.run(use)
    assert office.channel.tried == [("-5", "one"), ("-5", "two"), ("-100", "two")]
    assert office.states("-100") == ["sent", "sent"]


def test_a_group_that_wrote_under_its_new_id_first_loses_nothing(office: Office) -> None:
    office.post("-5", "one", "two")
    office.post("-100", "new")
    office.channel.lined_up["-5"] = deque([Moved(new_chat="-100")])

    async def use() -> None:
        await office.settle()
        await office.settle()

    office.run(use)
    assert sorted(office.channel.to("-100")) == ["new", "one", "two"]
    assert set(office.states("-100")) == {"sent"}


def test_what_surely_did_not_arrive_is_tried_until_it_does(office: Office) -> None:
    office.post(MIRA, "one")
    tries = 2 * TRIES_AFTER_A_BREAK
    office.channel.lined_up[MIRA] = deque([Broken(because="no way", unsent=True)] * tries)
    office.run(office.settle)
    assert office.channel.to(MIRA) == ["one"] * (tries + 1)
    assert office.states(MIRA) == ["sent"]


def test_what_may_have_arrived_is_tried_a_few_times_then_later(office: Office) -> None:
    office.post(MIRA, "one", "two")
    broken = Broken(because="silence", unsent=False)
    office.channel.lined_up[MIRA] = deque([broken] * TRIES_AFTER_A_BREAK)

    async def use() -> None:
        await office.settle()
        assert office.states(MIRA) == ["waiting", "waiting"]
        await office.settle()
        assert office.channel.to(MIRA) == ["one"] * TRIES_AFTER_A_BREAK, "not before a minute"
        office.now += 61_000_000
        await office.settle()

    office.run(use)
    assert office.channel.to(MIRA)[-2:] == ["one", "two"]
    assert office.states(MIRA) == ["sent", "sent"]


def test_a_stop_leaves_what_is_unsent_in_the_outbox(office: Office) -> None:
    office.post(MIRA, "one", "two")
    office.channel.lined_up[MIRA] = deque([Wait(seconds=600)])

    async def use() -> None:
        await office.hand_out()
        await asyncio.sleep(0.02)

    office.run(use)
    assert office.states(MIRA) == ["waiting", "waiting"]


def test_what_comes_while_a_chat_is_given_back_waits_behind_it(office: Office) -> None:
    """It was leased behind a message that was being sent, and must not be sent before it."""
    office.post(MIRA, "one")
    broken = Broken(because="silence", unsent=False)
    office.channel.lined_up[MIRA] = deque([broken] * TRIES_AFTER_A_BREAK)

    async def use() -> None:
        await office.hand_out()
        async with asyncio.timeout(5):
            while len(office.channel.tried) < TRIES_AFTER_A_BREAK:
                await asyncio.sleep(0)
        office.post(MIRA, "two")
        await office.hand_out()
        await office.settle()
        assert office.states(MIRA) == ["waiting", "waiting"]
        office.now += 61_000_000
        await office.settle()

    office.run(use)
    assert office.channel.to(MIRA)[TRIES_AFTER_A_BREAK:] == ["one", "two"]


def test_a_lane_outlives_a_database_that_refuses(
    office: Office, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Its chat's later messages wait behind it; they would be sent before, were it gone."""
    office.post(MIRA, "bad", "good")
    office.channel.lined_up[MIRA] = deque([Refused(because="too odd")])
    refusals = iter([True, True, True])
    hand_in = Writer.run

    async def run(writer: Writer, work: Callable[[Connection], Any]) -> Any:
        if next(refusals, False):
            raise OSError("the disk is full")
        return await hand_in(writer, work)

    async def use() -> None:
        await office.hand_out()
        monkeypatch.setattr(Writer, "run", run)
        async with asyncio.timeout(5):
            while "sending" in office.states(MIRA):
                await asyncio.sleep(0.005)
        assert office.states(MIRA) == ["waiting", "waiting"]
        office.now += 61_000_000
        await office.settle()

    office.run(use)
    assert office.channel.to(MIRA) == ["bad", "bad", "good"]


def test_nothing_is_taken_after_the_end(office: Office) -> None:
    office.post(MIRA, "one")

    async def use() -> None:
        await office.sender.close()
        await office.hand_out()
        await asyncio.sleep(0.02)

    office.run(use)
    assert office.channel.tried == []
