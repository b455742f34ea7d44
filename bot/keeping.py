"""Looking after a store from the command line: back up, export, import, check."""

from __future__ import annotations

import sqlite3
import sys
from collections.abc import Callable, Mapping
from contextlib import closing
from pathlib import Path

from sqlalchemy import Connection, select

from bot.channels.console import CHAT, USER, open_console
from bot.chat.file import File
from bot.log_check import log_faults
from scouting_db import tables
from scouting_db.book_check import faults
from scouting_db.book_document import ExchangeError
from scouting_db.csv_reading import text_of
from scouting_db.directory import Directory
from scouting_db.exchange import export_book, import_book
from scouting_db.players_csv import players_as_csv
from scouting_db.session import Store
from scouting_db.values import BookId, BookRow

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
    """A whole copy of the store as at one moment, taken while it may be in use.

    SQLite: its online backup, which begins again where a writer came between
    (sqlite.org/backup.html), so the copy is of one moment. PostgreSQL: every book as a document
    into a folder, all read in one REPEATABLE READ transaction, which sees one moment
    (PostgreSQL documentation, "Transaction Isolation").
    """
    url = store.engine.url
    if url.get_backend_name() != "sqlite":
        return _books_as_documents(store, file)
    if not url.database:
        return _tell("A database in memory has nothing to keep: export its book.", MISUSED)
    with (
        closing(sqlite3.connect(url.database)) as source,
        closing(sqlite3.connect(file)) as copy,
    ):
        source.backup(copy)
    return _tell(f"Copied to {file}.", DONE)


def _books_as_documents(store: Store, folder: Path) -> int:
    with store.reading() as connection:
        numbers = list(connection.execute(select(tables.book.c.book_id)).scalars())
        folder.mkdir()
        for number in numbers:
            text = export_book(connection, BookId(number))
            (folder / f"book-{number}.json").write_text(text, encoding="utf-8")
    told = f"{len(numbers)} books written to {folder}, a JSON document each."
    return _tell(f"{told} Chats and members: pg_dump keeps those too.", DONE)


def _export(store: Store, file: Path) -> int:
    """The book that the local user talks to, whole as JSON, or its players as CSV."""
    with store.writing() as connection:
        book = _own_book(connection)
        if book is None:
            return _tell("There is no book of yours in this database yet.", FAILED)
        is_table = file.suffix.lower() == ".csv"
        text = (players_as_csv if is_table else export_book)(connection, book.book)
    # A table keeps its own line ends, which are not those of the machine.
    file.write_bytes(text.encode("utf-8"))
    return _tell(f"{book.name} written to {file}.", DONE)


def _own_book(connection: Connection) -> BookRow | None:
    directory = Directory(connection)
    account = directory.account("console", "console")
    person = directory.person(account, USER, "You")
    in_use = directory.chat(account, CHAT).book
    books = directory.books_of(person)
    return next((one for one in books if one.book == in_use), books[0] if books else None)


def _import(store: Store, file: Path) -> int:
    """A new book from a document, or a table's people into the book in use."""
    content = file.read_bytes()
    if not text_of(content).lstrip().startswith("{"):
        return _import_table(store, File(name=file.name, content=content))
    return _import_book(store, file)


def _import_table(store: Store, file: File) -> int:
    """The way a chat takes it: first what would change, then on a yes; "undo" there undoes it."""
    console = open_console(store, user_name="You")
    preview = console.give(file)
    sys.stdout.write("\n".join(reply.text for reply in preview) + "\n")
    if not console.has_button("1"):
        return DONE
    sys.stdout.write("Add them? y/n ")
    sys.stdout.flush()
    if sys.stdin.readline().strip().lower() not in ("y", "yes"):
        return _tell("Nothing was changed.", DONE)
    done = console.say("1")
    return _tell("\n".join(reply.text for reply in done), DONE)


def _import_book(store: Store, file: Path) -> int:
    """Nothing is left of it where it is wrong."""
    try:
        text = file.read_text(encoding="utf-8-sig")
        with store.writing() as connection:
            directory = Directory(connection)
            account = directory.account("console", "console")
            person = directory.person(account, USER, "You")
            book = import_book(connection, text, owner=person)
            chat = directory.chat(account, CHAT).chat
            directory.use_book(chat, book)
            directory.save_context(chat, {})
    except (OSError, UnicodeDecodeError, ExchangeError) as error:
        return _tell(f"Nothing imported: {error}", FAILED)
    return _tell(f"Imported from {file}. Talk to it: seamwise --book ...", DONE)


def _check(store: Store, _file: Path) -> int:
    """Every fault in a line; the exit code says whether there is one."""
    with store.reading() as connection:
        found = (*faults(connection), *log_faults(connection))
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
