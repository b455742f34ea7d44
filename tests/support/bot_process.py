"""The real `seamwise telegram` process, for tests against the stand-in server."""

from __future__ import annotations

import os
import signal
import sqlite3
from collections.abc import Iterator, Mapping
from contextlib import closing, contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from bot_api import TOKEN, Server
from bot_nursery import Forked, the_nursery


@dataclass(slots=True, kw_only=True)
class BotProcess:
    """A running bot, the server it talks to, its database file and its log file."""

    api: Server
    process: Forked
    database: Path
    log: Path

    def stop(self, number: int = signal.SIGTERM) -> int:
        """Send the signal and return the exit code."""
        self.process.send_signal(number)
        return self.process.wait()

    def states(self, chat: int) -> dict[str, int]:
        """How many messages to a chat are in which state of the outbox."""
        query = f"""
            SELECT state, count(*) FROM outbox JOIN chat USING (chat_id)
            WHERE external_chat_id = '{chat}' GROUP BY state
        """
        return dict(rows(self.database, query))

    def received(self, chat: int) -> list[str]:
        """The states of the chat's updates in the inbox, in order."""
        query = f"""
            SELECT state FROM inbox JOIN chat USING (chat_id)
            WHERE external_chat_id = '{chat}' ORDER BY inbox_id
        """
        return [state for (state,) in rows(self.database, query)]

    def logged(self) -> str:
        """Everything written to the error stream so far."""
        return self.log.read_text(encoding="utf-8")


def rows(database: Path, query: str) -> list[tuple[Any, ...]]:
    """What the database answers, read beside the process or after it."""
    with closing(sqlite3.connect(database, timeout=10)) as connection:
        return connection.execute(query).fetchall()


def environment(api_root: str, database: Path, more: Mapping[str, str]) -> dict[str, str]:
    """Ours for the process: the tests' own settings and nothing of the caller's."""
    kept = {key: value for key, value in os.environ.items() if not key.startswith("SEAMWISE_")}
    return kept | {
        "SEAMWISE_TOKEN": TOKEN,
        "SEAMWISE_API_BASE": api_root,
        "SEAMWISE_DATABASE": f"sqlite:///{database}",
        **more,
    }


@contextmanager
def bot_process(api: Server, folder: Path, **more: str) -> Iterator[BotProcess]:
    """The bot serving the stand-in; killed at the end if it still runs."""
    database, log = folder / "bot.sqlite", folder / "bot.log"
    process = Forked(the_nursery(), ["telegram"], environment(api.root, database, more), log)
    try:
        yield BotProcess(api=api, process=process, database=database, log=log)
    finally:
        process.kill()
        process.wait()
