"""The first words with the server: who we are, how we are reached, which commands we know."""

from __future__ import annotations

import asyncio
import logging
from collections.abc import Awaitable, Callable
from datetime import timedelta

from telegram import Bot, BotCommand
from telegram.error import InvalidToken, RetryAfter, TelegramError

from bot.channels.telegram_bot.incoming import ALLOWED_UPDATES
from bot.channels.telegram_bot.requests import AiohttpRequest

log = logging.getLogger(__name__)

CONNECTIONS = 128
"""Sends at a time; the messenger's own limits end far below."""

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


def new_bot(token: str, api_base: str, *, fetching: AiohttpRequest) -> Bot:
    """The library's bot, which sends at most `CONNECTIONS` messages at a time."""
    return Bot(
        token,
        base_url=f"{api_base}/bot",
        base_file_url=f"{api_base}/file/bot",
        request=AiohttpRequest(connections=CONNECTIONS),
        get_updates_request=fetching,
    )


async def introduce(bot: Bot) -> None:
    """Learn who we are, however long the server is away. InvalidToken where it rejects us."""
    await _until_done(bot.initialize, "no contact yet")


async def fetch_ourselves(bot: Bot) -> None:
    """From now on updates wait until we fetch them."""
    await _until_done(bot.delete_webhook, "no contact yet")


async def have_them_delivered(bot: Bot, url: str, secret: str) -> None:
    """From now on updates come to the URL, with the secret in a header (Bot API: setWebhook)."""

    async def register() -> None:
        await bot.set_webhook(url, secret_token=secret, allowed_updates=list(ALLOWED_UPDATES))

    await _until_done(register, "the address for updates is not set yet")


async def set_menu(bot: Bot) -> None:
    """The command menu; it can wait until the server has time."""
    commands = [BotCommand(word, what) for word, what in COMMANDS]

    async def register() -> None:
        await bot.set_my_commands(commands)

    await _until_done(register, "the menu is not set yet")


async def _until_done(call: Callable[[], Awaitable[object]], what_fails: str) -> None:
    """Call until it works. InvalidToken where the server rejects us for good."""
    pause_s = FIRST_PAUSE_S
    while True:
        try:
            await call()
            return
        except InvalidToken:
            raise
        except RetryAfter as error:
            asked = error.retry_after
            wait_s = asked.total_seconds() if isinstance(asked, timedelta) else float(asked)
            log.warning("%s: asked to wait %.0f s", what_fails, wait_s)
            await asyncio.sleep(wait_s)
        except TelegramError as error:
            log.warning("%s: %s; again in %.0f s", what_fails, error.message, pause_s)
            await asyncio.sleep(pause_s)
            pause_s = min(2 * pause_s, LONGEST_PAUSE_S)
