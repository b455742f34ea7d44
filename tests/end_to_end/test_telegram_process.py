"""The real process against the stand-in server: what a user sees, through every fault."""

from __future__ import annotations

import signal
import subprocess
import sys
import time
from collections.abc import Iterator
from pathlib import Path

import pytest
from bot_api import (
    FORWARDED,
    PHOTO,
    STICKER,
    VOICE,
    Fault,
    Server,
    edit_update,
    message_update,
    running,
    tap_update,
    too_many_requests,
)
from bot_process import CHECKOUT, BotProcess, bot_process, environment, rows

MIRA = 11
TOM = 22
GROUP = -500


@pytest.fixture
def api() -> Iterator[Server]:
    with running() as server:
        yield server


@pytest.fixture
def bot(api: Server, tmp_path: Path) -> Iterator[BotProcess]:
    with bot_process(api, tmp_path) as process:
        api.wait_until(lambda _: api.ask(lambda state: state.polls) > 0)
        yield process


@pytest.mark.usefixtures("bot")
def test_a_message_gets_its_reply_and_the_menu_is_set(api: Server) -> None:
    api.say(MIRA, "/start")
    (reply,) = api.wait_for_sent(1, MIRA)
    first_line = reply.text.split("\n")[0]
    assert first_line
    assert reply.source.startswith(f"<b>{first_line}</b>")
    api.wait_until(lambda _: "setMyCommands" in called(api))


def test_what_a_user_types_is_escaped(api: Server, bot: BotProcess) -> None:
    api.say(MIRA, "note <b>okafor & lindqvist: pops up backhand dinks")
    (reply, *_) = api.wait_for_sent(1, MIRA)
    assert reply.parse_mode == "HTML"
    assert rows(bot.database, "SELECT count(*) FROM outbox WHERE state = 'dropped'") == [(0,)]


def test_an_update_delivered_twice_is_answered_once(api: Server, bot: BotProcess) -> None:
    update = message_update(chat_id=MIRA, text="/help", message_id=77)
    number = api.put(update)
    api.wait_for_sent(1, MIRA)
    api.put({**update, "update_id": number})
    api.say(TOM, "/help")
    api.wait_for_sent(1, TOM)
    assert len(api.sent(MIRA)) == 1
    assert rows(bot.database, "SELECT count(*) FROM inbox") == [(2,)]


@pytest.mark.usefixtures("bot")
def test_the_server_s_wait_is_kept_for_that_chat_alone(api: Server) -> None:
    wait_s = 2
    api.fail("sendMessage", too_many_requests(wait_s))
    began = time.monotonic()
    api.say(MIRA, "/help")
    api.wait_until(lambda _: "sendMessage" in called(api))
    api.say(TOM, "/help")
    (to_tom,) = api.wait_for_sent(1, TOM)
    (to_mira,) = api.wait_for_sent(1, MIRA)
    assert to_mira.at - began >= wait_s
    assert to_tom.at < to_mira.at


@pytest.mark.parametrize(
    "fault",
    [
        Fault(status=500),
        Fault(status=502, description="Bad Gateway"),
        Fault(drop=True),
    ],
    ids=["500", "502", "dropped"],
)
def test_a_failed_send_is_repeated(api: Server, bot: BotProcess, fault: Fault) -> None:
    api.fail("sendMessage", fault, fault)
    api.say(MIRA, "/help")
    api.wait_for_sent(1, MIRA)
    api.wait_until(lambda _: states(bot) == {"sent": 1})


def test_an_answer_lost_on_the_way_repeats_one_reply_at_most(api: Server, bot: BotProcess) -> None:
    api.fail("sendMessage", Fault(drop=True, after=True))
    api.say(MIRA, "/help")
    api.wait_until(lambda _: states(bot) == {"sent": 1})
    assert len(api.sent(MIRA)) == 2


@pytest.mark.parametrize("fault", [Fault(status=500), Fault(drop=True), too_many_requests(1)])
def test_a_failed_fetch_loses_nothing(api: Server, tmp_path: Path, fault: Fault) -> None:
    api.fail("getUpdates", fault, fault)
    api.say(MIRA, "/help")
    with bot_process(api, tmp_path):
        api.wait_for_sent(1, MIRA)


