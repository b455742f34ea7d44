"""Small answers outside the transaction: a tap is acknowledged, a busy notebook is admitted."""

from __future__ import annotations

import asyncio
import logging
from collections.abc import Callable, Collection, Coroutine, Sequence
from typing import Any

from telegram import Bot
from telegram.error import TelegramError

from bot.channels.gate import Line
from bot.chat.wording import wording
from bot.post import Arrival

log = logging.getLogger(__name__)

BUSY_EVERY_S = 600.0
"""A chat hears at most once in ten minutes that the notebook is busy."""


class Courtesy:
    """Sends and forgets: a failure here is nobody's loss."""

    def __init__(self, *, bot: Bot, clock: Callable[[], float]) -> None:
        self._bot = bot
        self._clock = clock
        self._running: set[asyncio.Task[None]] = set()
        self._told_busy: dict[str, float] = {}

    def answer_taps(self, arrivals: Sequence[Arrival]) -> None:
        """Stop the button's waiting sign; late or repeated answers are errors to swallow."""
        for arrival in arrivals:
            if arrival.incoming.tap_id is not None:
                self._start(self._bot.answer_callback_query(arrival.incoming.tap_id))

    def say(self, lines: Sequence[Line]) -> None:
        """Lines of ours to who is not let in, or not now."""
        for line in lines:
            self._start(self._bot.send_message(int(line.chat), line.text))

    def say_busy(self, chats: Collection[str]) -> None:
        """Tell each chat that its message is still waiting, once in a while."""
        now = self._clock()
        for chat in chats:
            if now - self._told_busy.get(chat, -BUSY_EVERY_S) < BUSY_EVERY_S:
                continue
            self._told_busy = {
                each: at for each, at in self._told_busy.items() if now - at < BUSY_EVERY_S
            } | {chat: now}
            self._start(self._bot.send_message(int(chat), wording("busy")))

    async def close(self) -> None:
        """Wait for nothing any more."""
        for task in self._running:
            task.cancel()
        await asyncio.gather(*self._running, return_exceptions=True)

    def _start(self, call: Coroutine[Any, Any, Any]) -> None:
        task = asyncio.create_task(_swallow(call))
        self._running.add(task)
        task.add_done_callback(self._running.discard)


async def _swallow(call: Coroutine[Any, Any, Any]) -> None:
    try:
        await call
    except TelegramError as error:
        log.info("a courtesy was not taken: %s", type(error).__name__)
