"""The webhook's door over a store of its own, knocked at without a network.

Requests go through Starlette as the HTTP server would hand them in (httpx, ASGITransport).
"""

from __future__ import annotations

import asyncio
import json
from collections.abc import AsyncIterator, Iterable, Mapping
from contextlib import asynccontextmanager
from dataclasses import dataclass, field
from typing import Any, cast

import httpx
from bot_api_updates import BOT_ID
from starlette.applications import Starlette
from starlette.routing import Route
from telegram import Bot
from telegram.error import NetworkError
from telegram.request import BaseRequest

from bot.channels.gate import Gate
from bot.channels.telegram_bot.counters import Counters
from bot.channels.telegram_bot.courtesy import Courtesy
from bot.channels.telegram_bot.incoming import Ourselves
from bot.channels.telegram_bot.intake import Intake
from bot.channels.telegram_bot.webhook import SECRET_HEADER, Door
from bot.channels.telegram_bot.writer import Writer
from bot.post import Incoming
from scouting_db.directory import Directory
from scouting_db.session import Store
from scouting_db.values import AccountId, InboxRow, Micros

SECRET = "a-secret-of-the-tests"
NOW = Micros(1_750_000_000_000_000)


class SilentBot:
    """Says what it is told to nobody, and keeps it."""

    base_file_url = "http://127.0.0.1/file"

    def __init__(self) -> None:
        self.said: list[tuple[int, str]] = []
        self.answered: list[str] = []

    async def send_message(self, chat_id: int, text: str) -> None:
        self.said.append((chat_id, text))

    async def answer_callback_query(self, tap_id: str) -> None:
        self.answered.append(tap_id)

    async def do_api_request(self, _endpoint: str, **_more: Any) -> Any:
        raise NetworkError("no files here")


@dataclass(slots=True, kw_only=True)
class DoorAjar:
    """A door, what stands behind it, and a client in front of it."""

    store: Store
    account: AccountId
    client: httpx.AsyncClient
    counters: Counters
    bot: SilentBot
    accepted: list[None] = field(default_factory=list)

    async def deliver(self, update: Any, **headers: str) -> int:
        """The status that an update of the server's gets."""
        return await self.knock(json.dumps(update).encode(), {SECRET_HEADER: SECRET, **headers})

    async def knock(
        self, body: bytes | AsyncIterator[bytes], headers: Mapping[str, str | bytes]
    ) -> int:
        answer = await self.client.post(
            "/telegram",
            content=body,
            headers=[(key, cast(str, value)) for key, value in headers.items()],
        )
        return answer.status_code

    def stored(self) -> list[Incoming]:
        """What waits in the inbox, in the order in which it will be handled."""
        with self.store.writing() as connection:
            rows: Iterable[InboxRow] = Directory(connection).claim(self.account, limit=1000)
        return [Incoming.from_json(row.payload) for row in rows]

    def waiting(self) -> int:
        """How much that is."""
        with self.store.reading() as connection:
            return Directory(connection).waiting_rows(self.account).count


@asynccontextmanager
async def door_ajar(store: Store, *, gate: Gate | None = None) -> AsyncIterator[DoorAjar]:
    """A door over the store."""
    bot, counters, accepted = SilentBot(), Counters(), list[None]()
    writer = Writer(store)
    courtesy = Courtesy(bot=cast(Bot, bot), clock=lambda: 0.0)
    with store.writing() as connection:
        account = Directory(connection).account("telegram", str(BOT_ID), name="stand_in_bot")
    intake = Intake(
        bot=cast(Bot, bot),
        request=cast(BaseRequest, None),
        me=Ourselves(user_id=BOT_ID, name="stand_in_bot"),
        account=account,
        writer=writer,
        courtesy=courtesy,
        clock=lambda: NOW,
        on_accept=lambda: accepted.append(None),
        gate=gate,
    )
    door = Door(secret=SECRET, counters=counters, intake=lambda: intake)
    app = Starlette(routes=[Route("/telegram", door.receive, methods=["POST"])])
    transport = httpx.ASGITransport(app=app, raise_app_exceptions=False)
    async with httpx.AsyncClient(transport=transport, base_url="http://door") as client:
        yield DoorAjar(
            store=store,
            account=account,
            client=client,
            counters=counters,
            bot=bot,
            accepted=accepted,
        )
    await asyncio.sleep(0)
    await courtesy.close()
    await writer.close()
