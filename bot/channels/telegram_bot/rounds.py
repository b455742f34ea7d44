"""Rounds: store marks, take turns, hand out what is due, in one transaction after another."""

from __future__ import annotations

import asyncio
import contextlib
import logging
from collections.abc import Callable, Collection, Sequence
from dataclasses import replace
from functools import partial

from sqlalchemy import Connection

from bot.channels.telegram_bot.counters import Counters
from bot.channels.telegram_bot.hands import Alone, Hands
from bot.channels.telegram_bot.sender import Sender
from bot.channels.telegram_bot.writer import Writer
from bot.chat.reminding import plain, remind
from bot.post import LEASE_MICROS, Batch, Limits, Turn, give_reminders, run_batch
from knowledge.dataclass import dataclass
from scouting_db.directory import Directory
from scouting_db.holds import HoldsLostError
from scouting_db.values import AccountId, ChatId, Micros, OutboxRow, Sent

log = logging.getLogger(__name__)

BUSY_PAUSE_S = 0.02
"""The first pause before another look at what other workers have in hand; it doubles until we
would look anyway."""

RESTS_AFTER_S = 0.25
"""A pause after which the next message may take a moment more: it is no stream of them."""

FIRST_PAUSE_S = 0.5
LONGEST_PAUSE_S = 30.0
"""Pauses while the database refuses (a full disk) double from the first to the longest."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Round:
    """What a round handed out, whether more is open, and when the next row is due; `busy` says
    that other workers have in hand what is left, `held_up` that it waits for marks.
    """

    rows: tuple[OutboxRow, ...]
    more: bool
    next_due: Micros | None
    busy: bool
    held_up: bool
    batch: Batch


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
        hands: Hands | None = None,
        counters: Counters | None = None,
        on_round: Callable[[], None] = lambda: None,
        say_busy: Callable[[Collection[str]], None] = lambda _: None,
        at_rest: Callable[[], None] = lambda: None,
    ) -> None:
        self._account = account
        self._turn = turn
        self._limits = limits
        self._writer = writer
        self._sender = sender
        self._clock = clock
        self._called = called
        self._say_busy = say_busy
        self._at_rest = at_rest
        self._hands = hands or Alone()
        self._counters = counters or Counters()
        self._on_round = on_round
        self._stopping = False
        self._begun: asyncio.Future[Round] | None = None
        self._missed = False
        self._storing: asyncio.Future[None] | None = None
        self._busy_pause_s = BUSY_PAUSE_S

    def stop(self) -> None:
        """End `run` after the round it is in."""
        self._stopping = True
        self._called.set()

    def begin(self) -> None:
        """Hand in a round now, behind what the writer was just handed, so that they share a
        commit: left for later, it finds the writer at that commit already, and needs another.
        """
        if self._begun is None:
            self._begun = self._hand_in()
        else:
            self._missed = True
        self._called.set()

    async def run(self) -> None:
        """Round after round."""
        pause_s = FIRST_PAUSE_S
        while not self._stopping:
            self._called.clear()
            try:
                done = await self.take_one()
                pause_s = FIRST_PAUSE_S
            except HoldsLostError:
                log.warning("the database let go of our chats; others may go on with them")
                continue
            except Exception:
                log.exception("the database refused a round; again in %.1f s", pause_s)
                await self._tell_waiting()
                await asyncio.sleep(pause_s)
                pause_s = min(2 * pause_s, LONGEST_PAUSE_S)
                continue
            if not done.more and not self._stopping:
                await self._sleep(done)

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
        begun, self._begun = self._begun or self._hand_in(), None
        try:
            done = await begun
        except HoldsLostError:
            # Others may send what is in our lanes: of each chat at most the message on its way.
            await self._sender.abandon()
            self._hands.recover()
            self._called.set()
            raise
        self._on_round()
        self._count(done.batch)
        if self._hands.holds_more_than(self._sender.in_hand):
            self._called.set()
        return replace(done, more=done.more or self._missed)

    def _hand_in(self) -> asyncio.Future[Round]:
        self._missed = False
        marks, in_hand = self._sender.marks(), self._sender.in_hand
        done = self._writer.hand_in(lambda at: self._work(at, marks, in_hand))
        # Not by whoever waits for the round: before anyone else who hears of the same commit, so
        # that no lane ends between the lease of a row and the row.
        done.add_done_callback(partial(self._hand_over, marks))
        return done

    def _hand_over(self, marks: Sequence[Sent], done: asyncio.Future[Round]) -> None:
        if done.cancelled() or done.exception() is not None:
            return
        self._counters.sent += self._sender.marks_stored(marks)
        self._sender.take(done.result().rows, held_up=done.result().held_up)

    def store_soon(self) -> None:
        """Store what was sent where nothing else waits for a round, of which that is a part."""
        marks = self._sender.marks()
        if marks and self._storing is None:
            self._storing = self._writer.hand_in(lambda at: Directory(at).mark_sent(marks))
            self._storing.add_done_callback(partial(self._stored, marks))

    def _stored(self, marks: Sequence[Sent], done: asyncio.Future[None]) -> None:
        self._storing = None
        if done.cancelled():
            return
        if done.exception() is None:
            self._counters.sent += self._sender.marks_stored(marks)
        if done.exception() is not None or self._stopping:
            # A round stores them, and waits for the database where that refuses.
            self._called.set()

    def _count(self, batch: Batch) -> None:
        self._counters.handled += batch.handled - batch.failed
        self._counters.retried += batch.failed - batch.given_up
        self._counters.failed += batch.given_up

    async def finish(self, *, within_s: float) -> None:
        """Rounds until nothing is open, due or being sent, or until the time is over."""
        with contextlib.suppress(TimeoutError):
            async with asyncio.timeout(within_s):
                while True:
                    self._called.clear()
                    try:
                        done = await self.take_one()
                    except HoldsLostError:
                        continue
                    if done.more or done.rows:
                        continue
                    if self._sender.is_idle:
                        return
                    await self._called.wait()

    async def store_marks(self) -> None:
        """Store what was sent since the last round."""
        marks = self._sender.marks()
        await self._writer.run(lambda connection: Directory(connection).mark_sent(marks))
        self._sender.marks_stored(marks)

    def _work(
        self, connection: Connection, marks: Sequence[Sent], in_hand: Collection[ChatId]
    ) -> Round:
        self._hands.check()
        directory = Directory(connection)
        directory.mark_sent(marks)
        began = self._clock()
        batch = run_batch(
            connection,
            self._account,
            self._turn,
            now=began,
            limits=self._limits,
            lease_until=Micros(began + LEASE_MICROS) if self._hands.all_ours else None,
        )
        now = self._clock()
        given = give_reminders(
            connection, self._account, remind, plain=plain, now=now, limits=self._limits
        )
        more = batch.full or given > 0
        leased = self._hands.lease(directory, self._account, now=now, in_hand=in_hand)
        # What was just posted precedes what was found: nothing found is an earlier reply.
        rows = batch.leased + leased.rows
        idle = not (rows or more)
        due = self._hands.next_due(directory, self._account, now=now) if idle else None
        return Round(
            rows=rows,
            more=more,
            next_due=due,
            busy=batch.busy or leased.busy,
            held_up=leased.held_up,
            batch=batch,
        )

    async def _sleep(self, done: Round) -> None:
        wait_s = self._hands.look_every_s
        if done.next_due is not None:
            wait_s = min(wait_s, max(0.0, (done.next_due - self._clock()) / 1_000_000))
        if done.busy and not done.rows:
            wait_s = min(wait_s, self._busy_pause_s)
            self._busy_pause_s = min(2 * self._busy_pause_s, self._hands.look_every_s)
        else:
            self._busy_pause_s = BUSY_PAUSE_S
        if wait_s > RESTS_AFTER_S:
            if await self._is_called(within_s=RESTS_AFTER_S):
                return
            self._at_rest()
            wait_s -= RESTS_AFTER_S
        await self._is_called(within_s=wait_s)

    async def _is_called(self, *, within_s: float) -> bool:
        with contextlib.suppress(TimeoutError):
            return await asyncio.wait_for(self._called.wait(), timeout=within_s)
        return False
