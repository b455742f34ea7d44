"""A terminal while the database refuses: told to try again, and the next try works."""

from __future__ import annotations

import io
import sqlite3
from collections.abc import Iterator
from contextlib import closing
from pathlib import Path

import pytest
from full_disks import full_disk
from sqlalchemy.exc import OperationalError

from bot import __main__ as command
from bot.channels.console import open_console, talk
from bot.chat.wording import wording
from scouting_db import session
from scouting_db.session import open_store

BUSY = wording("busy")
LONG = "she poaches a lot. " * 150
"""More than a page of the file; no note, so that no time goes into understanding it."""


def test_on_a_full_disk_the_line_is_not_taken_and_the_next_one_is(tmp_path: Path) -> None:
    store = open_store(f"sqlite:///{tmp_path / 'book.sqlite'}")
    console = open_console(store, user_name="Mira")
    said = io.StringIO()
    talk(console, ["/add Okafor"], said)
    with full_disk(store, pages_left=0, until_refused=False):
        talk(console, [f"/help {LONG}"] * 5, said)
    talk(console, ["/players"], said)
    store.close()
    answers = [one.strip() for one in said.getvalue().split("\n\n") if one.strip()]
    assert answers[0].startswith("Added Okafor.")
    assert BUSY in answers
    assert answers[-1] == "Opponents: Okafor."


@pytest.fixture
def held(tmp_path: Path) -> Iterator[Path]:
    """A book that another program writes to, and does not end."""
    path = tmp_path / "book.sqlite"
    open_store(f"sqlite:///{path}").close()
    with closing(sqlite3.connect(path, isolation_level=None)) as other:
        other.execute("BEGIN IMMEDIATE")
        yield path
        other.execute("ROLLBACK")


def test_a_held_database_is_told_in_a_line(
    held: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(session, "BUSY_TIMEOUT_MS", 50)
    assert command.main(["ask", "--book", str(held), "/players"]) in (1, 2)
    told = capsys.readouterr()
    assert told.out == ""
    assert BUSY in told.err
    assert "Traceback" not in told.err


def test_another_fault_is_not_hidden(tmp_path: Path) -> None:
    store = open_store(f"sqlite:///{tmp_path / 'book.sqlite'}")
    console = open_console(store, user_name="Mira")
    with store.writing() as connection:
        connection.exec_driver_sql("DROP TABLE inbox")
    with pytest.raises(OperationalError, match="no such table"):
        talk(console, ["/players"], io.StringIO())
    store.close()
