"""Updates as the Bot API sends them, for the stand-in server."""

from __future__ import annotations

import time
from collections.abc import Mapping
from typing import Any

BOT_ID = 1234567


def message_update(
    *, chat_id: int, text: str | None = None, user_id: int | None = None, **more: Any
) -> dict[str, Any]:
    """A message as the server would send it; `more` are further fields of the message."""
    return {"message": _message(chat_id, text, user_id, more)}


def edit_update(
    *, chat_id: int, message_id: int, text: str, user_id: int | None = None
) -> dict[str, Any]:
    """An edited message."""
    more = {"message_id": message_id, "edit_date": int(time.time())}
    return {"edited_message": _message(chat_id, text, user_id, more)}


def tap_update(
    *, chat_id: int, message_id: int, data: str, user_id: int | None = None, tap_id: str = "tap"
) -> dict[str, Any]:
    """A button pressed."""
    return {
        "callback_query": {
            "id": tap_id,
            "from": _user(chat_id if user_id is None else user_id),
            "chat_instance": "0",
            "data": data,
            "message": {
                "message_id": message_id,
                "date": int(time.time()),
                "chat": _chat(chat_id),
                "from": {"id": BOT_ID, "is_bot": True, "first_name": "Stand-in"},
                "text": "…",
            },
        }
    }


def _message(
    chat_id: int, text: str | None, user_id: int | None, more: Mapping[str, Any]
) -> dict[str, Any]:
    message: dict[str, Any] = {
        "date": int(time.time()),
        "chat": _chat(chat_id),
        "from": _user(abs(chat_id) if user_id is None else user_id),
        **more,
    }
    if text is not None:
        message["text"] = text
    return message


def _chat(chat_id: int) -> dict[str, Any]:
    if chat_id < 0:
        return {"id": chat_id, "type": "supergroup", "title": "Our team"}
    return {"id": chat_id, "type": "private", "first_name": f"User{chat_id}"}


def _user(user_id: int) -> dict[str, Any]:
    return {"id": user_id, "is_bot": False, "first_name": f"User{user_id}"}


PHOTO: dict[str, Any] = {
    "photo": [{"file_id": "f", "file_unique_id": "u", "width": 90, "height": 90}]
}


def document(name: str, file_id: str, size: int) -> dict[str, Any]:
    """Fields of a message that brings a file (Bot API: Document)."""
    told = {"file_id": file_id, "file_unique_id": "u", "file_name": name, "file_size": size}
    return {"document": told}


STICKER: dict[str, Any] = {
    "sticker": {
        "file_id": "f",
        "file_unique_id": "u",
        "type": "regular",
        "width": 512,
        "height": 512,
        "is_animated": False,
        "is_video": False,
    }
}
VOICE: dict[str, Any] = {"voice": {"file_id": "f", "file_unique_id": "u", "duration": 3}}
FORWARDED: dict[str, Any] = {
    "forward_origin": {"type": "hidden_user", "date": 1_700_000_000, "sender_user_name": "Hale"}
}
