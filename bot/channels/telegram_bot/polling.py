"""The process of `seamwise telegram`: start, work, stop gracefully."""

from __future__ import annotations

import asyncio
import contextlib
import logging
import signal
import sys
import time
from collections.abc import Awaitable, Iterator
from typing import Any

from sqlalchemy.exc import SQLAlchemyError
from telegram import Bot
from telegram.error import InvalidToken

from bot.channels.telegram_bot.contact import (
    REJECTED,
    fetch_ourselves,
    introduce,
    new_bot,
    set_menu,
)
from bot.channels.telegram_bot.counters import Counters
from bot.channels.telegram_bot.fetch import Fetch
from bot.channels.telegram_bot.hands import Alone
from bot.channels.telegram_bot.quiet import log_to_stderr
from bot.channels.telegram_bot.requests import AiohttpRequest
from bot.channels.telegram_bot.tidying import keep_tidy
from bot.channels.telegram_bot.watchdog import Watchdog
from bot.channels.telegram_bot.works import Works, assemble, own_turn
from bot.channels.telegram_bot.writer import Writer
from bot.post import Turn
from bot.settings import NO_TOKEN, Settings
from scouting_db.directory import Directory
from scouting_db.passing import is_passing
from scouting_db.session import Store, StoreError, open_store
from scouting_db.sole import AlreadyRunningError, sole_worker
from scouting_db.values import AccountId

log = logging.getLogger(__name__)

EXIT_DONE, EXIT_FAILED, EXIT_SETTINGS = 0, 1, 2

REFUSED = """\
The database refuses: it is away, its disk is full, or another program holds it.
Nothing that was accepted is lost. Start again when it is well.
"""


async def run(settings: Settings, *, turn: Turn | None = None) -> int:
    """Serve until SIGINT or SIGTERM; the exit code. Without `turn`, the conversation's own."""
    if settings.token is None:
        sys.stderr.write(NO_TOKEN)
        return EXIT_SETTINGS
    log_to_stderr(level=settings.log_level, secrets=(settings.token,))
    stopped = asyncio.Event()
    try:
        with _open(settings) as store, _stop_signals(stopped):
            return await _serve(settings, settings.token, store, turn or own_turn(), stopped)
    except InvalidToken:
        sys.stderr.write(REJECTED)
        return EXIT_SETTINGS
    except (StoreError, AlreadyRunningError) as error:
        sys.stderr.write(f"{error}\n")
        return EXIT_FAILED
    except SQLAlchemyError as error:
        if not is_passing(error):
            raise
        log.error("the database refuses: %s", type(error).__name__)
        sys.stderr.write(REFUSED)
        return EXIT_FAILED


@contextlib.contextmanager
def _open(settings: Settings) -> Iterator[Store]:
    store = open_store(settings.database, late=True)
    try:
        yield store
    finally:
        store.close()


@contextlib.contextmanager
def _stop_signals(stopped: asyncio.Event) -> Iterator[None]:
    """SIGINT and SIGTERM set the event; where the platform has no such handlers, none do."""
    loop = asyncio.get_running_loop()
    signals = (signal.SIGINT, signal.SIGTERM)
    with contextlib.suppress(NotImplementedError):
        for each in signals:
            loop.add_signal_handler(each, stopped.set)
    try:
        yield
    finally:
        with contextlib.suppress(NotImplementedError):
            for each in signals:
                loop.remove_signal_handler(each)


async def _serve(
    settings: Settings, token: str, store: Store, turn: Turn, stopped: asyncio.Event
) -> int:
    fetching = AiohttpRequest(connections=1)
    bot = new_bot(token, settings.api_base, fetching=fetching)
    try:
        if not await _unless_stopped(introduce(bot), stopped):
            return EXIT_DONE
        with contextlib.ExitStack() as held:
            alone = sole_worker(store, f"telegram-{bot.id}")
            hands = Alone(await asyncio.to_thread(held.enter_context, alone))
            # Not before: a webhook worker that keeps its place must not go deaf.
            if not await _unless_stopped(fetch_ourselves(bot), stopped):
                return EXIT_DONE
            return await _work(settings, bot, fetching, store, turn, hands, stopped)
    finally:
        await bot.shutdown()


async def _unless_stopped(work: Awaitable[None], stopped: asyncio.Event) -> bool:
    """True where the work ended by itself, False where we were stopped before."""
    task, stop = asyncio.ensure_future(work), asyncio.ensure_future(stopped.wait())
    try:
        await asyncio.wait((task, stop), return_when=asyncio.FIRST_COMPLETED)
        if not task.done():
            return False
        task.result()
        return True
    finally:
        await _cancel(task, stop)


async def _cancel(*tasks: asyncio.Future[Any]) -> None:
    for task in tasks:
        task.cancel()
    await asyncio.gather(*tasks, return_exceptions=True)


async def _work(
    settings: Settings,
    bot: Bot,
    fetching: AiohttpRequest,
    store: Store,
    turn: Turn,
    hands: Alone,
    stopped: asyncio.Event,
) -> int:
    writer = Writer(store)
    tidying = asyncio.create_task(keep_tidy(store))
    try:
        account = await writer.run(lambda connection: _start_account(Directory(connection), bot))
        works = assemble(
            settings,
            bot,
            account=account,
            turn=turn,
            writer=writer,
            accepting=writer,
            files=fetching,
            hands=lambda _: hands,
            counters=Counters(),
        )
        log.info("serving as @%s", bot.username)
        return await _run_parts(works, bot, fetching, stopped)
    finally:
        await _cancel(tidying)
        await writer.close()


def _start_account(directory: Directory, bot: Bot) -> AccountId:
    """Our account; what a killed predecessor was sending is due again."""
    account = directory.account("telegram", str(bot.id), name=bot.username)
    directory.release(account)
    return account


async def _run_parts(
    works: Works, bot: Bot, fetching: AiohttpRequest, stopped: asyncio.Event
) -> int:
    """Work until stopped, or until a part dies: then end loudly rather than half alive."""
    watchdog = Watchdog(clock=time.monotonic)
    fetcher = Fetch(bot=bot, request=fetching, intake=works.intake, watchdog=watchdog)
    fetch, rounds = asyncio.create_task(fetcher.run()), asyncio.create_task(works.rounds.run())
    watch, menu = asyncio.create_task(watchdog.run()), asyncio.create_task(set_menu(bot))
    stop = asyncio.create_task(stopped.wait())
    done, _ = await asyncio.wait((fetch, rounds, watch, stop), return_when=asyncio.FIRST_COMPLETED)
    await _cancel(fetch, watch, menu, stop)
    await works.finish(rounds)
    for task in done - {stop}:
        task.result()
        return EXIT_FAILED
    return EXIT_DONE
