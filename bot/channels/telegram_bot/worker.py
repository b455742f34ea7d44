"""One webhook worker: an HTTP door, and behind it the same works as for polling.

Any number of them share a PostgreSQL (scouting_db.holds, scouting_db.directory.inbox); on SQLite
there is one.
"""

from __future__ import annotations

import asyncio
import contextlib
import logging
import os
import signal
import time
from collections.abc import AsyncIterator, Callable
from typing import TypeVar
from urllib.parse import urlsplit

from sqlalchemy.exc import SQLAlchemyError
from starlette.applications import Starlette
from starlette.routing import Route
from telegram import Bot
from telegram.error import InvalidToken

from bot.channels.telegram_bot.contact import (
    have_them_delivered,
    introduce,
    new_bot,
    set_menu,
)
from bot.channels.telegram_bot.counters import Counters
from bot.channels.telegram_bot.hands import Alone, AmongOthers, Hands
from bot.channels.telegram_bot.intake import Intake
from bot.channels.telegram_bot.limiter import Limiter
from bot.channels.telegram_bot.pages import Pages, Pulse
from bot.channels.telegram_bot.quiet import log_to_stderr
from bot.channels.telegram_bot.requests import AiohttpRequest
from bot.channels.telegram_bot.tidying import keep_tidy
from bot.channels.telegram_bot.webhook import Door
from bot.channels.telegram_bot.works import Works, assemble, now_micros, own_turn
from bot.channels.telegram_bot.writer import Writer
from bot.settings import Settings
from scouting_db.directory import Directory
from scouting_db.holds import ChatHolds
from scouting_db.session import Store, StoreError, open_store
from scouting_db.sole import AlreadyRunningError, sole_worker
from scouting_db.values import AccountId

log = logging.getLogger(__name__)

Result = TypeVar("Result")

FILE_CONNECTIONS = 8
"""Files that users sent, fetched at a time."""

DEFAULT_PATH = "/telegram"

BEGIN_AGAIN_S = 2.0
"""Pause where we cannot begin yet: no database, another process that serves this bot by itself, a
token that the server rejects. All were checked when we were started, so they may pass."""

JOIN_WITHIN_S = 1.0
"""So that a stop need not wait long for a thread that tries to join."""


