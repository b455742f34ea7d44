"""The process of `seamwise telegram`: start, work, stop gracefully."""

from __future__ import annotations

import asyncio
import contextlib
import logging
import signal
import sys
import time
from collections.abc import Awaitable, Iterator
from dataclasses import dataclass
from typing import Any

from telegram import Bot, BotCommand
from telegram.error import InvalidToken, TelegramError

from bot.channels.gate import Flood, Gate
from bot.channels.telegram_bot.courtesy import Courtesy
from bot.channels.telegram_bot.deliver import deliver
from bot.channels.telegram_bot.fetch import Fetch
from bot.channels.telegram_bot.form import LIMITS
from bot.channels.telegram_bot.incoming import Ourselves
from bot.channels.telegram_bot.limiter import Limiter
from bot.channels.telegram_bot.quiet import log_to_stderr
from bot.channels.telegram_bot.requests import AiohttpRequest
from bot.channels.telegram_bot.rounds import Rounds
from bot.channels.telegram_bot.sender import Sender
from bot.channels.telegram_bot.watchdog import Watchdog
from bot.channels.telegram_bot.writer import Writer
from bot.post import Turn
from bot.settings import NO_TOKEN, Settings
from scouting_db.directory import Directory
from scouting_db.session import Store, StoreError, open_store
from scouting_db.sole import AlreadyRunningError, sole_worker
from scouting_db.values import AccountId, Micros

log = logging.getLogger(__name__)

EXIT_DONE, EXIT_FAILED, EXIT_SETTINGS = 0, 1, 2

CONNECTIONS = 128
"""Sends at a time; the messenger's own limits end far below."""

DRAIN_S = 5.0
"""How long a stop waits for unsent replies; service managers kill after some 10 seconds."""

FIRST_PAUSE_S = 1.0
LONGEST_PAUSE_S = 30.0
"""Pauses between first contacts double from the first to the longest."""

COMMANDS = (
    ("cue", "One line before the next rally"),
    ("plan", "Game plan for the next match"),
    ("note", "Note what you saw of a player"),
    ("scout", "Tap what you see of players you watch"),
    ("review", "What worked in the last match"),
    ("players", "Who is in your book"),
    ("undo", "Take the last change back"),
    ("mode", "Match, break or open"),
    ("invite", "Share your book with partner or coach"),
    ("books", "Which book is in use"),
    ("privacy", "What is kept, who sees it, how to erase it"),
    ("help", "What you can type"),
)

REJECTED = """\
The server does not know this token. Check SEAMWISE_TOKEN, or get a new token:
open a chat with @BotFather, send /mybots, choose the bot, API Token.
"""


