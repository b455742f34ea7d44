"""The fetch loop: an update is confirmed to the server only after it is committed here."""

from __future__ import annotations

import asyncio
import json
import logging
from collections.abc import Callable, Sequence
from dataclasses import replace
from typing import Any
from urllib.parse import urlencode

from sqlalchemy import Connection
from telegram import Bot
from telegram.error import Conflict, InvalidToken, RetryAfter, TelegramError
from telegram.request import BaseRequest

from bot.channels.gate import Gate
from bot.channels.telegram_bot.courtesy import Courtesy
from bot.channels.telegram_bot.deliver import Wait, outcome_of
from bot.channels.telegram_bot.incoming import ALLOWED_UPDATES, Migration, Ourselves, incoming_of
from bot.channels.telegram_bot.watchdog import Watchdog
from bot.channels.telegram_bot.writer import Writer
from bot.chat.file import LARGEST_BYTES
from bot.post import Arrival, Incoming, accept
from scouting_db.directory import Directory
from scouting_db.values import AccountId, Micros

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
    """Fetches updates, commits them to the inbox, and only then asks for later ones."""

    def __init__(
        self,
        *,
        bot: Bot,
        request: BaseRequest,
        me: Ourselves,
        account: AccountId,
        writer: Writer,
        courtesy: Courtesy,
        watchdog: Watchdog,
        clock: Callable[[], Micros],
        on_accept: Callable[[], None],
        gate: Gate | None = None,
    ) -> None:
        self._bot = bot
        self._request = request
        self._me = me
        self._account = account
        self._writer = writer
        self._courtesy = courtesy
        self._watchdog = watchdog
        self._clock = clock
        self._on_accept = on_accept
        self._gate = gate or Gate()
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
        """Commit, then move the offset. Taps are answered at once, outside the transaction."""
        if not updates:
            return
        read = [(int(raw["update_id"]), self._read(raw)) for raw in updates]
        arrivals = [
            Arrival(update_id=number, incoming=await self._with_file(raw, value))
            for raw, (number, value) in zip(updates, read, strict=True)
            if value is not None and not isinstance(value, Migration)
        ]
        self._courtesy.answer_taps(arrivals)
        moves = [value for _, value in read if isinstance(value, Migration)]
        admitted = self._gate.admit(arrivals, now=self._clock())
        await self._commit(admitted.arrivals, moves)
        self._courtesy.say(admitted.lines)
        self._offset = max(number for number, _ in read) + 1
        self._on_accept()

    def _read(self, raw: dict[str, Any]) -> Incoming | Migration | None:
        try:
            return incoming_of(raw, self._me, now=self._clock())
        except (LookupError, TypeError, AttributeError) as error:
            # Of the update itself only its number: the log never holds what people write.
            log.error("update %s cannot be read: %s", raw["update_id"], type(error).__name__)
            return None

    async def _with_file(self, raw: dict[str, Any], incoming: Incoming) -> Incoming:
        """The same with the file that came with it; without its content where it cannot be had.

        Fetched before the update is stored, so that a turn needs no network and a file once
        accepted is not lost. Bot API: getFile gives a path, the file server its content.
        """
        if incoming.file is None:
            return incoming
        document = raw["message"]["document"]
        if not 0 <= document.get("file_size", 0) <= LARGEST_BYTES:
            return incoming
        try:
            told: Any = await self._bot.do_api_request(
                "getfile", api_kwargs={"file_id": document["file_id"]}
            )
            url = f"{self._bot.base_file_url}/{told['file_path']}"
            content = bytes(await self._request.retrieve(url))
        except (TelegramError, LookupError, TypeError) as error:
            log.warning("a file could not be fetched: %s", type(error).__name__)
            return incoming
        if len(content) > LARGEST_BYTES:
            return incoming
        return replace(incoming, file=replace(incoming.file, content=content))

    async def _commit(self, arrivals: Sequence[Arrival], moves: Sequence[Migration]) -> None:
        """Store for good, however long the disk refuses; the server keeps updates for a day."""
        pause_s = FIRST_PAUSE_S
        while True:
            try:
                await self._writer.run(lambda connection: self._store(connection, arrivals, moves))
                return
            except Exception:
                log.exception("the inbox cannot be written; again in %.1f s", pause_s)
                self._courtesy.say_busy({arrival.incoming.chat for arrival in arrivals})
                await asyncio.sleep(pause_s)
                pause_s = min(2 * pause_s, LONGEST_PAUSE_S)

    def _store(
        self, connection: Connection, arrivals: Sequence[Arrival], moves: Sequence[Migration]
    ) -> None:
        directory = Directory(connection)
        for move in moves:
            chat = directory.chat(self._account, move.old_chat, is_group=True)
            directory.move_chat(chat.chat, move.new_chat)
        accept(connection, self._account, arrivals, now=self._clock())
