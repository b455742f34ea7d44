"""`seamwise serve` as a command: what it refuses and how it says so, one worker on SQLite, and
several under one command.
"""

from __future__ import annotations

import os
import signal
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any
from unittest.mock import patch

import pytest
from bot_api import running
from bot_nursery import Forked, the_nursery
from bot_process import bot_process
from command_here import command_here
from databases import new_postgresql, shown
from worker_process import worker_environment, worker_process


@pytest.mark.parametrize(
    ("more", "says"),
    [
        ({"SEAMWISE_TOKEN": ""}, "/newbot"),
        ({"SEAMWISE_TOKEN": "99:wrong"}, "does not know this token"),
    ],
)
def test_without_its_token_a_process_ends_kindly(
    tmp_path: Path, more: dict[str, str], says: str
) -> None:
    url, log = f"sqlite:///{tmp_path / 'bot.sqlite'}", tmp_path / "log"
    with running() as api:
        ended = Forked(the_nursery(), ["serve"], worker_environment(api, url, 9, more), log)
        assert ended.wait() == 2
    told = log.read_text(encoding="utf-8")
    assert says in told
    assert "Traceback" not in told
    assert "99:wrong" not in told


@pytest.mark.parametrize(
    ("arguments", "more", "says"),
    [
        ((), {"SEAMWISE_WEBHOOK_URL": ""}, "SEAMWISE_WEBHOOK_URL=https://"),
        ((), {"SEAMWISE_WEBHOOK_URL": "bot.example.org"}, "https://bot.example.org/telegram"),
        ((), {"SEAMWISE_WEBHOOK_URL": "http://x/ready"}, "choose another path"),
        ((), {"SEAMWISE_API_BASE": ""}, "https://bot.example.org/telegram"),
        ((), {"SEAMWISE_WEBHOOK_SECRET": "short"}, "16 to 256"),
        (("--workers", "2"), {}, "On a SQLite file one worker"),
        (("--workers", "0"), {}, "expected 1 to 64"),
        (("--port", "70000"), {}, "no port"),
    ],
)
def test_what_cannot_be_served_is_said_kindly(
    tmp_path: Path, arguments: tuple[str, ...], more: dict[str, str], says: str
) -> None:
    url = f"sqlite:///{tmp_path / 'bot.sqlite'}"
    with running() as api, patch.dict(os.environ, worker_environment(api, url, 9, more)):
        ended = command_here("serve", *arguments)
    assert ended.returncode == 2
    assert says in ended.stderr
    assert "short" not in ended.stderr


def test_one_worker_serves_on_sqlite_and_nobody_beside_it(tmp_path: Path) -> None:
    url = f"sqlite:///{tmp_path / 'bot.sqlite'}"
    with running() as api, worker_process(api, url, tmp_path, SEAMWISE_LOG="debug") as worker:
        api.wait_until(lambda _: "setWebhook" in api.called(), within_s=40)
        api.say(1, "okafor hates xylophones")
        api.wait_for_sent(1, 1)
        assert worker.is_ready()
        with bot_process(api, tmp_path) as poller:
            assert poller.process.wait(timeout=60) == 1
            assert "Another process already serves" in poller.logged()
        api.say(1, "/help")
        api.wait_for_sent(2, 1)
        assert worker.stop() == 0
        log = worker.log.read_text(encoding="utf-8")
        assert "serving as" in log
        for secret in ("xylophones", "stand-in-token", api.ask(lambda s: str(s.webhook.secret))):
            assert secret not in log
        assert all(line["level"] for line in worker.logged()), "each line is JSON"


@pytest.mark.postgres
def test_several_under_one_command_are_replaced_when_they_die(tmp_path: Path) -> None:
    with new_postgresql() as url, running() as api:
        arguments = ("--workers", "2")
        with worker_process(api, shown(url), tmp_path, arguments=arguments) as command:
            api.wait_until(lambda _: api.called().count("setWebhook") == 2, within_s=60)
            first = processes(command.page, 2)
            os.kill(first[0], signal.SIGKILL)
            for chat in range(1, 9):
                api.say(chat, "/help")
            api.wait_for_sent(8, within_s=40)
            api.wait_until(lambda _: api.called().count("setWebhook") == 3, within_s=60)
            assert first[1] in processes(command.page, 2)
            assert command.stop() == 0


def processes(page: Callable[[str], tuple[int, dict[str, Any]]], count: int) -> list[int]:
    """The numbers of the workers that answer, as soon as so many do."""
    end, seen = time.monotonic() + 40, set[int]()
    while len(seen) < count and time.monotonic() < end:
        seen.add(page("health")[1].get("process", 0))
        seen.discard(0)
        time.sleep(0.02)
    assert len(seen) == count
    return sorted(seen)
