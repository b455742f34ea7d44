"""What a user of the real process sees while all goes well."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import pytest
from bot_api import (
    FORWARDED,
    PHOTO,
    STICKER,
    VOICE,
    Server,
    edit_update,
    message_update,
    tap_update,
)
from bot_process import BotProcess, rows


def test_a_message_gets_its_reply_with_the_call_in_bold(api: Server, mira: int) -> None:
    api.say(mira, "/start")
    (reply,) = api.wait_for_sent(1, mira)
    first_line = reply.text.split("\n")[0]
    assert reply.source.startswith(f"<b>{first_line}</b>")
    assert reply.buttons


def test_the_menu_is_set(api: Server) -> None:
    api.wait_until(lambda _: "setMyCommands" in api.called())


def test_what_a_user_types_is_escaped(api: Server, bot: BotProcess, mira: int) -> None:
    api.say(mira, "note <b>okafor & lindqvist: pops up backhand dinks")
    (reply,) = api.wait_for_sent(1, mira)
    assert reply.parse_mode == "HTML"
    api.wait_until(lambda _: bot.states(mira) == {"sent": 1})


def test_an_update_delivered_twice_is_answered_once(
    api: Server, bot: BotProcess, mira: int, tom: int
) -> None:
    update = message_update(chat_id=mira, text="/help", message_id=77)
    number = api.put(update)
    api.wait_for_sent(1, mira)
    api.put({**update, "update_id": number})
    api.say(tom, "/help")
    api.wait_for_sent(1, tom)
    assert len(api.sent(mira)) == 1
    assert bot.received(mira) == ["done"]


def test_a_tap_is_answered_at_once_and_acts(api: Server, mira: int) -> None:
    api.say(mira, "/start")
    (start,) = api.wait_for_sent(1, mira)
    payload = start.buttons[0][0]["callback_data"]
    tap_id = f"tap of {mira}"
    api.put(tap_update(chat_id=mira, message_id=start.message_id, data=payload, tap_id=tap_id))
    api.wait_for_sent(2, mira)
    api.wait_until(lambda _: tap_id in api.ask(lambda state: state.answered))


def test_a_forged_or_old_tap_gets_a_line_and_changes_nothing(
    api: Server, bot: BotProcess, mira: int
) -> None:
    before = rows(bot.database, "SELECT count(*) FROM note")
    for data in ("nonsense", "0:ask:cover_middle", "1:undo:999999"):
        api.put(tap_update(chat_id=mira, message_id=5, data=data))
    replies = api.wait_for_sent(3, mira)
    assert all(reply.text.strip() for reply in replies)
    assert rows(bot.database, "SELECT count(*) FROM note") == before
    assert bot.received(mira) == ["done"] * 3


@pytest.mark.parametrize(
    "said",
    [
        PHOTO,
        STICKER,
        VOICE,
        {"text": "she lobs a lot", **FORWARDED},
        {"text": "x" * 4096},
        {"text": "\U0001f3d3" * 30},
        {"text": "<<<&&&>>>"},
    ],
    ids=["photo", "sticker", "voice", "forward", "noise", "emoji", "markup"],
)
def test_odd_input_gets_one_line_and_no_harm(
    api: Server, bot: BotProcess, mira: int, said: Mapping[str, Any]
) -> None:
    api.put(message_update(chat_id=mira, **said))
    (reply,) = api.wait_for_sent(1, mira)
    assert reply.text.strip()
    assert bot.received(mira) == ["done"]


def test_an_edited_message_is_handled_on_purpose(api: Server, bot: BotProcess, mira: int) -> None:
    api.put(edit_update(chat_id=mira, message_id=3, text="okafor is a lefty"))
    api.wait_for_sent(1, mira)
    assert bot.received(mira) == ["done"]


def test_a_command_to_another_bot_is_left_alone(
    api: Server, bot: BotProcess, group: int, mira: int
) -> None:
    api.say(group, "/help@another_bot", user_id=mira)
    api.say(group, "/help@Stand_In_Bot", user_id=mira)
    api.wait_for_sent(1, group)
    assert bot.received(group) == ["done"]


def test_replies_keep_the_order_of_a_chat(api: Server, mira: int) -> None:
    names = ("Okafor", "Lindqvist", "Ruiz", "Hale")
    for name in names:
        api.say(mira, f"note {name}: lefty")
    replies = api.wait_for_sent(len(names), mira)
    named = [next(name for name in names if name in reply.text) for reply in replies]
    assert named == list(names)
