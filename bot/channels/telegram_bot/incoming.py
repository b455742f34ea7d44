"""From the library's update to our own typed value, or to nothing that concerns us."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from telegram import CallbackQuery, Chat, Message, Update, User
from telegram.constants import ChatType

from bot.post import Incoming, IncomingKind
from scouting_db.values import Micros

ALLOWED_UPDATES = ("message", "edited_message", "callback_query")


@dataclass(frozen=True, slots=True, kw_only=True)
class Ourselves:
    """Who we are in the channel: the id, and the name in "/plan@name"."""

    user_id: int
    name: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Migration:
    """A group has a new id."""

    old_chat: str
    new_chat: str


def incoming_of(update: Update, me: Ourselves, *, now: Micros) -> Incoming | Migration | None:
    """What the update means for us; None for what we leave alone.

    Left alone: service messages, commands to other bots in a group, media in a group that do
    not answer us, and kinds of updates we did not ask for. `now` is the time of a tap.
    """
    if update.callback_query is not None:
        return _tap(update.callback_query, now)
    if update.edited_message is not None:
        return _edit(update.edited_message, me)
    if update.message is not None:
        return _message(update.message, me)
    return None


def _tap(query: CallbackQuery, now: Micros) -> Incoming | None:
    if query.message is None or query.data is None:
        return None
    chat = query.message.chat
    return Incoming(
        kind=IncomingKind.TAP,
        chat=str(chat.id),
        user_id=str(query.from_user.id),
        user_name=query.from_user.full_name,
        at=now,
        is_group=_is_group(chat),
        payload=query.data,
        external_message_id=query.message.message_id,
        tap_id=query.id,
    )


def _edit(message: Message, me: Ourselves) -> Incoming | None:
    text = message.text or message.caption
    if text is None:
        return None
    return _built(message, me, IncomingKind.EDIT, text, message.edit_date or message.date)


def _message(message: Message, me: Ourselves) -> Incoming | Migration | None:
    if message.migrate_to_chat_id is not None:
        return Migration(old_chat=str(message.chat.id), new_chat=str(message.migrate_to_chat_id))
    kind = _kind(message)
    if kind is None:
        return None
    if kind is not IncomingKind.TEXT and _is_group(message.chat) and not _answers_us(message, me):
        return None
    return _built(message, me, kind, message.text or message.caption or "", message.date)


def _kind(message: Message) -> IncomingKind | None:
    """None for a service message: somebody joined, a photo of the group changed."""
    if message.text is not None:
        return IncomingKind.TEXT
    if message.photo:
        return IncomingKind.PHOTO
    if message.sticker is not None:
        return IncomingKind.STICKER
    if message.voice is not None or message.video_note is not None:
        return IncomingKind.VOICE
    return None if message.effective_attachment is None else IncomingKind.OTHER


def _built(
    message: Message, me: Ourselves, kind: IncomingKind, text: str, at: datetime
) -> Incoming | None:
    own_text = _without_our_name(text, me)
    if own_text is None:
        return None
    user_id, user_name = _writer(message)
    return Incoming(
        kind=kind,
        chat=str(message.chat.id),
        user_id=user_id,
        user_name=user_name,
        at=Micros(round(at.timestamp() * 1_000_000)),
        is_group=_is_group(message.chat),
        text=own_text,
        external_message_id=message.message_id,
        reply_to=None if message.reply_to_message is None else message.reply_to_message.message_id,
        forwarded=message.forward_origin is not None,
    )


def _without_our_name(text: str, me: Ourselves) -> str | None:
    """The text with "/plan@our_name" as "/plan"; None for a command to another bot."""
    if not text.startswith("/"):
        return text
    command = text.split(maxsplit=1)[0]
    word, at, name = command.partition("@")
    if not at:
        return text
    if name.lower() != me.name.lower():
        return None
    return word + text[len(command) :]


def _writer(message: Message) -> tuple[str, str]:
    """Who wrote. An anonymous admin writes as the group, a linked channel as itself."""
    if message.sender_chat is not None:
        return str(message.sender_chat.id), message.sender_chat.effective_name or "somebody"
    if message.from_user is not None:
        return str(message.from_user.id), message.from_user.full_name
    return str(message.chat.id), message.chat.effective_name or "somebody"


def _is_group(chat: Chat) -> bool:
    return chat.type in (ChatType.GROUP, ChatType.SUPERGROUP)


def _answers_us(message: Message, me: Ourselves) -> bool:
    answered = message.reply_to_message
    author: User | None = None if answered is None else answered.from_user
    return author is not None and author.id == me.user_id
