"""Lanes: each chat's messages in order, one at a time; chats beside each other."""

from __future__ import annotations

import asyncio
import logging
from collections import deque
from collections.abc import Awaitable, Callable, Collection, Sequence
from functools import partial

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
from bot.channels.telegram_bot.writer import Writer
from bot.post import Outgoing
from scouting_db.directory import Directory
from scouting_db.values import ChatId, Micros, OutboxId, OutboxRow, Sent

log = logging.getLogger(__name__)

FIRST_PAUSE_S = 0.5
LONGEST_PAUSE_S = 30.0
"""Pauses after a network fault double from the first to the longest."""

TRIES_AFTER_A_BREAK = 5
"""A send that broke on the way may have arrived, so it is repeated only so often in a row."""

COME_BACK_S = 60.0
"""After that the row waits in the outbox this long."""

MOST_LEASES = 30
"""A row handed out this often without an answer is given up: about half an hour of trying."""

Deliver = Callable[[str, Outgoing], Awaitable[Outcome]]

Settle = Callable[[Sequence[OutboxRow], Directory], None]


class Sender:
    """Sends what the outbox hands out. `on_mark` is called when a mark waits to be stored: after
    `marks_wait_s`, for by then a round may have come by and taken it along, or at once where
    somebody's next message waits for it; `on_change` when a round is to look at the outbox anew.
    """

    def __init__(
        self,
        *,
        deliver: Deliver,
        writer: Writer,
        limiter: Limiter,
        clock: Callable[[], Micros],
        on_mark: Callable[[], None],
        on_change: Callable[[], None] | None = None,
        marks_wait_s: float = 0.0,
    ) -> None:
        self._deliver = deliver
        self._writer = writer
        self._limiter = limiter
        self._clock = clock
        self._on_mark = on_mark
        self._on_change = on_change or on_mark
        self._marks_wait_s = marks_wait_s
        self._call: asyncio.TimerHandle | None = None
        self._held_up = False
        self._lanes: dict[ChatId, deque[OutboxRow]] = {}
        self._tasks: dict[ChatId, asyncio.Task[None]] = {}
        self._held: set[tuple[ChatId, OutboxId]] = set()
        self._marks: list[Sent] = []
        self._stored = asyncio.Event()
        self._closed = False

    def take(self, rows: Sequence[OutboxRow], *, held_up: bool = False) -> None:
        """Send these, each chat's after what it still has to send. `held_up` says that others
        wait for the marks of what is being sent. Nothing after `close`.
        """
        if self._closed:
            return
        self._held_up = held_up
        if held_up and self._marks:
            self._on_change()
        for row in rows:
            key = (row.chat, row.outbox)
            if key in self._held:
                # Its lease ran out while it waited its turn here.
                continue
            self._held.add(key)
            self._lanes.setdefault(row.chat, deque()).append(row)
            if row.chat not in self._tasks:
                self._tasks[row.chat] = asyncio.create_task(self._run_lane(row.chat))

    @property
    def is_idle(self) -> bool:
        """Whether nothing is left to send and no mark left to store."""
        return not self._lanes and not self._marks

    @property
    def in_hand(self) -> frozenset[ChatId]:
        """Chats with something to send, or with a mark that is not stored."""
        return frozenset(self._lanes).union(mark.chat for mark in self._marks)

    def marks(self) -> tuple[Sent, ...]:
        """What was sent and is not yet stored as sent."""
        return tuple(self._marks)

    def marks_stored(self, marks: Collection[Sent]) -> int:
        """These are in the database; how many of them were not known to be."""
        before = len(self._marks)
        for mark in marks:
            self._held.discard((mark.chat, mark.outbox))
        stored = frozenset(marks)
        self._marks = [mark for mark in self._marks if mark not in stored]
        if not self._marks:
            self._no_call()
        self._stored.set()
        self._stored = asyncio.Event()
        return before - len(self._marks)

    async def abandon(self) -> None:
        """End the lanes: what is in them is no longer ours to send. Marks are kept."""
        tasks = list(self._tasks.values())
        for task in tasks:
            task.cancel()
        await asyncio.gather(*tasks, return_exceptions=True)
        for chat in tuple(self._lanes):
            # Cancelled before its first step, a lane has not closed itself.
            self._close_lane(chat)

    async def close(self) -> None:
        """End the lanes and give back what is unsent."""
        self._closed = True
        left = [row for lane in self._lanes.values() for row in lane]
        await self.abandon()
        self._no_call()
        if left:
            log.info("%d messages stay in the outbox for the next start", len(left))
            await self._store(partial(self._give_back, left))

    def _give_back(self, rows: Sequence[OutboxRow], directory: Directory) -> None:
        for row in rows:
            directory.retry_at(row.chat, row.outbox, at=self._clock())

    async def _run_lane(self, chat: ChatId) -> None:
        lane = self._lanes[chat]
        try:
            while lane:
                await self._until_stored(chat)
                if not await self._settle(lane[0], await self._send(lane[0])):
                    break
                lane.popleft()
        except Exception:
            log.exception("lane of chat %d stopped; its rows come back later", chat)
            await self._come_back_for_sure(chat)
        finally:
            self._close_lane(chat)

    async def _until_stored(self, chat: ChatId) -> None:
        """Before a chat's next message, so that a crash repeats one of them, not several."""
        while any(mark.chat == chat for mark in self._marks):
            self._on_mark()
            await self._stored.wait()

    def _call_soon(self) -> None:
        if self._held_up:
            self._on_change()
        elif not self._marks_wait_s:
            self._on_mark()
        elif self._call is None:
            loop = asyncio.get_running_loop()
            self._call = loop.call_later(self._marks_wait_s, self._call_now)

    def _call_now(self) -> None:
        self._call = None
        self._on_mark()

    def _no_call(self) -> None:
        if self._call is not None:
            self._call.cancel()
            self._call = None

    def _close_lane(self, chat: ChatId) -> None:
        for row in self._lanes.pop(chat, ()):
            self._held.discard((row.chat, row.outbox))
        self._tasks.pop(chat, None)

    async def _send(self, row: OutboxRow) -> Outcome:
        """Try until there is an answer, or until repeating would do more harm than waiting."""
        message = Outgoing.from_json(row.payload)
        pause_s, breaks = FIRST_PAUSE_S, 0
        while True:
            await self._limiter.wait(row.chat, is_group=row.is_group)
            outcome = await self._deliver(row.external_chat_id, message)
            if isinstance(outcome, Wait):
                log.info("chat %d: the server asks for %.0f s", row.chat, outcome.seconds)
                self._limiter.pause(row.chat, seconds=outcome.seconds, is_group=row.is_group)
                continue
            if not isinstance(outcome, Broken):
                return outcome
            breaks += not outcome.unsent
            if breaks >= TRIES_AFTER_A_BREAK:
                return outcome
            log.warning("chat %d: %s; again in %.1f s", row.chat, outcome.because, pause_s)
            await asyncio.sleep(pause_s)
            pause_s = min(2 * pause_s, LONGEST_PAUSE_S)

    async def _settle(self, row: OutboxRow, outcome: Outcome) -> bool:
        """Store what came of it; True where the lane may go on."""
        match outcome:
            case Delivered(external_message_id=external):
                mark = Sent(chat=row.chat, outbox=row.outbox, external_message_id=external)
                self._marks.append(mark)
                self._call_soon()
                return True
            case Refused(because=because):
                await self._drop(row, because)
                return True
            case ShutOut(because=because):
                await self._shut_out(row.chat, because)
            case Moved(new_chat=new_chat):
                await self._move(row.chat, new_chat)
            case _:
                await self._come_back(row.chat)
        return False

    async def _drop(self, row: OutboxRow, because: str) -> None:
        log.warning("chat %d: a message is dropped: %s", row.chat, because)
        await self._store(lambda directory: directory.drop(row.chat, row.outbox, because=because))
        self._held.discard((row.chat, row.outbox))

    async def _shut_out(self, chat: ChatId, because: str) -> None:
        """Send nothing more there until they write again; what waits here has gone stale."""
        log.info("chat %d shut us out: %s", chat, because)

        def work(rows: Sequence[OutboxRow], directory: Directory) -> None:
            directory.block(chat, now=self._clock())
            for row in rows:
                directory.drop(row.chat, row.outbox, because=because)

        await self._empty(chat, work, meanwhile=work)

    async def _move(self, chat: ChatId, new_chat: str) -> None:
        """The group has a new id: what is unsent goes there."""
        log.info("chat %d was upgraded and has a new id", chat)
        marks = self.marks()

        def work(rows: Sequence[OutboxRow], directory: Directory) -> None:
            # First, since unsent rows may move to another chat and leave their numbers behind.
            directory.mark_sent(marks)
            directory.move_chat(chat, new_chat)
            self._give_back(rows, directory)

        await self._empty(chat, work, meanwhile=self._give_back)

    async def _come_back(self, chat: ChatId) -> None:
        """Leave the lane to the outbox for a while, in order; give up a row tried for long."""
        later = Micros(self._clock() + int(COME_BACK_S * 1_000_000))

        def work(rows: Sequence[OutboxRow], directory: Directory) -> None:
            first, *rest = rows
            if first.attempts >= MOST_LEASES:
                directory.drop(chat, first.outbox, because="no answer for too long")
            else:
                directory.retry_at(chat, first.outbox, at=later)
            self._give_back(rest, directory)

        await self._empty(chat, work, meanwhile=self._give_back)

    async def _come_back_for_sure(self, chat: ChatId) -> None:
        """However long the database refuses; later messages of the chat wait behind it."""
        pause_s = FIRST_PAUSE_S
        while self._lanes[chat]:
            try:
                await self._come_back(chat)
            except Exception:
                log.exception("chat %d cannot be given back; again in %.1f s", chat, pause_s)
                await asyncio.sleep(pause_s)
                pause_s = min(2 * pause_s, LONGEST_PAUSE_S)

    async def _empty(self, chat: ChatId, work: Settle, *, meanwhile: Settle) -> None:
        """Store the work for what is in the lane, and `meanwhile` for what is put in it until
        then: a row left here as leased would be overtaken, since others are leased behind it.
        """
        lane = self._lanes[chat]
        while lane:
            rows = tuple(lane)
            await self._store(partial(work, rows))
            for row in rows:
                lane.popleft()
                self._held.discard((row.chat, row.outbox))
            work = meanwhile

    async def _store(self, work: Callable[[Directory], None]) -> None:
        await self._writer.run(lambda connection: work(Directory(connection)))
        self._on_change()
