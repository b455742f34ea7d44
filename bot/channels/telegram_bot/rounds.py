"""Rounds: store marks, take turns, hand out what is due, in one transaction after another."""

from __future__ import annotations

import asyncio
import contextlib
import logging
from collections.abc import Callable, Collection, Sequence
from dataclasses import dataclass

from sqlalchemy import Connection

from bot.channels.telegram_bot.sender import Sender
from bot.channels.telegram_bot.writer import Writer
from bot.chat.reminding import plain, remind
from bot.post import LEASE_MICROS, Limits, Turn, give_reminders, run_batch
from scouting_db.directory import Directory
from scouting_db.values import AccountId, Micros, OutboxRow, Sent

log = logging.getLogger(__name__)

LONGEST_SLEEP_S = 30.0
"""We look after this long even if nobody called; a guess that costs nothing."""

FIRST_PAUSE_S = 0.5
LONGEST_PAUSE_S = 30.0
"""Pauses while the database refuses (a full disk) double from the first to the longest."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Round:
    """What a round handed out, whether more is open, and when the next row is due."""

    rows: tuple[OutboxRow, ...]
    more: bool
    next_due: Micros | None


class Rounds:
    """Takes rounds whenever `called` is set (something came in or was sent) or a row is due."""

    def __init__(
        self,
        *,
        account: AccountId,
        turn: Turn,
        limits: Limits,
        writer: Writer,
        sender: Sender,
        clock: Callable[[], Micros],
        called: asyncio.Event,
        say_busy: Callable[[Collection[str]], None],
    ) -> None:
        self._account = account
        self._turn = turn
        self._limits = limits
        self._writer = writer
        self._sender = sender
        self._clock = clock
        self._called = called
        self._say_busy = say_busy
        self._stopping = False

    def stop(self) -> None:
        """End `run` after the round it is in."""
        self._stopping = True
        self._called.set()

    async def run(self) -> None:
        """Round after round."""
        pause_s = FIRST_PAUSE_S
        while not self._stopping:
            self._called.clear()
            try:
                done = await self.take_one()
                pause_s = FIRST_PAUSE_S
            except Exception:
                log.exception("the database refused a round; again in %.1f s", pause_s)
                await self._tell_waiting()
                await asyncio.sleep(pause_s)
                pause_s = min(2 * pause_s, LONGEST_PAUSE_S)
                continue
            if not done.more and not self._stopping:
                await self._sleep(done.next_due)

    async def _tell_waiting(self) -> None:
        """Whoever waits for an answer hears that it takes a while, where even that can be read."""
        try:
            chats = await self._writer.read(
                lambda connection: Directory(connection).waiting_chats(self._account)
            )
        except Exception as error:
            log.warning("nobody can be told: %s", type(error).__name__)
            return
        self._say_busy(chats)

    async def take_one(self) -> Round:
        """One round: its rows go to the sender once they are committed as leased."""
        marks = self._sender.marks()
        done = await self._writer.run(lambda connection: self._work(connection, marks))
        self._sender.marks_stored(len(marks))
        self._sender.take(done.rows)
        return done

    async def finish(self, *, within_s: float) -> None:
        """Rounds until nothing is open, due or being sent, or until the time is over."""
        with contextlib.suppress(TimeoutError):
            async with asyncio.timeout(within_s):
                while True:
                    self._called.clear()
                    done = await self.take_one()
                    if done.more or done.rows:
                        continue
                    if self._sender.is_idle:
                        return
                    await self._called.wait()

    async def store_marks(self) -> None:
        """Store what was sent since the last round."""
        marks = self._sender.marks()
        await self._writer.run(lambda connection: Directory(connection).mark_sent(marks))
        self._sender.marks_stored(len(marks))

    def _work(self, connection: Connection, marks: Sequence[Sent]) -> Round:
        directory = Directory(connection)
        directory.mark_sent(marks)
        batch = run_batch(
            connection, self._account, self._turn, now=self._clock(), limits=self._limits
        )
        now = self._clock()
        given = give_reminders(
            connection, self._account, remind, plain=plain, now=now, limits=self._limits
        )
        more = batch.full or given > 0
        rows = directory.lease(self._account, now=now, until=Micros(now + LEASE_MICROS))
        due = None if rows or more else self._next_due(directory, now)
        return Round(rows=rows, more=more, next_due=due)

    def _next_due(self, directory: Directory, now: Micros) -> Micros | None:
        """When the next message or reminder may be due."""
        waiting = (
            directory.next_due(self._account),
            directory.next_reminder(self._account, now=now),
        )
        return min((one for one in waiting if one is not None), default=None)

    async def _sleep(self, next_due: Micros | None) -> None:
        wait_s = LONGEST_SLEEP_S
        if next_due is not None:
            wait_s = min(wait_s, max(0.0, (next_due - self._clock()) / 1_000_000))
        try:
            await asyncio.wait_for(self._called.wait(), timeout=wait_s)
        except TimeoutError:
            return
