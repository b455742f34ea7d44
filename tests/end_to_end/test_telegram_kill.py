"""kill -9 in the middle of things: nothing lost, nothing doubled, order kept per chat."""

from __future__ import annotations

import signal
import sqlite3
import time
from pathlib import Path

import pytest
from bot_api import Fault, Server, message_update, running
from bot_process import bot_process, rows

CHATS = 5
PER_CHAT = 12


@pytest.mark.parametrize("after_replies", [3, 40])
def test_a_killed_bot_goes_on_where_it_was(tmp_path: Path, after_replies: int) -> None:
    with running(delay_s=0.01) as api:
        for n in range(PER_CHAT):
            for chat in range(1, CHATS + 1):
                api.say(chat, f"note okafor: pops up dink number {n}")
        with bot_process(api, tmp_path, SEAMWISE_PACE="off") as bot:
            api.wait_until(lambda _: len(api.sent()) >= after_replies)
            bot.stop(signal.SIGKILL)
        before = {chat: len(api.sent(chat)) for chat in range(1, CHATS + 1)}
        with bot_process(api, tmp_path, SEAMWISE_PACE="off") as bot:
            api.wait_until(lambda _: unsent(bot.database) == 0, within_s=40)
            assert bot.stop() == 0
        for chat in range(1, CHATS + 1):
            assert_each_answered_in_order(api, bot.database, chat, before[chat])


def assert_each_answered_in_order(api: Server, database: Path, chat: int, before: int) -> None:
    """Every message once in the inbox and in order; at most one reply more than messages."""
    query = f"""
        SELECT json_extract(payload, '$.text') FROM inbox JOIN chat USING (chat_id)
        WHERE external_chat_id = '{chat}' AND state = 'done' ORDER BY inbox_id
    """
    stored = [text for (text,) in rows(database, query)]
    assert stored == [f"note okafor: pops up dink number {n}" for n in range(PER_CHAT)]
    replies = [one.text for one in api.sent(chat)]
    posted = rows(
        database,
        f"""
        SELECT json_extract(payload, '$.text') FROM outbox JOIN chat USING (chat_id)
        WHERE external_chat_id = '{chat}' ORDER BY outbox_id
        """,
    )
    expected = [text for (text,) in posted]
    repeated = len(replies) - len(expected)
    assert repeated in (0, 1)
    # The one repeated reply, if any, is the last one before the kill.
    assert replies == expected[:before] + expected[before - repeated :]


def unsent(database: Path) -> int:
    """Messages without a sent reply, those not even stored yet included."""
    query = f"""
        SELECT (SELECT count(*) FROM inbox WHERE state = 'open')
             + (SELECT count(*) FROM outbox WHERE state IN ('waiting', 'sending'))
             + {CHATS * PER_CHAT} - (SELECT count(*) FROM inbox)
    """
    try:
        return int(rows(database, query)[0][0])
    except sqlite3.OperationalError:
        # Killed before it made its tables.
        return CHATS * PER_CHAT


def test_what_a_killed_sender_had_in_hand_is_sent_at_once(tmp_path: Path) -> None:
    """Not only after its lease: the lock says that nobody else can be sending it."""
    with running() as api:
        api.fail("sendMessage", *[Fault(status=502, description="Bad Gateway")] * 3)
        api.put(message_update(chat_id=1, text="/help"))
        with bot_process(api, tmp_path) as bot:
            api.wait_until(lambda _: "sendMessage" in api.called())
            bot.stop(signal.SIGKILL)
        api.ask(lambda state: state.faults.clear())
        began = time.monotonic()
        with bot_process(api, tmp_path):
            api.wait_for_sent(1, 1)
        assert time.monotonic() - began < 20
