"""From an update as the server sends it to our value, or to nothing."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import pytest
from bot_api import (
    FORWARDED,
    PHOTO,
    STICKER,
    VOICE,
    edit_update,
    message_update,
    tap_update,
)

from bot.channels.telegram_bot.incoming import Migration, Ourselves, incoming_of
from bot.post import Incoming, IncomingKind
from scouting_db.values import Micros

ME = Ourselves(user_id=1234567, name="stand_in_bot")
NOW = Micros(1_700_000_000_000_000)
MIRA = 11
GROUP = -500


def read(update: Mapping[str, Any]) -> Incoming | Migration | None:
    raw = {"update_id": 1, **update}
    for key in ("message", "edited_message"):
        if key in raw:
            raw[key].setdefault("message_id", 7)
    return incoming_of(raw, ME, now=NOW)


def heard(update: Mapping[str, Any]) -> Incoming:
    value = read(update)
    assert isinstance(value, Incoming)
    return value


def answering(user_id: int) -> dict[str, Any]:
    """A reply to a message of that user."""
    return {
        "reply_to_message": {
            "message_id": 3,
            "date": 1,
            "chat": {"id": GROUP, "type": "supergroup", "title": "Our team"},
            "from": {"id": user_id, "is_bot": user_id == ME.user_id, "first_name": "x"},
            "text": "…",
        }
    }


def test_a_text() -> None:
    incoming = heard(message_update(chat_id=MIRA, text="who covers the middle", date=1_700_000_000))
    assert incoming == Incoming(
        kind=IncomingKind.TEXT,
        chat="11",
        user_id="11",
        user_name="User11",
        at=NOW,
        text="who covers the middle",
        external_message_id=7,
    )


def test_a_tap_is_timed_by_us_and_knows_its_message() -> None:
    incoming = heard(tap_update(chat_id=GROUP, message_id=9, data="1:ask:lob", user_id=MIRA))
    assert incoming == Incoming(
        kind=IncomingKind.TAP,
        chat=str(GROUP),
        user_id="11",
        user_name="User11",
        at=NOW,
        is_group=True,
        payload="1:ask:lob",
        external_message_id=9,
        tap_id="tap",
    )


@pytest.mark.parametrize(
    ("more", "kind", "text"),
    [
        (PHOTO, IncomingKind.PHOTO, ""),
        ({**PHOTO, "caption": "okafor lobs"}, IncomingKind.PHOTO, "okafor lobs"),
        (STICKER, IncomingKind.STICKER, ""),
        (VOICE, IncomingKind.VOICE, ""),
        ({"location": {"latitude": 1.0, "longitude": 2.0}}, IncomingKind.OTHER, ""),
    ],
    ids=["photo", "caption", "sticker", "voice", "location"],
)
def test_what_is_no_text(more: Mapping[str, Any], kind: IncomingKind, text: str) -> None:
    incoming = heard(message_update(chat_id=MIRA, **more))
    assert (incoming.kind, incoming.text) == (kind, text)


def test_a_forward_and_a_reply_are_marked() -> None:
    assert heard(message_update(chat_id=MIRA, text="she lobs", **FORWARDED)).forwarded
    assert heard(message_update(chat_id=GROUP, text="no", **answering(ME.user_id))).reply_to == 3


def test_an_edit_is_an_edit_at_its_own_time() -> None:
    incoming = heard(edit_update(chat_id=MIRA, message_id=5, text="lefty"))
    assert (incoming.kind, incoming.text, incoming.external_message_id) == (
        IncomingKind.EDIT,
        "lefty",
        5,
    )


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("/plan", "/plan"),
        ("/plan@stand_in_bot", "/plan"),
        ("/note@Stand_In_Bot okafor: lefty", "/note okafor: lefty"),
        ("/plan@another_bot", None),
        ("mail me @ noon", "mail me @ noon"),
        ("/", "/"),
    ],
)
def test_our_name_is_taken_off_a_command(text: str, expected: str | None) -> None:
    value = read(message_update(chat_id=GROUP, user_id=MIRA, text=text))
    assert (value.text if isinstance(value, Incoming) else value) == expected


def test_media_in_a_group_count_only_where_they_answer_us() -> None:
    assert read(message_update(chat_id=GROUP, user_id=MIRA, **STICKER)) is None
    assert read(message_update(chat_id=GROUP, user_id=MIRA, **STICKER, **answering(99))) is None
    answer = message_update(chat_id=GROUP, user_id=MIRA, **STICKER, **answering(ME.user_id))
    assert heard(answer).kind is IncomingKind.STICKER


def test_an_anonymous_admin_writes_as_the_group() -> None:
    """Bot API: sender_chat is set, and `from` is a stand-in user for all such admins."""
    group = {"id": GROUP, "type": "supergroup", "title": "Our team"}
    incoming = heard(
        message_update(chat_id=GROUP, user_id=1087968824, text="8 all", sender_chat=group)
    )
    assert (incoming.user_id, incoming.user_name) == (str(GROUP), "Our team")


def test_an_upgraded_group_is_a_migration() -> None:
    value = read(message_update(chat_id=GROUP, user_id=MIRA, migrate_to_chat_id=-100500))
    assert value == Migration(old_chat=str(GROUP), new_chat="-100500")


@pytest.mark.parametrize(
    "update",
    [
        message_update(
            chat_id=GROUP,
            user_id=MIRA,
            new_chat_members=[{"id": 5, "is_bot": False, "first_name": "Tom"}],
        ),
        message_update(chat_id=GROUP, user_id=MIRA, group_chat_created=True),
        {"my_chat_member_of_the_future": {}},
    ],
    ids=["joined", "created", "unknown kind"],
)
def test_service_messages_and_unknown_kinds_are_left_alone(update: Mapping[str, Any]) -> None:
    assert read(update) is None


@pytest.mark.parametrize(
    "broken",
    [{"message": {"text": "x"}}, {"edited_message": {"text": "x"}}, {"message": None}],
)
def test_an_update_unlike_the_documentation_raises_what_the_fetch_loop_expects(
    broken: Mapping[str, Any],
) -> None:
    with pytest.raises((LookupError, TypeError)):
        incoming_of(broken, ME, now=NOW)
