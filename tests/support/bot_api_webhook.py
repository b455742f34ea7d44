"""How the stand-in delivers updates to a webhook: a lane to each chat, again until it is taken.

Source: Bot API, setWebhook and Update, and the server's own source (tdlib/telegram-bot-api,
WebhookActor), from memory: one request of a lane in flight (a lane is a chat; for taps a user),
up to `max_connections` in all, and again after a break or an answer that is not 2xx. The real
pauses begin at a second and double; here they are short.
"""

from __future__ import annotations

import asyncio
import json
from collections import deque
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any, Protocol

import aiohttp

SECRET_HEADER = "X-Telegram-Bot-Api-Secret-Token"
MAX_CONNECTIONS = 40
FIRST_PAUSE_S = 0.02
LONGEST_PAUSE_S = 0.5
ANSWER_WITHIN_S = 10.0


class DeliveryWeather(Protocol):
    """What befalls deliveries by chance."""

    def place(self, waiting: int) -> int:
        """Behind how many of its lane's waiting updates a new one comes."""

    def loses_answer(self) -> bool:
        """Whether the answer to a delivery is lost on the way, so that it is repeated."""


@dataclass(slots=True)
class Webhook:
    """Where updates go and how far they are. `also` are more addresses, taken in turn, for
    processes that listen on ports of their own. Every `twice_every`-th update (0: none) is
    delivered once more, as after an answer that was lost, while later ones are on their way.
    """

    url: str | None = None
    secret: str | None = None
    also: list[str] = field(default_factory=list)
    twice_every: int = 0
    taken: int = 0
    answers: list[int] = field(default_factory=list)
    weather: DeliveryWeather | None = None
    _lanes: dict[str, deque[dict[str, Any]]] = field(default_factory=dict)
    _tasks: set[asyncio.Task[None]] = field(default_factory=set)
    _session: aiohttp.ClientSession | None = None
    _room: asyncio.Semaphore = field(default_factory=lambda: asyncio.Semaphore(MAX_CONNECTIONS))
    _turn: int = 0

    def set(self, url: str | None, secret: str | None) -> None:
        """The address that setWebhook told; None after deleteWebhook."""
        self.url, self.secret = url, secret

    def push(self, update: dict[str, Any]) -> None:
        """Deliver it after what its lane still has to deliver."""
        lane = _lane_of(update)
        if lane in self._lanes:
            # The first is on its way.
            waiting = len(self._lanes[lane]) - 1
            place = waiting if self.weather is None else self.weather.place(waiting)
            self._lanes[lane].insert(1 + place, update)
            return
        self._lanes[lane] = deque([update])
        self._start(self._run(lane))

    @property
    def waiting(self) -> int:
        """Updates that were not taken yet."""
        return sum(map(len, self._lanes.values()))

    async def close(self) -> None:
        for task in self._tasks:
            task.cancel()
        await asyncio.gather(*self._tasks, return_exceptions=True)
        if self._session is not None:
            await self._session.close()

    def _start(self, work: Any) -> None:
        task = asyncio.create_task(work)
        self._tasks.add(task)
        task.add_done_callback(self._tasks.discard)

    async def _run(self, lane: str) -> None:
        updates = self._lanes[lane]
        while updates:
            first = updates[0]
            await self._until_taken(first)
            self.taken += 1
            if self.twice_every and self.taken % self.twice_every == 0:
                self._start(self._once_more(first))
            updates.popleft()
        del self._lanes[lane]

    async def _once_more(self, update: dict[str, Any]) -> None:
        await asyncio.sleep(FIRST_PAUSE_S)
        await self._until_taken(update)

    async def _until_taken(self, update: dict[str, Any]) -> None:
        pause_s = FIRST_PAUSE_S
        while not await self._is_taken(update):
            await asyncio.sleep(pause_s)
            pause_s = min(2 * pause_s, LONGEST_PAUSE_S)

    async def _is_taken(self, update: dict[str, Any]) -> bool:
        if self.url is None:
            return False
        self._turn += 1
        urls = [self.url, *self.also]
        url = urls[self._turn % len(urls)]
        headers = {"Content-Type": "application/json"}
        if self.secret is not None:
            headers[SECRET_HEADER] = self.secret
        if self._session is None:
            self._session = aiohttp.ClientSession(
                timeout=aiohttp.ClientTimeout(total=ANSWER_WITHIN_S)
            )
        try:
            async with (
                self._room,
                self._session.post(url, data=json.dumps(update), headers=headers) as answer,
            ):
                self.answers.append(answer.status)
                is_lost = self.weather is not None and self.weather.loses_answer()
                return 200 <= answer.status < 300 and not is_lost
        except (aiohttp.ClientError, TimeoutError):
            self.answers.append(0)
            return False


def _lane_of(update: Mapping[str, Any]) -> str:
    if "callback_query" in update:
        return f"user {update['callback_query']['from']['id']}"
    message = update.get("message") or update.get("edited_message") or {}
    return f"chat {message.get('chat', {}).get('id')}"
