"""One attempt to send one message, and what came of it."""

from __future__ import annotations

import asyncio
import logging
from dataclasses import dataclass
from datetime import timedelta

from telegram import Bot, LinkPreviewOptions, Message
from telegram.constants import ParseMode
from telegram.error import (
    BadRequest,
    ChatMigrated,
    Forbidden,
    NetworkError,
    RetryAfter,
    TelegramError,
)

from bot.channels.telegram_bot.form import html_of, keyboard_of
from bot.channels.telegram_bot.requests import NotSentError
from bot.post import Outgoing
from knowledge.advice import CourtPicture
from scouting_db.values import PostKind

log = logging.getLogger(__name__)

NO_PREVIEW = LinkPreviewOptions(is_disabled=True)


@dataclass(frozen=True, slots=True, kw_only=True)
class Delivered:
    """The channel took it, under this number."""

    external_message_id: int | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Refused:
    """It will never be taken as it is."""

    because: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ShutOut:
    """The user blocked us or the group removed us."""

    because: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Moved:
    """The group has a new id."""

    new_chat: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Wait:
    """The server asks this chat to wait."""

    seconds: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Broken:
    """No answer we can use; `unsent` where it surely did not arrive."""

    because: str
    unsent: bool


Outcome = Delivered | Refused | ShutOut | Moved | Wait | Broken


async def deliver(bot: Bot, chat: str, message: Outgoing) -> Outcome:
    """Send, draw or edit; where our HTML is refused, once more as plain text."""
    try:
        return await _attempt(bot, chat, message, plain=False)
    except BadRequest as error:
        return await _after_refusal(bot, chat, message, error)
    except TelegramError as error:
        return outcome_of(error)


def outcome_of(error: TelegramError) -> Outcome:
    """What an error means. The order matters: BadRequest is a NetworkError to the library."""
    if isinstance(error, RetryAfter):
        return Wait(seconds=_seconds(error.retry_after))
    if isinstance(error, Forbidden):
        return ShutOut(because=error.message)
    if isinstance(error, ChatMigrated):
        return Moved(new_chat=str(error.new_chat_id))
    if isinstance(error, BadRequest):
        return Refused(because=error.message)
    unsent = isinstance(error, NotSentError) or not isinstance(error, NetworkError)
    return Broken(because=error.message, unsent=unsent)


async def _after_refusal(bot: Bot, chat: str, message: Outgoing, error: BadRequest) -> Outcome:
    reason = error.message.lower()
    if message.kind is PostKind.EDIT and "not modified" in reason:
        return Delivered(external_message_id=message.replaces)
    try:
        if "can't parse entities" in reason:
            log.warning("our HTML was refused, sending plain text: %s", error.message)
            return await _attempt(bot, chat, message, plain=True)
        if message.kind is PostKind.EDIT:
            # Too old to edit, deleted since, or a photo: say it in a new message.
            return Delivered(external_message_id=await _send(bot, chat, message, plain=False))
    except TelegramError as second:
        return outcome_of(second)
    return Refused(because=error.message)


async def _attempt(bot: Bot, chat: str, message: Outgoing, *, plain: bool) -> Delivered:
    if message.picture is not None:
        picture = await _drawn(message.picture)
        if picture is not None:
            return Delivered(external_message_id=await _photo(bot, chat, message, picture, plain))
    if message.replaces is not None:
        return Delivered(external_message_id=await _edit(bot, chat, message, plain))
    return Delivered(external_message_id=await _send(bot, chat, message, plain=plain))


async def _send(bot: Bot, chat: str, message: Outgoing, *, plain: bool) -> int:
    sent = await bot.send_message(
        chat_id=int(chat),
        text=message.text if plain else html_of(message),
        parse_mode=None if plain else ParseMode.HTML,
        reply_markup=keyboard_of(message),
        link_preview_options=NO_PREVIEW,
    )
    return sent.message_id


async def _edit(bot: Bot, chat: str, message: Outgoing, plain: bool) -> int | None:
    edited = await bot.edit_message_text(
        chat_id=int(chat),
        message_id=message.replaces,
        text=message.text if plain else html_of(message),
        parse_mode=None if plain else ParseMode.HTML,
        reply_markup=keyboard_of(message),
        link_preview_options=NO_PREVIEW,
    )
    return edited.message_id if isinstance(edited, Message) else message.replaces


async def _photo(bot: Bot, chat: str, message: Outgoing, picture: bytes, plain: bool) -> int:
    sent = await bot.send_photo(
        chat_id=int(chat),
        photo=picture,
        caption=message.text if plain else html_of(message),
        parse_mode=None if plain else ParseMode.HTML,
        reply_markup=keyboard_of(message),
        filename="court.png",
    )
    return sent.message_id


async def _drawn(picture: CourtPicture) -> bytes | None:
    """The picture as PNG; None where drawing fails: the words still help."""
    try:
        return await asyncio.to_thread(_draw, picture)
    except Exception:
        log.exception("a picture could not be drawn; its words are sent alone")
        return None


def _draw(picture: CourtPicture) -> bytes:
    """Imported at the first picture: the drawing library takes long to load."""
    from bot.chat.pictures import draw

    return draw(picture)


def _seconds(period: int | timedelta) -> float:
    return period.total_seconds() if isinstance(period, timedelta) else float(period)
