"""One attempt to send one message, and what came of it."""

from __future__ import annotations

import asyncio
import logging
from collections.abc import Callable
from dataclasses import field
from datetime import timedelta
from typing import Any

from telegram import Bot, InputFile
from telegram.constants import ParseMode
from telegram.error import (
    BadRequest,
    ChatMigrated,
    Forbidden,
    NetworkError,
    RetryAfter,
    TelegramError,
)

from bot.channels.telegram_bot.form import html_of, keyboard_of, shown_text
from bot.channels.telegram_bot.requests import NotSentError
from bot.channels.telegram_bot.sent_pictures import SentPictures
from bot.post import Outgoing
from knowledge.advice import Picture
from knowledge.dataclass import dataclass
from scouting_db.values import PostKind

log = logging.getLogger(__name__)

NO_PREVIEW = {"link_preview_options": {"is_disabled": True}}


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


Draw = Callable[[Picture], bytes]
"""Gives a picture as PNG; run in a thread."""


def draw_here(picture: Picture) -> bytes:
    """In this process. Imported at the first picture: the drawing library takes long to load."""
    from bot.chat.pictures import draw

    return draw(picture)


@dataclass(frozen=True, slots=True, kw_only=True)
class Pictures:
    """What the server has already and need not be given again, and how the others are drawn."""

    known: SentPictures = field(default_factory=SentPictures)
    draw: Draw = draw_here


async def deliver(
    bot: Bot, chat: str, message: Outgoing, *, pictures: Pictures | None = None
) -> Outcome:
    """Send, draw or edit; where our HTML is refused, once more as plain text."""
    pictures = Pictures() if pictures is None else pictures
    try:
        return await _attempt(bot, chat, message, pictures, plain=False)
    except BadRequest as error:
        return await _after_refusal(bot, chat, message, error, pictures)
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


async def _after_refusal(
    bot: Bot, chat: str, message: Outgoing, error: BadRequest, pictures: Pictures
) -> Outcome:
    reason = error.message.lower()
    if message.kind is PostKind.EDIT and "not modified" in reason:
        return Delivered(external_message_id=message.replaces)
    try:
        if "can't parse entities" in reason:
            log.warning("our HTML was refused, sending plain text: %s", error.message)
            return await _attempt(bot, chat, message, pictures, plain=True)
        if message.kind is PostKind.EDIT:
            # Too old to edit, deleted since, or a photo: say it in a new message.
            return Delivered(external_message_id=await _send(bot, chat, message, plain=False))
    except TelegramError as second:
        return outcome_of(second)
    return Refused(because=error.message)


async def _attempt(
    bot: Bot, chat: str, message: Outgoing, pictures: Pictures, *, plain: bool
) -> Delivered:
    if message.picture is not None:
        number = await _picture(bot, chat, message, message.picture, pictures, plain=plain)
        if number is not None:
            return Delivered(external_message_id=number)
    if message.file is not None and message.file.content is not None:
        number = await _document(bot, chat, message, message.file.content, plain=plain)
        return Delivered(external_message_id=number)
    if message.replaces is not None:
        return Delivered(external_message_id=await _edit(bot, chat, message, plain=plain))
    return Delivered(external_message_id=await _send(bot, chat, message, plain=plain))


async def _send(bot: Bot, chat: str, message: Outgoing, *, plain: bool) -> int:
    text = _marked_up("text", message, plain)
    return _number(await _call(bot, "sendMessage", chat, message, {**text, **NO_PREVIEW}))


async def _edit(bot: Bot, chat: str, message: Outgoing, *, plain: bool) -> int:
    text = _marked_up("text", message, plain)
    fields = {"message_id": message.replaces, **text, **NO_PREVIEW}
    return _number(await _call(bot, "editMessageText", chat, message, fields))


async def _picture(
    bot: Bot, chat: str, message: Outgoing, picture: Picture, pictures: Pictures, *, plain: bool
) -> int | None:
    """By its number where the server has it, else drawn; None where it cannot be drawn."""
    number = pictures.known.number_of(picture)
    if number is not None:
        try:
            return _number(await _photo(bot, chat, message, number, plain=plain))
        except BadRequest as error:
            # The number, the chat or our HTML: the picture itself gets the same answer, or none.
            log.info("a picture is not taken by its number: %s", error.message)
            pictures.known.forget(picture)
    drawn = await _drawn(picture, pictures.draw)
    if drawn is None:
        return None
    upload = InputFile(drawn, filename="picture.png")
    answer = await _photo(bot, chat, message, upload, plain=plain)
    pictures.known.sent(picture, answer)
    return _number(answer)


async def _photo(
    bot: Bot, chat: str, message: Outgoing, photo: InputFile | str, *, plain: bool
) -> dict[str, Any]:
    fields = {"photo": photo, **_marked_up("caption", message, plain)}
    return await _call(bot, "sendPhoto", chat, message, fields)


async def _document(bot: Bot, chat: str, message: Outgoing, content: bytes, *, plain: bool) -> int:
    assert message.file is not None, "a document has its file"
    document = InputFile(content, filename=message.file.name)
    fields = {"document": document, **_marked_up("caption", message, plain)}
    return _number(await _call(bot, "sendDocument", chat, message, fields))


async def _call(
    bot: Bot, method: str, chat: str, message: Outgoing, fields: dict[str, Any]
) -> dict[str, Any]:
    """The server's answer as it is. The library's own methods would build an object of some
    hundred fields from it, of which we need one number: a fifth of a turn's cost.

    Lower case, which the server takes as well: for names that it has a method for, the library
    warns.
    """
    keyboard = keyboard_of(message)
    if keyboard is not None:
        fields["reply_markup"] = keyboard
    answer: dict[str, Any] = await bot.do_api_request(
        method.lower(), api_kwargs={"chat_id": int(chat), **fields}
    )
    return answer


def _marked_up(field: str, message: Outgoing, plain: bool) -> dict[str, Any]:
    if plain:
        return {field: shown_text(message)}
    return {field: html_of(message), "parse_mode": ParseMode.HTML}


def _number(answer: dict[str, Any]) -> int:
    return int(answer["message_id"])


async def _drawn(picture: Picture, draw: Draw) -> bytes | None:
    """The picture as PNG; None where drawing fails: the words still help."""
    try:
        return await asyncio.to_thread(draw, picture)
    except Exception:
        log.exception("a picture could not be drawn; its words are sent alone")
        return None


def _seconds(period: int | timedelta) -> float:
    return period.total_seconds() if isinstance(period, timedelta) else float(period)
