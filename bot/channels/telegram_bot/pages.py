"""The pages on which operators and load balancers see how a worker is doing: numbers only."""

from __future__ import annotations

import asyncio
import logging
import os
import time
from collections.abc import Callable
from dataclasses import asdict

from starlette.requests import Request
from starlette.responses import JSONResponse, Response

from bot.channels.telegram_bot.counters import Counters
from knowledge.dataclass import dataclass
from scouting_db.directory import Directory
from scouting_db.session import Store
from scouting_db.values import AccountId, Micros, Waiting

log = logging.getLogger(__name__)

KEPT_S = 1.0
"""The queue is looked at once a second at most, however often somebody asks."""

LOOK_WITHIN_S = 5.0
STUCK_AFTER_S = 60.0
"""Rounds come every second; a worker without one for so long does not work. A guess of ours."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Queue:
    """What waits, of all workers' work."""

    inbox: Waiting
    outbox: Waiting

    def shown(self, now: Micros) -> dict[str, float | int]:
        """How many, and for how many seconds the oldest has waited (0 without any)."""
        return {
            "inbox": self.inbox.count,
            "inbox_oldest_s": _age_s(self.inbox, now),
            "outbox": self.outbox.count,
            "outbox_oldest_s": _age_s(self.outbox, now),
        }


def _age_s(waiting: Waiting, now: Micros) -> float:
    return 0.0 if waiting.since is None else round(max(0, now - waiting.since) / 1_000_000, 1)


@dataclass(slots=True)
class Pulse:
    """How far a worker is: `account` once it works, `workers` as the database counts them."""

    account: AccountId | None = None
    workers: int = 1
    round_at: float = 0.0
    stopping: bool = False

    def beat(self) -> None:
        """A round is done."""
        self.round_at = time.monotonic()


class Pages:
    """`/health`: we live, and our numbers. `/ready`: send us updates, or (503) not now."""

    def __init__(
        self,
        *,
        counters: Counters,
        pulse: Pulse,
        store: Callable[[], Store | None],
        clock: Callable[[], Micros],
    ) -> None:
        self._counters = counters
        self._pulse = pulse
        self._store = store
        self._clock = clock
        self._began = time.monotonic()
        self._looked_at = -KEPT_S
        self._queue: Queue | None = None
        self._turn = asyncio.Lock()

    async def health(self, _request: Request) -> Response:
        """200 as long as the process answers and its rounds go on."""
        queue = await self._look()
        stuck = self._is_stuck()
        told = {
            "status": "stuck" if stuck else "ok",
            "process": os.getpid(),
            "up_s": round(time.monotonic() - self._began, 1),
            "workers": self._pulse.workers,
            "counters": asdict(self._counters),
            "queue": None if queue is None else queue.shown(self._clock()),
        }
        return JSONResponse(told, 503 if stuck else 200)

    async def ready(self, _request: Request) -> Response:
        """200 where an update would be stored and handled now."""
        why = await self._not_ready()
        return JSONResponse({"ready": why is None, "why": why}, 200 if why is None else 503)

    async def _not_ready(self) -> str | None:
        if self._pulse.stopping:
            return "stopping"
        if self._pulse.account is None:
            return "starting"
        if self._is_stuck():
            return "stuck"
        return "no database" if await self._look() is None else None

    def _is_stuck(self) -> bool:
        if self._pulse.account is None or self._pulse.stopping:
            return False
        return time.monotonic() - self._pulse.round_at > STUCK_AFTER_S

    async def _look(self) -> Queue | None:
        """The queue; None where it cannot be seen."""
        async with self._turn:
            if time.monotonic() - self._looked_at >= KEPT_S:
                self._queue = await self._look_afresh()
                self._looked_at = time.monotonic()
            return self._queue

    async def _look_afresh(self) -> Queue | None:
        store, account = self._store(), self._pulse.account
        if store is None or account is None:
            return None
        try:
            async with asyncio.timeout(LOOK_WITHIN_S):
                return await asyncio.to_thread(_queue_in, store, account)
        except Exception as error:
            log.warning("the queue cannot be seen: %s", type(error).__name__)
            return None


def _queue_in(store: Store, account: AccountId) -> Queue:
    with store.reading() as connection:
        directory = Directory(connection)
        return Queue(inbox=directory.waiting_rows(account), outbox=directory.unsent_rows(account))