def test_updates_lost_on_the_way_to_us_come_again(api: Server, tmp_path: Path) -> None:
    api.fail("getUpdates", Fault(drop=True, after=True))
    api.say(MIRA, "/help")
    with bot_process(api, tmp_path) as bot:
        api.wait_for_sent(1, MIRA)
        assert rows(bot.database, "SELECT count(*) FROM inbox") == [(1,)]


def test_a_first_contact_that_fails_does_not_end_the_process(api: Server, tmp_path: Path) -> None:
    api.fail("getMe", Fault(status=502, description="Bad Gateway"), Fault(drop=True))
    api.say(MIRA, "/help")
    with bot_process(api, tmp_path):
        api.wait_for_sent(1, MIRA)


def test_whoever_blocks_us_gets_nothing_until_they_write_again(
    api: Server, bot: BotProcess
) -> None:
    api.ask(lambda state: state.blocked.add(MIRA))
    api.say(MIRA, "/help")
    api.wait_until(lambda _: states(bot) == {"dropped": 1})
    assert rows(bot.database, "SELECT blocked_at IS NOT NULL FROM chat") == [(1,)]
    api.ask(lambda state: state.blocked.discard(MIRA))
    api.say(MIRA, "/help")
    api.wait_for_sent(1, MIRA)
    assert rows(bot.database, "SELECT blocked_at IS NOT NULL FROM chat") == [(0,)]


def test_an_upgraded_group_gets_its_reply_under_the_new_id(api: Server, bot: BotProcess) -> None:
    new_group = -100500
    api.ask(lambda state: state.migrated.update({GROUP: new_group}))
    api.say(GROUP, "/help", user_id=MIRA)
    api.wait_for_sent(1, new_group)
    assert rows(bot.database, "SELECT external_chat_id FROM chat") == [(str(new_group),)]


@pytest.mark.usefixtures("bot")
def test_html_refused_for_any_reason_goes_out_as_plain_text(api: Server) -> None:
    api.fail("sendMessage", Fault(status=400, description="Bad Request: can't parse entities: x"))
    api.say(MIRA, "/help")
    (reply,) = api.wait_for_sent(1, MIRA)
    assert reply.parse_mode is None
    assert "<b>" not in reply.source


def test_a_message_that_is_refused_does_not_hold_up_the_next(api: Server, bot: BotProcess) -> None:
    api.fail("sendMessage", Fault(status=400, description="Bad Request: no such luck"))
    api.say(MIRA, "/help")
    api.say(MIRA, "/help")
    api.wait_for_sent(1, MIRA)
    api.wait_until(lambda _: states(bot) == {"dropped": 1, "sent": 1})


@pytest.mark.usefixtures("bot")
def test_a_tap_is_answered_at_once_and_acts(api: Server) -> None:
    api.say(MIRA, "/start")
    (start,) = api.wait_for_sent(1, MIRA)
    payload = start.buttons[0][0]["callback_data"]
    api.put(tap_update(chat_id=MIRA, message_id=start.message_id, data=payload, tap_id="t1"))
    api.wait_for_sent(2, MIRA)
    api.wait_until(lambda _: api.ask(lambda state: state.answered) == ["t1"])


def test_a_forged_or_old_tap_gets_a_line_and_changes_nothing(api: Server, bot: BotProcess) -> None:
    for data in ("nonsense", "0:ask:cover_middle", "1:undo:999999"):
        api.put(tap_update(chat_id=MIRA, message_id=5, data=data))
    replies = api.wait_for_sent(3, MIRA)
    assert all(reply.text.strip() for reply in replies)
    assert rows(bot.database, "SELECT count(*) FROM note") == [(0,)]


@pytest.mark.parametrize(
    "update",
    [
        message_update(chat_id=MIRA, **PHOTO),
        message_update(chat_id=MIRA, **STICKER),
        message_update(chat_id=MIRA, **VOICE),
        message_update(chat_id=MIRA, text="she lobs a lot", **FORWARDED),
        message_update(chat_id=MIRA, text="x" * 4096),
        message_update(chat_id=MIRA, text="\U0001f3d3" * 30),
        edit_update(chat_id=MIRA, message_id=3, text="okafor is a lefty"),
    ],
    ids=["photo", "sticker", "voice", "forward", "noise", "emoji", "edit"],
)
def test_odd_input_gets_one_kind_line(
    api: Server, bot: BotProcess, update: dict[str, object]
) -> None:
    api.put(update)
    (reply,) = api.wait_for_sent(1, MIRA)
    assert reply.text.strip()
    assert rows(bot.database, "SELECT state FROM inbox") == [("done",)]


