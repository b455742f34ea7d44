"""What README and DEVELOPERS show of reminders and documents is what happens."""

from __future__ import annotations

import json
from pathlib import Path

import conversations
from databases import new_team

from bot.__main__ import _KEEPING
from scouting_db.book_check import faults
from scouting_db.exchange import export_book, import_book
from scouting_db.session import Store

ROOT = Path(__file__).parents[2]
README = ROOT / "README.md"


def test_the_conversation_about_reminders_is_true() -> None:
    wanted = conversations.read(conversations.fenced(README, "reminders"))
    assert len(wanted) >= 5
    assert conversations.written(conversations.replay(wanted)) == conversations.written(wanted)


def test_every_command_for_books_is_in_the_readme() -> None:
    told = README.read_text(encoding="utf-8")
    assert all(f"seamwise book {verb}" in told for verb in _KEEPING)


def test_the_document_shown_is_imported_and_exported_as_it_is(store: Store) -> None:
    shown = conversations.fenced(ROOT / "DEVELOPERS.md", "document")
    team = new_team(store, "Mira")
    with store.writing() as connection:
        book = import_book(connection, shown, owner=team.person)
        again = json.loads(export_book(connection, book))
        assert faults(connection) == ()
    told = json.loads(shown)
    assert {name: rows for name, rows in again["tables"].items() if rows} == told["tables"]
    assert {**again, "tables": {}} == {**told, "tables": {}}
