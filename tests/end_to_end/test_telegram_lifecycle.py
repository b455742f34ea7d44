"""Starting and stopping the real process."""

from __future__ import annotations

import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest
from bot_api import Fault, running
from bot_nursery import CHECKOUT, Forked, the_nursery
from bot_process import bot_process, environment, rows

CHATS = range(1, 21)


def test_a_first_contact_that_fails_does_not_end_the_process(tmp_path: Path) -> None:
    with running() as api:
        api.fail("getMe", Fault(status=502, description="Bad Gateway"))
        api.say(1, "/help")
        with bot_process(api, tmp_path):
            api.wait_for_sent(1, 1)


@pytest.mark.parametrize("number", [signal.SIGTERM, signal.SIGINT])
def test_a_signal_stops_it_with_everything_answered(tmp_path: Path, number: int) -> None:
    with running() as api, bot_process(api, tmp_path) as bot:
        for chat in CHATS:
            api.say(chat, "/help")
        api.wait_until(lambda _: api.ask(lambda state: state.confirmed_below > 1000))
        assert bot.stop(number) == 0
        assert {one.chat_id for one in api.sent()} == set(CHATS)
        states = rows(bot.database, "SELECT DISTINCT state FROM outbox")
        assert states == [("sent",)]


def test_a_stop_during_a_long_wait_leaves_the_reply_for_the_next_start(tmp_path: Path) -> None:
    with running() as api:
        waiting = Fault(status=429, description="Too Many", parameters={"retry_after": 300})
        api.fail("sendMessage", waiting)
        api.say(1, "/help")
        with bot_process(api, tmp_path) as bot:
            api.wait_until(lambda _: api.ask(lambda state: not state.faults["sendMessage"]))
            began = time.monotonic()
            assert bot.stop() == 0
            assert time.monotonic() - began < 10, "service managers kill after ten seconds"
            assert rows(bot.database, "SELECT state FROM outbox") == [("waiting",)]
        with bot_process(api, tmp_path):
            api.wait_for_sent(1, 1)


def test_it_stops_while_the_server_is_away(tmp_path: Path) -> None:
    with running() as api:
        pass
    with bot_process(api, tmp_path) as bot:
        end = time.monotonic() + 10
        while "no contact" not in bot.logged() and time.monotonic() < end:
            time.sleep(0.05)
        assert bot.stop() == 0


def test_the_log_holds_neither_the_token_nor_what_people_write(tmp_path: Path) -> None:
    with running() as api:
        api.fail("sendMessage", Fault(drop=True), Fault(status=500))
        api.fail("getUpdates", Fault(drop=True))
        with bot_process(api, tmp_path, SEAMWISE_LOG="debug") as bot:
            api.say(1, "okafor hates xylophones")
            api.wait_for_sent(1, 1)
            bot.stop()
            assert "stand-in-token" not in bot.logged()
            assert "xylophones" not in bot.logged()
            assert "serving as" in bot.logged()


def test_without_a_token_it_says_how_to_get_one(tmp_path: Path) -> None:
    """Started as people start it; the others are forked from a loaded process."""
    ended = subprocess.run(
        [sys.executable, "-m", "bot", "telegram"],
        cwd=CHECKOUT,
        env=environment("http://127.0.0.1:9", tmp_path / "none.sqlite", {"SEAMWISE_TOKEN": ""}),
        capture_output=True,
        text=True,
        timeout=30,
        check=False,
    )
    assert ended.returncode == 2
    assert "/newbot" in ended.stderr
    assert "terminal" in ended.stderr
    assert "Traceback" not in ended.stderr


def test_a_token_the_server_does_not_know_ends_it_with_a_clear_line(tmp_path: Path) -> None:
    with running() as api:
        told = told_by_one_that_ends(api.root, tmp_path, SEAMWISE_TOKEN="99:wrong")
    assert "SEAMWISE_TOKEN" in told
    assert "Traceback" not in told
    assert "99:wrong" not in told


def test_a_setting_that_cannot_be_used_is_named(tmp_path: Path) -> None:
    told = told_by_one_that_ends("ftp://nowhere", tmp_path)
    assert "SEAMWISE_API_BASE" in told
    assert "Traceback" not in told


def told_by_one_that_ends(root: str, folder: Path, **more: str) -> str:
    log = folder / "log"
    surroundings = environment(root, folder / "none.sqlite", more)
    assert Forked(the_nursery(), ["telegram"], surroundings, log).wait() == 2
    return log.read_text(encoding="utf-8")
