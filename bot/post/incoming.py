"""What a channel hands in: one typed value per update, stored as JSON in the inbox."""

from __future__ import annotations

from collections.abc import Mapping
from enum import StrEnum
from typing import Any

from bot.chat.file import File
from knowledge.dataclass import dataclass
from scouting_db.values import Micros


class IncomingKind(StrEnum):
    """What arrived. A command is a TEXT that begins with "/", our own "@name" taken off."""

    TEXT = "text"
    TAP = "tap"
    EDIT = "edit"
    PHOTO = "photo"
    STICKER = "sticker"
    VOICE = "voice"
    FILE = "file"
    OTHER = "other"


@dataclass(frozen=True, slots=True, kw_only=True)
class Incoming:
    """One update. `chat`, `user_id` and the message ids are the channel's own.

    `text` is what was typed, a photo's caption, or empty; `payload` is a tapped button's.
    For a tap `external_message_id` is the message that carries the button, for an edit the
    edited one. `user_id` of an anonymous group admin is the group's own.
    A FILE has its `file`, and what was written beside it as `text`.
    """

    kind: IncomingKind
    chat: str
    user_id: str
    user_name: str
    at: Micros
    is_group: bool = False
    text: str = ""
    payload: str | None = None
    external_message_id: int | None = None
    reply_to: int | None = None
    forwarded: bool = False
    tap_id: str | None = None
    file: File | None = None

    def to_json(self) -> dict[str, Any]:
        """Plain JSON, absent things left out."""
        plain = {
            "kind": self.kind.value,
            "chat": self.chat,
            "user_id": self.user_id,
            "user_name": self.user_name,
            "at": self.at,
            "is_group": self.is_group,
            "text": self.text,
            "payload": self.payload,
            "external_message_id": self.external_message_id,
            "reply_to": self.reply_to,
            "forwarded": self.forwarded,
            "tap_id": self.tap_id,
            "file": None if self.file is None else self.file.to_json(),
        }
        return {
            key: value for key, value in plain.items() if value is not None and value is not False
        }

    @classmethod
    def from_json(cls, stored: Mapping[str, Any]) -> Incoming:
        """The value that `to_json` wrote."""
        return cls(
            kind=IncomingKind(stored["kind"]),
            chat=stored["chat"],
            user_id=stored["user_id"],
            user_name=stored["user_name"],
            at=Micros(stored["at"]),
            is_group=stored.get("is_group", False),
            text=stored.get("text", ""),
            payload=stored.get("payload"),
            external_message_id=stored.get("external_message_id"),
            reply_to=stored.get("reply_to"),
            forwarded=stored.get("forwarded", False),
            tap_id=stored.get("tap_id"),
            file=None if stored.get("file") is None else File.from_json(stored["file"]),
        )
