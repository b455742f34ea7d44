"""The demo book: its notes are kept read, and read so still."""

from __future__ import annotations

from demo_notes import KEPT, read_anew
from talk import SATURDAY

from bot.demo_book import demo_store
from bot.demo_book.note_readings import read_now
from scouting_db.session import Store
from scouting_db.tables import observation


def observed(store: Store) -> list[tuple[object, ...]]:
    with store.reading() as connection:
        return [tuple(row) for row in connection.execute(observation.select())]


def test_the_kept_readings_are_what_the_reader_says_today() -> None:
    """After a change of a note, the lexicon or a model: `python tests/support/demo_notes.py`."""
    assert KEPT.read_text(encoding="utf-8") == read_anew()


def test_a_book_of_kept_readings_holds_what_reading_would_have_stored() -> None:
    kept, read = demo_store(now=SATURDAY), demo_store(now=SATURDAY, read=read_now)
    assert observed(kept) == observed(read)
    assert observed(kept)
    kept.close()
    read.close()
