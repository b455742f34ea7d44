"""From an update as the server sends it to our own typed value, or to nothing that concerns us.

Read from the JSON itself: building the library's objects costs more than the rest of a turn's
way in, and one field of a kind we do not know must not stop the others.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from telegram.constants import ChatType, MessageAttachmentType, UpdateType

from bot.chat.file import File
from bot.post import Incoming, IncomingKind
from knowledge.dataclass import dataclass
from scouting_db.values import Micros

ALLOWED_UPDATES = (UpdateType.MESSAGE, UpdateType.EDITED_MESSAGE, UpdateType.CALLBACK_QUERY)

Json = Mapping[str, Any]

MICROS_PER_S = 1_000_000

LARGEST_NUMBER = 2**63 - 1
LATEST_S = LARGEST_NUMBER // MICROS_PER_S
"""What a 64-bit column holds."""

OWN_KINDS = {
    "text": IncomingKind.TEXT,
    MessageAttachmentType.PHOTO: IncomingKind.PHOTO,
    MessageAttachmentType.STICKER: IncomingKind.STICKER,
    MessageAttachmentType.VOICE: IncomingKind.VOICE,
    MessageAttachmentType.VIDEO_NOTE: IncomingKind.VOICE,
    MessageAttachmentType.DOCUMENT: IncomingKind.FILE,
}
"""Fields of a message that hold its content; other attachments are IncomingKind.OTHER."""


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


def incoming_of(update: Json, me: Ourselves, *, now: Micros) -> Incoming | Migration | None:
    """What the update means for us; None for what we leave alone.

    Left alone: service messages, commands to other bots in a group, media in a group that do
    not answer us, and kinds of updates we did not ask for. `now` is the time of a tap. KeyError,
    TypeError, AttributeError or ValueError for an update that is not as the Bot API describes it:
    nothing that our tables would refuse comes out of here.
    """
    if UpdateType.CALLBACK_QUERY in update:
        return _tap(update[UpdateType.CALLBACK_QUERY], now)
    if UpdateType.EDITED_MESSAGE in update:
        return _edit(update[UpdateType.EDITED_MESSAGE], me)
    if UpdateType.MESSAGE in update:
        return _message(update[UpdateType.MESSAGE], me)
    return None


def _tap(query: Json, now: Micros) -> Incoming | None:
    if "message" not in query or "data" not in query:
        return None
    message = query["message"]
    return Incoming(
        kind=IncomingKind.TAP,
        chat=str(_number(message["chat"]["id"])),
        user_id=str(_number(query["from"]["id"])),
        user_name=_name(query["from"]),
        at=now,
        is_group=_is_group(message["chat"]),
        payload=_text(query["data"]),
        external_message_id=_number(message["message_id"]),
        tap_id=_text(query["id"]),
    )


def _edit(message: Json, me: Ourselves) -> Incoming | None:
    text = message.get("text") or message.get("caption")
    if text is None:
        return None
    at_s = message["edit_date"] if "edit_date" in message else message["date"]
    return _built(message, me, IncomingKind.EDIT, text, at_s)


def _message(message: Json, me: Ourselves) -> Incoming | Migration | None:
    if "migrate_to_chat_id" in message:
        new_chat = str(_number(message["migrate_to_chat_id"]))
        return Migration(old_chat=str(_number(message["chat"]["id"])), new_chat=new_chat)
    kind = _kind(message)
    if kind is None:
        return None
    if kind is not IncomingKind.TEXT and _is_group(message["chat"]) and not _answers(message, me):
        return None
    text = message.get("text") or message.get("caption") or ""
    return _built(message, me, kind, text, message["date"])


def _kind(message: Json) -> IncomingKind | None:
    """None for a service message: somebody joined, the group's photo changed."""
    for field, kind in OWN_KINDS.items():
        if field in message:
            return kind
    attached = any(field in message for field in MessageAttachmentType)
    return IncomingKind.OTHER if attached else None


def _built(
    message: Json, me: Ourselves, kind: IncomingKind, text: Any, at_s: Any
) -> Incoming | None:
    own_text = _without_our_name(_text(text), me)
    if own_text is None:
        return None
    # An anonymous admin writes as the group, a linked channel as itself.
    writer = message.get("sender_chat") or message.get("from") or message["chat"]
    answered = message.get("reply_to_message", {}).get("message_id")
    return Incoming(
        kind=kind,
        chat=str(_number(message["chat"]["id"])),
        user_id=str(_number(writer["id"])),
        user_name=_name(writer),
        at=Micros(_number(at_s, most=LATEST_S) * MICROS_PER_S),
        is_group=_is_group(message["chat"]),
        text=own_text,
        external_message_id=_number(message["message_id"]),
        reply_to=None if answered is None else _number(answered),
        forwarded="forward_origin" in message,
        file=_file(message) if kind is IncomingKind.FILE else None,
    )


def _file(message: Json) -> File:
    """The file by its name; its content is fetched before the update is stored."""
    return File(name=_text(message["document"].get("file_name", "file")), content=None)


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


def _name(writer: Json) -> str:
    """A user's full name, or the title of a group that writes as itself."""
    parts = (writer.get("first_name"), writer.get("last_name"))
    return _text(writer.get("title") or " ".join(filter(None, parts)) or "somebody")


def _number(value: Any, *, most: int = LARGEST_NUMBER) -> int:
    """Bot API: ids have at most 52 significant bits; our columns have 64."""
    if isinstance(value, bool) or not isinstance(value, int):
        raise TypeError("not a whole number")
    if abs(value) > most:
        raise ValueError("too large a number")
    return value


def _text(value: Any) -> str:
    """Text that can be stored: PostgreSQL knows no NUL, and half a surrogate pair is no text."""
    if not isinstance(value, str):
        raise TypeError("not a text")
    if "\0" in value or not value.isascii():
        return value.replace("\0", "").encode("utf-8", "replace").decode("utf-8")
    return value


def _is_group(chat: Json) -> bool:
    return chat["type"] in (ChatType.GROUP, ChatType.SUPERGROUP)


def _answers(message: Json, me: Ourselves) -> bool:
    author = message.get("reply_to_message", {}).get("from", {})
    return bool(author.get("id") == me.user_id)