class Worker:
    """Everything of one process; `application` is what the HTTP server runs. `failed` once a part
    of it died.
    """

    def __init__(self, settings: Settings) -> None:
        assert settings.token is not None, "checked before a worker starts"
        self.failed = False
        self._settings = settings
        self._token = settings.token
        self._counters = Counters()
        self._pulse = Pulse()
        self._store: Store | None = None
        self._works: Works | None = None
        self._held = contextlib.ExitStack()
        self._writers: list[Writer] = []
        self._tasks: list[asyncio.Task[None]] = []
        self._rounds: asyncio.Task[None] | None = None
        self._bot: Bot | None = None

    def application(self) -> Starlette:
        """The webhook's own path, and the pages."""
        door = Door(
            secret=self._settings.secret_for_webhook, counters=self._counters, intake=self._intake
        )
        pages = Pages(
            counters=self._counters,
            pulse=self._pulse,
            store=lambda: self._store,
            clock=now_micros,
        )
        return Starlette(
            routes=[
                Route("/health", pages.health, methods=["GET"]),
                Route("/ready", pages.ready, methods=["GET"]),
                Route(webhook_path(self._settings), door.receive, methods=["POST"]),
            ],
            lifespan=self._lifespan,
        )

    def _end_loudly(self, task: asyncio.Task[None]) -> None:
        """Rather than live on half alive: whoever watches over us starts another."""
        if task.cancelled() or task.exception() is None:
            return
        log.critical("a part of the worker died", exc_info=task.exception())
        self.failed = True
        os.kill(os.getpid(), signal.SIGTERM)

    def _intake(self) -> Intake | None:
        return None if self._works is None else self._works.intake

    @contextlib.asynccontextmanager
    async def _lifespan(self, _app: Starlette) -> AsyncIterator[None]:
        """The pages answer from the start; the door opens when we know who we are."""
        begin = asyncio.create_task(self._begin())
        begin.add_done_callback(self._end_loudly)
        try:
            yield
        finally:
            self._pulse.stopping = True
            begin.remove_done_callback(self._end_loudly)
            await self._stop(begin)

    async def _begin(self) -> None:
        settings = self._settings
        fetching = AiohttpRequest(connections=FILE_CONNECTIONS)
        self._bot = bot = new_bot(self._token, settings.api_base, fetching=fetching)
        self._store = store = await _patiently(lambda: open_store(settings.database, late=True))
        await _introduced(bot)
        hands = await self._join(store, f"telegram-{bot.id}")
        account = await _patiently(lambda: _start_account(store, bot))
        works = self._assemble(bot, fetching, store, account, hands)
        self._pulse.account = account
        self._pulse.beat()
        self._rounds = asyncio.create_task(works.rounds.run())
        self._rounds.add_done_callback(self._end_loudly)
        self._works = works
        self._tasks.append(asyncio.create_task(set_menu(bot)))
        self._tasks.append(asyncio.create_task(keep_tidy(store)))
        if settings.register and settings.webhook_url is not None:
            registers = have_them_delivered(bot, settings.webhook_url, settings.secret_for_webhook)
            self._tasks.append(asyncio.create_task(registers))
        log.info("serving as @%s", bot.username)

    async def _join(self, store: Store, name: str) -> Callable[[Limiter], Hands]:
        """Our place among the workers, or alone; waits while a process serves by itself."""
        if store.engine.dialect.name != "postgresql":
            await _patiently(
                lambda: self._held.enter_context(sole_worker(store, name, patience_s=JOIN_WITHIN_S))
            )
            return lambda _: Alone()
        holds = ChatHolds(store, name)
        self._held.callback(holds.close)
        await _patiently(lambda: holds.open(patience_s=JOIN_WITHIN_S))
        return lambda limiter: AmongOthers(
            holds, clock=time.monotonic, on_workers=lambda count: self._share(limiter, count)
        )

    def _share(self, limiter: Limiter, workers: int) -> None:
        self._pulse.workers = workers
        limiter.share(workers)

    def _assemble(
        self,
        bot: Bot,
        files: AiohttpRequest,
        store: Store,
        account: AccountId,
        hands: Callable[[Limiter], Hands],
    ) -> Works:
        """On PostgreSQL what comes in is stored beside the turns, not between them."""
        writer = Writer(store)
        accepting = Writer(store) if store.engine.dialect.name == "postgresql" else writer
        self._writers = list(dict.fromkeys((writer, accepting)))
        return assemble(
            self._settings,
            bot,
            account=account,
            turn=own_turn(),
            writer=writer,
            accepting=accepting,
            files=files,
            hands=hands,
            counters=self._counters,
            on_round=self._pulse.beat,
        )

    async def _stop(self, begin: asyncio.Task[None]) -> None:
        """The door is shut already. Finish what is in hand, and free the rest for others."""
        for task in (begin, *self._tasks):
            task.cancel()
        await asyncio.gather(begin, *self._tasks, return_exceptions=True)
        try:
            if self._works is not None and self._rounds is not None:
                self._rounds.remove_done_callback(self._end_loudly)
                await self._works.finish(self._rounds)
        except Exception:
            log.exception("not everything could be finished; the rest is done at the next start")
        for writer in self._writers:
            await writer.close()
        self._held.close()
        if self._bot is not None:
            await self._bot.shutdown()
        if self._store is not None:
            self._store.close()


def _start_account(store: Store, bot: Bot) -> AccountId:
    """Our account. Alone, what a killed predecessor was sending is due again; among others the
    chats that nobody holds tell what that is."""
    with store.writing() as connection:
        directory = Directory(connection)
        account = directory.account("telegram", str(bot.id), name=bot.username)
        if store.engine.dialect.name != "postgresql":
            directory.release(account)
        return account


async def _introduced(bot: Bot) -> None:
    """The server may reject a token for a while: it was checked when we were started."""
    while True:
        try:
            await introduce(bot)
            return
        except InvalidToken:
            log.error("the server does not know this token; again in %.0f s", BEGIN_AGAIN_S)
            await asyncio.sleep(BEGIN_AGAIN_S)


async def _patiently(attempt: Callable[[], Result]) -> Result:
    """What it gives, tried in a thread until it works."""
    while True:
        try:
            return await asyncio.to_thread(attempt)
        except (StoreError, AlreadyRunningError) as error:
            log.error("%s Again in %.0f s.", error, BEGIN_AGAIN_S)
        except SQLAlchemyError as error:
            log.error("no database: %s; again in %.0f s", type(error).__name__, BEGIN_AGAIN_S)
        await asyncio.sleep(BEGIN_AGAIN_S)


def webhook_path(settings: Settings) -> str:
    """Where updates come in: the path of the public address."""
    return urlsplit(settings.webhook_url or "").path or DEFAULT_PATH


def application() -> Starlette:
    """For the HTTP server, in each process anew: settings come from the environment."""
    settings = Settings.from_environment(os.environ)
    secrets = (str(settings.token), settings.secret_for_webhook)
    log_to_stderr(level=settings.log_level, secrets=secrets, as_json=True)
    return Worker(settings).application()
