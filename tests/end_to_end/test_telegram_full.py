"""The real process while its disk is full, or while another program holds the database.

A full disk here: a limit on the size of the running process's files (prlimit(2), RLIMIT_FSIZE), so
that every write fails as on a full disk, until the limit is lifted. A test beside the batch's has
SQLite's own "database or disk is full" (tests/bot/test_post_refused.py).
"""

from __future__ import annotations

import sqlite3
from collections.abc import Iterator
from contextlib import closing, contextmanager
from pathlib import Path

import pytest
from bot_api import Server, running
from bot_process import BotProcess, bot_process, rows

from bot.chat.wording import wording

resource = pytest.importorskip("resource", reason="limits of processes are Unix's")
if not hasattr(resource, "prlimit"):
    pytest.skip("limits of another process are Linux's", allow_module_level=True)

BUSY = wording("busy")
NOTE = "note okafor: pops up backhand dinks"


@pytest.fixture
def alone(tmp_path: Path) -> Iterator[BotProcess]:
    """A process of its own, which has already answered chat 1."""
    with running() as api, bot_process(api, tmp_path, SEAMWISE_PACE="off") as bot:
        api.say(1, "/add Okafor")
        api.wait_for_sent(1, 1)
        api.wait_until(lambda _: bot.states(1) == {"sent": 1})
        yield bot


def texts(api: Server, chat: int) -> list[str]:
    return [one.text for one in api.sent(chat)]


def notes(bot: BotProcess) -> list[str]:
    return [text for (text,) in rows(bot.database, "SELECT text FROM note ORDER BY note_id")]


def is_sound(bot: BotProcess) -> bool:
    """SQLite's own check of every page and reference."""
    return rows(bot.database, "PRAGMA integrity_check") == [("ok",)] and not rows(
        bot.database, "PRAGMA foreign_key_check"
    )


@contextmanager
def full_disk(bot: BotProcess) -> Iterator[None]:
    """No byte of any file of the process can be written, its log's neither."""
    before = resource.prlimit(bot.process.pid, resource.RLIMIT_FSIZE)
    resource.prlimit(bot.process.pid, resource.RLIMIT_FSIZE, (1, before[1]))
    try:
        yield
    finally:
        if bot.process.poll() is None:
            resource.prlimit(bot.process.pid, resource.RLIMIT_FSIZE, before)


@contextmanager
def held(bot: BotProcess) -> Iterator[None]:
    """Another program writes, and does not end."""
    with closing(sqlite3.connect(bot.database, timeout=10, isolation_level=None)) as other:
        other.execute("BEGIN IMMEDIATE")
        yield
        other.execute("ROLLBACK")


TROUBLES = {"full disk": full_disk, "held by another": held}


@pytest.mark.parametrize("trouble", TROUBLES)
def test_the_writer_is_told_to_try_again_and_the_next_try_works(
    alone: BotProcess, trouble: str
) -> None:
    api = alone.api
    with TROUBLES[trouble](alone):
        api.say(1, f"{NOTE}, first")
        # A held database is waited for before it counts as refusing.
        api.wait_until(lambda _: BUSY in texts(api, 1), within_s=40)
        assert notes(alone) == []
        assert is_sound(alone)
        assert alone.states(1) == {"sent": 1}
    api.say(1, f"{NOTE}, second")
    api.wait_until(lambda _: alone.states(1) == {"sent": 3}, within_s=40)
    assert notes(alone) == [f"{NOTE}, first", f"{NOTE}, second"]
    assert texts(api, 1).count(BUSY) == 1
    assert [text.split(".")[0] for text in texts(api, 1)[2:]] == ["Noted", "Noted"]
    assert is_sound(alone)
    assert alone.stop() == 0


@pytest.mark.parametrize("trouble", TROUBLES)
def test_a_process_ended_in_the_trouble_goes_on_after_it(
    alone: BotProcess, tmp_path: Path, trouble: str
) -> None:
    api = alone.api
    with TROUBLES[trouble](alone):
        api.say(1, NOTE)
        api.wait_until(lambda _: BUSY in texts(api, 1), within_s=40)
        alone.process.kill()
        alone.process.wait()
    with bot_process(api, tmp_path, SEAMWISE_PACE="off") as again:
        api.wait_until(lambda _: again.states(1) == {"sent": 2}, within_s=40)
        assert notes(again) == [NOTE]
