"""Looking after a store from the command line: back up, export, import, check."""

from __future__ import annotations

import sqlite3
import sys
from collections.abc import Callable, Mapping
from contextlib import closing
from pathlib import Path

from bot.channels.console import CHAT, USER
from scouting_db.directory import Directory
from scouting_db.exchange import ExchangeError, export_book, faults, import_book
from scouting_db.session import Store

DONE, FAILED, MISUSED = 0, 1, 2
"""Exit codes."""


def keep_book(verb: str, store: Store, file: Path | None) -> int:
    """Do `verb` with the store and the file; returns the exit code and tells the user."""
    if verb != "check" and file is None:
        return _tell(f"Name a file: seamwise book {verb} FILE", MISUSED)
    if verb in ("backup", "export") and file is not None and file.exists():
        return _tell(f"{file} exists already; name another file.", MISUSED)
    try:
        return _VERBS[verb](store, file or Path())
    except (OSError, sqlite3.Error) as error:
        return _tell(f"Cannot {verb} with {file}: {error}", FAILED)


def _backup(store: Store, file: Path) -> int:
    """A whole copy of a SQLite store, taken while it may be in use."""
    url = store.engine.url
    if url.get_backend_name() != "sqlite" or not url.database:
        return _tell("Back up a PostgreSQL database with pg_dump.", MISUSED)
    with (
        closing(sqlite3.connect(url.database)) as source,
        closing(sqlite3.connect(file)) as copy,
    ):
        source.backup(copy)
    return _tell(f"Copied to {file}.", DONE)


def _export(store: Store, file: Path) -> int:
    """The book that the local user talks to as JSON lines."""
    with store.writing() as connection:
        directory = Directory(connection)
        person = directory.person(directory.account("console", "console"), USER, "You")
        in_use = directory.chat(directory.account("console", "console"), CHAT).book
        books = directory.books_of(person)
        book = next((one for one in books if one.book == in_use), books[0] if books else None)
        if book is None:
            return _tell("There is no book of yours in this database yet.", FAILED)
        lines = list(export_book(connection, book.book))
    file.write_text("\n".join(lines) + "\n", encoding="utf-8")
    return _tell(f"{len(lines)} lines of {book.name} written to {file}.", DONE)


def _import(store: Store, file: Path) -> int:
    """A new book from exported lines; nothing is left of it where they are wrong."""
    try:
        text = file.read_text(encoding="utf-8")
        with store.writing() as connection:
            directory = Directory(connection)
            account = directory.account("console", "console")
            person = directory.person(account, USER, "You")
            book = import_book(connection, text.splitlines(), owner=person)
            directory.use_book(directory.chat(account, CHAT).chat, book)
    except (OSError, UnicodeDecodeError, ExchangeError) as error:
        return _tell(f"Nothing imported: {error}", FAILED)
    return _tell(f"Imported from {file}. Talk to it: seamwise --book ...", DONE)


def _check(store: Store, _file: Path) -> int:
    with store.reading() as connection:
        found = faults(connection)
    for fault in found:
        sys.stdout.write(f"{fault}\n")
    return _tell("No faults found.", DONE) if not found else FAILED


def _tell(line: str, code: int) -> int:
    (sys.stderr if code else sys.stdout).write(line + "\n")
    return code


_VERBS: Mapping[str, Callable[[Store, Path], int]] = {
    "backup": _backup,
    "export": _export,
    "import": _import,
    "check": _check,
}