def test_a_command_to_another_bot_is_left_alone(api: Server, bot: BotProcess) -> None:
    api.say(GROUP, "/help@another_bot", user_id=MIRA)
    api.say(GROUP, "/help@Stand_In_Bot", user_id=MIRA)
    api.wait_for_sent(1, GROUP)
    assert rows(bot.database, "SELECT count(*) FROM inbox") == [(1,)]


@pytest.mark.parametrize("number", [signal.SIGTERM, signal.SIGINT])
def test_a_signal_stops_it_with_everything_answered(
    api: Server, bot: BotProcess, number: int
) -> None:
    chats = range(1, 21)
    for chat in chats:
        api.say(chat, "/help")
    api.wait_until(lambda _: rows(bot.database, "SELECT count(*) FROM inbox") == [(len(chats),)])
    assert bot.stop(number) == 0
    assert {one.chat_id for one in api.sent()} == set(chats)
    assert states(bot) == {"sent": len(chats)}


def test_it_stops_while_the_server_is_away(tmp_path: Path) -> None:
    with running() as api:
        pass
    with bot_process(api, tmp_path) as bot:
        end = time.monotonic() + 10
        while "no contact" not in bot.logged() and time.monotonic() < end:
            time.sleep(0.05)
        assert bot.stop() == 0


def test_a_second_poller_is_told_and_the_first_goes_on(api: Server, bot: BotProcess) -> None:
    api.say(MIRA, "/help")
    api.wait_for_sent(1, MIRA)
    api.fail("getUpdates", Fault(status=409, description="Conflict: terminated by other"))
    api.say(MIRA, "/help")
    api.wait_until(lambda _: "409" in bot.logged())
    api.say(MIRA, "/help")
    api.wait_for_sent(3, MIRA)


def test_the_log_holds_neither_the_token_nor_what_people_write(api: Server, tmp_path: Path) -> None:
    api.fail("sendMessage", Fault(drop=True), Fault(status=500))
    api.fail("getUpdates", Fault(drop=True))
    with bot_process(api, tmp_path, SEAMWISE_LOG="debug") as bot:
        api.say(MIRA, "okafor hates xylophones")
        api.wait_for_sent(1, MIRA)
        bot.stop()
        assert "stand-in-token" not in bot.logged()
        assert "xylophones" not in bot.logged()
        assert "serving as" in bot.logged()


def start_and_end(tmp_path: Path, **more: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, "-m", "bot", "telegram"],
        cwd=CHECKOUT,
        env=environment("http://127.0.0.1:9", tmp_path / "none.sqlite", more),
        capture_output=True,
        text=True,
        timeout=30,
        check=False,
    )


def test_without_a_token_it_says_how_to_get_one(tmp_path: Path) -> None:
    ended = start_and_end(tmp_path, SEAMWISE_TOKEN="")
    assert ended.returncode == 2
    assert "/newbot" in ended.stderr
    assert "terminal" in ended.stderr
    assert "Traceback" not in ended.stderr


def test_a_token_the_server_does_not_know_ends_it_with_a_clear_line(
    api: Server, tmp_path: Path
) -> None:
    ended = start_and_end(tmp_path, SEAMWISE_TOKEN="99:wrong", SEAMWISE_API_BASE=api.root)
    assert ended.returncode == 2
    assert "SEAMWISE_TOKEN" in ended.stderr
    assert "Traceback" not in ended.stderr
    assert "99:wrong" not in ended.stderr


def called(api: Server) -> list[str]:
    return api.ask(lambda state: [method for method, _ in state.calls])


def states(bot: BotProcess) -> dict[str, int]:
    return dict(rows(bot.database, "SELECT state, count(*) FROM outbox GROUP BY state"))
