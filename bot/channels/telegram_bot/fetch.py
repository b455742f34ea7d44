"""The fetch loop: an update is confirmed to the server only after it is on the disk here."""

from __future__ import annotations

import asyncio
import json
import logging
from collections.abc import Sequence
from typing import Any
from urllib.parse import urlencode

from telegram import Bot
from telegram.error import Conflict, InvalidToken, RetryAfter, TelegramError
from telegram.request import BaseRequest

from bot.channels.telegram_bot.deliver import Wait, outcome_of
from bot.channels.telegram_bot.incoming import ALLOWED_UPDATES
from bot.channels.telegram_bot.intake import Admitted, Intake
from bot.channels.telegram_bot.watchdog import Watchdog

log = logging.getLogger(__name__)

LONG_POLL_S = 25
"""How long the server may hold a fetch open; common practice is 10 to 50."""

READ_GRACE_S = 10.0
"""How much later than the long poll's end an answer may still come."""

FIRST_PAUSE_S = 0.5
LONGEST_PAUSE_S = 30.0
"""Pauses after a failed fetch double from the first to the longest."""

CONFLICT = (
    "another program fetches this bot's messages (409): stop the other one, "
    "or get a new token. Trying again in %.0f s"
)
CONFLICT_PAUSE_S = 5.0


class Fetch:
    """Fetches updates, stores them in the inbox for good, and only then asks for later ones."""

    def __init__(
        self,
        *,
        bot: Bot,
        request: BaseRequest,
        intake: Intake,
        watchdog: Watchdog,
    ) -> None:
        self._bot = bot
        self._request = request
        self._intake = intake
        self._watchdog = watchdog
        self._offset = 0

    async def run(self) -> None:
        """Fetch until cancelled. InvalidToken where the server no longer knows us."""
        pause_s = FIRST_PAUSE_S
        while True:
            try:
                updates = await self._updates()
                self._watchdog.fetched()
                await self._take(updates)
                pause_s = FIRST_PAUSE_S
            except InvalidToken:
                raise
            except Conflict:
                log.error(CONFLICT, CONFLICT_PAUSE_S)
                await asyncio.sleep(CONFLICT_PAUSE_S)
            except TelegramError as error:
                pause_s = await self._pause(error, pause_s)

    async def _pause(self, error: TelegramError, pause_s: float) -> float:
        """Wait as the server says, or longer at each fault; returns the next pause."""
        if isinstance(error, RetryAfter):
            outcome = outcome_of(error)
            await asyncio.sleep(outcome.seconds if isinstance(outcome, Wait) else pause_s)
            return pause_s
        log.warning("fetch failed: %s; again in %.1f s", error.message, pause_s)
        await asyncio.sleep(pause_s)
        return min(2 * pause_s, LONGEST_PAUSE_S)

    async def _updates(self) -> Sequence[dict[str, Any]]:
        """The next updates as the server sent them.

        Not Bot.get_updates: where the library cannot read one update that fails as a whole, and
        we would ask for the same one for ever.
        """
        query = urlencode(
            {
                "offset": self._offset,
                "timeout": LONG_POLL_S,
                "allowed_updates": json.dumps(ALLOWED_UPDATES),
            }
        )
        answer = await self._request.post(
            f"{self._bot.base_url}/getUpdates?{query}", read_timeout=LONG_POLL_S + READ_GRACE_S
        )
        return answer if isinstance(answer, list) else []

    async def _take(self, updates: Sequence[dict[str, Any]]) -> None:
        """Store, then move the offset."""
        if not updates:
            return
        await self._store(await self._intake.admit(updates))
        self._offset = max(int(raw["update_id"]) for raw in updates) + 1
        # Replies leave before more is asked for: their lanes begin in the loop's next round.
        for _ in range(2):
            await asyncio.sleep(0)

    async def _store(self, admitted: Admitted) -> None:
        """Store for good, however long the disk refuses; the server keeps updates for a day."""
        pause_s = FIRST_PAUSE_S
        while True:
            try:
                await self._intake.store(admitted)
                return
            except Exception:
                log.exception("the inbox cannot be written; again in %.1f s", pause_s)
                await asyncio.sleep(pause_s)
                pause_s = min(2 * pause_s, LONGEST_PAUSE_S)