def now_micros() -> Micros:
    return Micros(time.time_ns() // 1000)


async def run(settings: Settings, *, turn: Turn | None = None) -> int:
    """Serve until SIGINT or SIGTERM; the exit code. Without `turn`, the conversation's own."""
    if settings.token is None:
        sys.stderr.write(NO_TOKEN)
        return EXIT_SETTINGS
    log_to_stderr(level=settings.log_level, token=settings.token)
    stopped = asyncio.Event()
    try:
        with _open(settings) as store, _stop_signals(stopped):
            return await _serve(settings, settings.token, store, turn or _own_turn(), stopped)
    except InvalidToken:
        sys.stderr.write(REJECTED)
        return EXIT_SETTINGS
    except (StoreError, AlreadyRunningError) as error:
        sys.stderr.write(f"{error}\n")
        return EXIT_FAILED


def _own_turn() -> Turn:
    from bot.chat.turn import take_turn

    return take_turn


@contextlib.contextmanager
def _open(settings: Settings) -> Iterator[Store]:
    store = open_store(settings.database)
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
    sending, fetching = (AiohttpRequest(connections=each) for each in (CONNECTIONS, 1))
    bot = Bot(
        token,
        base_url=f"{settings.api_base}/bot",
        base_file_url=f"{settings.api_base}/file/bot",
        request=sending,
        get_updates_request=fetching,
    )
    try:
        if not await _unless_stopped(_first_contact(bot), stopped):
            return EXIT_DONE
        with contextlib.ExitStack() as held:
            alone = sole_worker(store, f"telegram-{bot.id}")
            await asyncio.to_thread(held.enter_context, alone)
            return await _work(settings, bot, fetching, store, turn, stopped)
    finally:
        await bot.shutdown()


async def _first_contact(bot: Bot) -> None:
    """Learn who we are, however long the server is away. InvalidToken where it rejects us."""
    pause_s = FIRST_PAUSE_S
    while True:
        try:
            await bot.initialize()
            await bot.delete_webhook()
            return
        except InvalidToken:
            raise
        except TelegramError as error:
            log.warning("no contact yet: %s; again in %.0f s", error.message, pause_s)
            await asyncio.sleep(pause_s)
            pause_s = min(2 * pause_s, LONGEST_PAUSE_S)


async def _set_menu(bot: Bot) -> None:
    """The command menu; it can wait until the server has time."""
    pause_s = FIRST_PAUSE_S
    while True:
        try:
            await bot.set_my_commands([BotCommand(word, what) for word, what in COMMANDS])
            return
        except TelegramError as error:
            log.info("the menu is not set yet: %s", error.message)
            await asyncio.sleep(pause_s)
            pause_s = min(2 * pause_s, LONGEST_PAUSE_S)


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


@dataclass(frozen=True, slots=True, kw_only=True)
class _Parts:
    """What runs beside each other while we serve."""

    fetch: Fetch
    rounds: Rounds
    sender: Sender
    courtesy: Courtesy
    watchdog: Watchdog


async def _work(
    settings: Settings,
    bot: Bot,
    fetching: AiohttpRequest,
    store: Store,
    turn: Turn,
    stopped: asyncio.Event,
) -> int:
    writer = Writer(store)
    try:
        account = await writer.run(lambda connection: _start_account(Directory(connection), bot))
        parts = _assemble(settings, bot, fetching, writer, turn, account)
        log.info("serving as @%s", bot.username)
        return await _run_parts(parts, bot, stopped)
    finally:
        await writer.close()


def _start_account(directory: Directory, bot: Bot) -> AccountId:
    """Our account; what a killed predecessor was sending is due again."""
    account = directory.account("telegram", str(bot.id), name=bot.username)
    directory.release(account)
    return account


def _assemble(
    settings: Settings,
    bot: Bot,
    fetching: AiohttpRequest,
    writer: Writer,
    turn: Turn,
    account: AccountId,
) -> _Parts:
    called = asyncio.Event()
    sender = Sender(
        deliver=lambda chat, message: deliver(bot, chat, message),
        writer=writer,
        limiter=Limiter(clock=time.monotonic, paced=settings.paced),
        clock=now_micros,
        on_mark=called.set,
    )
    rounds = Rounds(
        account=account,
        turn=turn,
        limits=LIMITS,
        writer=writer,
        sender=sender,
        clock=now_micros,
        called=called,
    )
    courtesy = Courtesy(bot=bot, clock=time.monotonic)
    watchdog = Watchdog(clock=time.monotonic)
    fetch = Fetch(
        bot=bot,
        request=fetching,
        me=Ourselves(user_id=bot.id, name=bot.username),
        account=account,
        writer=writer,
        courtesy=courtesy,
        watchdog=watchdog,
        clock=now_micros,
        on_accept=called.set,
        gate=Gate(allowed=settings.allowed, flood=Flood() if settings.paced else None),
    )
    return _Parts(fetch=fetch, rounds=rounds, sender=sender, courtesy=courtesy, watchdog=watchdog)


async def _run_parts(parts: _Parts, bot: Bot, stopped: asyncio.Event) -> int:
    """Work until stopped, or until a part dies: then end loudly rather than half alive.

    Stopping: 1. no more intake, 2. turns for what was accepted, 3. send what is ready, for a
    while, 4. store the marks, 5. close.
    """
    fetch, rounds = asyncio.create_task(parts.fetch.run()), asyncio.create_task(parts.rounds.run())
    watch, menu = asyncio.create_task(parts.watchdog.run()), asyncio.create_task(_set_menu(bot))
    stop = asyncio.create_task(stopped.wait())
    done, _ = await asyncio.wait((fetch, rounds, watch, stop), return_when=asyncio.FIRST_COMPLETED)
    await _cancel(fetch, watch, menu, stop)
    parts.rounds.stop()
    await asyncio.gather(rounds, return_exceptions=True)
    await parts.rounds.finish(within_s=DRAIN_S)
    await parts.sender.close()
    await parts.rounds.store_marks()
    await parts.courtesy.close()
    for task in done - {stop}:
        task.result()
        return EXIT_FAILED
    return EXIT_DONE
