"""Databases that get into trouble while the bot is at work: locked, cut off, restarted."""

from __future__ import annotations

import random
import sqlite3
import time
from contextlib import closing
from pathlib import Path
from typing import Protocol

from own_postgres import OwnPostgres
from sqlalchemy import NullPool, create_engine, text

LONGEST_LOCK_S = 1.5
"""Shorter than the bot waits for a lock (scouting_db.session.BUSY_TIMEOUT_MS)."""


class Troubled(Protocol):
    """A database for a campaign."""

    @property
    def url(self) -> str:
        """As SEAMWISE_DATABASE has it."""

    def trouble(self, dice: random.Random) -> str:
        """Get into trouble and out of it; returns what it was."""


class LockedSqlite:
    """A SQLite file that another program writes to for a while."""

    def __init__(self, path: Path) -> None:
        self._path = path
        self.url = f"sqlite:///{path}"

    def trouble(self, dice: random.Random) -> str:
        with closing(sqlite3.connect(self._path, timeout=10, isolation_level=None)) as other:
            other.execute("BEGIN IMMEDIATE")
            time.sleep(dice.uniform(0.1, LONGEST_LOCK_S))
            other.execute("ROLLBACK")
        return "database locked by another program"


class CutOffPostgres:
    """A PostgreSQL database whose sessions are ended all at once."""

    def __init__(self, url: str) -> None:
        self.url = url

    def trouble(self, dice: random.Random) -> str:  # noqa: ARG002
        engine = create_engine(self.url, poolclass=NullPool)
        with engine.connect() as connection:
            connection.execute(
                text(
                    "SELECT pg_terminate_backend(pid) FROM pg_stat_activity "
                    "WHERE datname = current_database() AND pid <> pg_backend_pid()"
                )
            )
        return "database sessions ended"


class RestartedPostgres:
    """A server that is stopped and started, or only ends its sessions."""

    def __init__(self, server: OwnPostgres) -> None:
        self._server = server
        self._cut_off = CutOffPostgres(server.url)
        self.url = server.url

    def trouble(self, dice: random.Random) -> str:
        mode = dice.choice(("fast", "immediate", "sessions"))
        if mode == "sessions":
            return self._cut_off.trouble(dice)
        self._server.stop(mode)
        time.sleep(dice.uniform(0, 0.3))
        self._server.start()
        return f"database restarted ({mode})"
