"""The command `seamwise serve`: what can be known beforehand is checked, then workers run."""

from __future__ import annotations

import asyncio
import signal
import sys

import uvicorn
from starlette.applications import Starlette
from telegram.error import InvalidToken, TelegramError
from uvicorn.supervisors import Multiprocess

from bot.channels.telegram_bot.contact import REJECTED, new_bot
from bot.channels.telegram_bot.polling import EXIT_DONE, EXIT_FAILED, EXIT_SETTINGS
from bot.channels.telegram_bot.quiet import log_to_stderr
from bot.channels.telegram_bot.requests import AiohttpRequest
from bot.channels.telegram_bot.worker import Worker
from bot.settings import NO_TOKEN, Settings
from knowledge.dataclass import dataclass
from scouting_db.holds import ChatHolds
from scouting_db.session import Store, StoreError, open_store
from scouting_db.sole import PATIENCE_S, AlreadyRunningError, sole_worker

APPLICATION = "bot.channels.telegram_bot.worker:application"

REQUESTS_AT_A_TIME = 512
"""More than the server opens connections (Bot API, setWebhook: max_connections, at most 100)."""

KEEP_ALIVE_S = 75
FINISH_REQUESTS_S = 3
"""Requests on their way at a stop are answered within this; then turns and replies finish."""

NO_URL = """\
Seamwise needs to know where the messenger can reach it, an address with https:
  SEAMWISE_WEBHOOK_URL=https://bot.example.org/telegram seamwise serve
Or, where you set the webhook yourself: seamwise serve --no-register
Without an address of your own, let it fetch its messages: seamwise telegram
"""

ONE_ON_SQLITE = """\
On a SQLite file one worker works at a time: leave --workers away, or name a PostgreSQL database,
SEAMWISE_DATABASE=postgresql://user@host/name (needs the extra: pip install '.[postgres,webhook]').
"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Served:
    """Where we listen, and with how many processes."""

    host: str
    port: int
    workers: int


def serve(settings: Settings, served: Served) -> int:
    """Run until SIGINT or SIGTERM; the exit code."""
    if settings.token is None:
        sys.stderr.write(NO_TOKEN)
        return EXIT_SETTINGS
    if settings.register and settings.webhook_url is None:
        sys.stderr.write(NO_URL)
        return EXIT_SETTINGS
    secrets = (settings.token, settings.secret_for_webhook)
    log_to_stderr(level=settings.log_level, secrets=secrets, as_json=True)
    try:
        asyncio.run(_check_token(settings, settings.token))
        store = open_store(settings.database)
        try:
            if served.workers > 1 and store.engine.dialect.name != "postgresql":
                sys.stderr.write(ONE_ON_SQLITE)
                return EXIT_SETTINGS
            _check_that_nobody_is_alone(store, settings.token)
        finally:
            store.close()
    except InvalidToken:
        sys.stderr.write(REJECTED)
        return EXIT_SETTINGS
    except (StoreError, AlreadyRunningError) as error:
        sys.stderr.write(f"{error}\n")
        return EXIT_FAILED
    return _run(settings, served)


async def _check_token(settings: Settings, token: str) -> None:
    """InvalidToken where the server rejects it; where it is away, workers wait for it."""
    bot = new_bot(token, settings.api_base, fetching=AiohttpRequest(connections=1))
    try:
        await bot.initialize()
    except InvalidToken:
        raise
    except TelegramError:
        return
    finally:
        await bot.shutdown()


def _check_that_nobody_is_alone(store: Store, token: str) -> None:
    """AlreadyRunningError where a process serves this bot by itself and stays."""
    name = f"telegram-{token.partition(':')[0]}"
    if store.engine.dialect.name != "postgresql":
        with sole_worker(store, name):
            return
    holds = ChatHolds(store, name)
    try:
        holds.open(patience_s=PATIENCE_S)
    finally:
        holds.close()


def _run(settings: Settings, served: Served) -> int:
    """One worker in this process; several in processes of their own, which uvicorn watches over:
    it starts another where one dies, and passes a stop on to all.
    """
    if served.workers > 1:
        config = _config(APPLICATION, served)
        Multiprocess(config, sockets=[config.bind_socket()]).run()
        return EXIT_DONE
    return asyncio.run(_run_one(Worker(settings), served))


def _config(application: Starlette | str, served: Served) -> uvicorn.Config:
    """For an application, or for where each process finds the function that makes one."""
    return uvicorn.Config(
        application,
        factory=isinstance(application, str),
        host=served.host,
        port=served.port,
        workers=served.workers,
        loop="asyncio",
        http="h11",
        ws="none",
        lifespan="on",
        log_config=None,
        access_log=False,
        server_header=False,
        proxy_headers=False,
        limit_concurrency=REQUESTS_AT_A_TIME,
        timeout_keep_alive=KEEP_ALIVE_S,
        timeout_graceful_shutdown=FINISH_REQUESTS_S,
    )


async def _run_one(worker: Worker, served: Served) -> int:
    """The HTTP server ends at a signal and raises it again afterwards, for whoever handled it
    before: us, so that a stop as asked for is no failure.
    """
    server = uvicorn.Server(_config(worker.application(), served))
    loop = asyncio.get_running_loop()
    for each in (signal.SIGINT, signal.SIGTERM):
        loop.add_signal_handler(each, setattr, server, "should_exit", True)
    await server.serve()
    return EXIT_FAILED if worker.failed else EXIT_DONE
