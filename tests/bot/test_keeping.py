"""Looking after a store: what goes wrong is told in a line, and nothing is left half done."""

from __future__ import annotations

import io
import sqlite3
from contextlib import closing
from pathlib import Path

import pytest
from sqlalchemy import text
from talk import Talk

from bot.keeping import DONE, FAILED, MISUSED, keep_book
from scouting_db.book_check import faults
from scouting_db.session import Store, open_store


def user_of(store: Store) -> Talk:
    """The terminal's user, whose book is looked after."""
    return Talk(store=store)


@pytest.mark.parametrize("verb", ["backup", "export", "import"])
def test_a_file_is_needed(store: Store, verb: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert keep_book(verb, store, None) == MISUSED
    assert "Name a file" in capsys.readouterr().err


def test_there_is_nothing_to_export_yet(
    store: Store, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert keep_book("export", store, tmp_path / "book.json") == FAILED
    assert "no book of yours" in capsys.readouterr().err
    assert not (tmp_path / "book.json").exists()


def test_the_book_in_use_is_what_is_exported(store: Store, tmp_path: Path) -> None:
    talk = user_of(store)
    talk.say("/add Hale")
    talk.say("hale is tall")
    first, second = tmp_path / "first.json", tmp_path / "second.json"
    assert keep_book("export", store, first) == DONE
    assert keep_book("import", store, first) == DONE
    talk.say("hale lobs a lot")
    assert keep_book("export", store, second) == DONE
    assert "hale lobs a lot" in second.read_text(encoding="utf-8")


@pytest.mark.parametrize("wrong", ["{", '{"kind": "book"}\n', '{"a": 1}\n' * 3])
def test_wrong_lines_import_nothing(
    store: Store, tmp_path: Path, wrong: str, capsys: pytest.CaptureFixture[str]
) -> None:
    talk = user_of(store)
    talk.say("/add Hale")
    before = talk.stored()
    file = tmp_path / "wrong.json"
    file.write_text(wrong, encoding="utf-8")
    assert keep_book("import", store, file) == FAILED
    assert capsys.readouterr().err.startswith("Nothing imported: ")
    assert talk.stored() == before


def test_a_missing_file_imports_nothing(store: Store, tmp_path: Path) -> None:
    assert keep_book("import", store, tmp_path / "missing.json") == FAILED


@pytest.mark.parametrize("verb", ["export", "backup"])
def test_a_folder_that_is_not_there_is_said(
    store: Store, tmp_path: Path, verb: str, capsys: pytest.CaptureFixture[str]
) -> None:
    user_of(store).say("/add Hale")
    code = keep_book(verb, store, tmp_path / "no" / "such" / "folder.out")
    assert code in (FAILED, MISUSED)
    assert capsys.readouterr().err.count("\n") == 1


def test_a_sound_store_has_no_faults(store: Store, capsys: pytest.CaptureFixture[str]) -> None:
    user_of(store).say("/add Hale")
    assert keep_book("check", store, None) == DONE
    assert capsys.readouterr().out == "No faults found.\n"


def test_players_go_to_a_table(store: Store, tmp_path: Path) -> None:
    user_of(store).say("/add Hale")
    assert keep_book("export", store, tmp_path / "players.csv") == DONE
    told = (tmp_path / "players.csv").read_text(encoding="utf-8-sig")
    assert told.splitlines() == ["Name,Nicknames,Side,Partner,Hand", "Hale,,them,,"]


@pytest.mark.parametrize(("typed", "added"), [("y\n", True), ("n\n", False), ("", False)])
def test_a_roster_is_shown_first_and_added_on_a_yes(
    store: Store,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
    typed: str,
    added: bool,
) -> None:
    file = tmp_path / "draw.csv"
    file.write_text("Player 1;Player 2\nAna Ruiz;Ben Hale\n", encoding="cp1252")
    monkeypatch.setattr("sys.stdin", io.StringIO(typed))
    assert keep_book("import", store, file) == DONE
    assert "draw.csv: 2 players, 2 new." in capsys.readouterr().out
    assert ("Ana Ruiz" in user_of(store).say("/players")) is added


def test_undo_takes_out_what_a_table_added(
    store: Store, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    file = tmp_path / "draw.csv"
    file.write_text("Name\nAna Ruiz\n", encoding="utf-8")
    monkeypatch.setattr("sys.stdin", io.StringIO("y\n"))
    keep_book("import", store, file)
    talk = user_of(store)
    talk.say("undo")
    assert "Ruiz" not in talk.say("/players")


def test_a_backup_is_of_one_moment_while_somebody_writes(database_url: str, tmp_path: Path) -> None:
    """SQLite: "Using the SQLite Online Backup API", a database in use. PostgreSQL: one
    REPEATABLE READ transaction, here as JSON documents that import again.
    """
    store = open_store(database_url)
    talk = user_of(store)
    talk.say("/add Hale")
    with store.writing() as connection:
        connection.execute(text("INSERT INTO person (name) VALUES ('not committed yet')"))
        assert keep_book("backup", store, tmp_path / "copy") == DONE
    if store.engine.dialect.name == "sqlite":
        copy = open_store(f"sqlite:///{tmp_path / 'copy'}")
        with copy.reading() as connection:
            people = set(connection.execute(text("SELECT name FROM person")).scalars())
            players = connection.execute(text("SELECT name FROM player")).scalars().all()
            assert faults(connection) == ()
        copy.close()
        assert "not committed yet" not in people
        assert players == ["Hale"]
    else:
        (document,) = (tmp_path / "copy").glob("*.json")
        assert keep_book("import", store, document) == DONE
    store.close()


@pytest.mark.parametrize(
    ("damage", "told"),
    [
        ("UPDATE entry SET voids = 77 WHERE kind = 'void'", "voids 77, not there"),
        ("UPDATE book SET version = 0", "is beyond version 0"),
        ("UPDATE book SET zone = 'Mars/Olympus'", "'Mars/Olympus' is no time zone"),
        ("UPDATE match SET state = 'announced'", "stored as only announced"),
        ("UPDATE observation SET value = 'tall'", "no trait hand that is tall"),
        ("UPDATE alembic_version SET version_num = '0001'", "database: revision 0001, expected"),
        ("DELETE FROM entry WHERE n = 1", "2 lines, the last is number 3"),
    ],
)
def test_each_fault_is_told_in_a_line(
    store: Store, capsys: pytest.CaptureFixture[str], damage: str, told: str
) -> None:
    talk = user_of(store)
    talk.say("we are Mira and Tom")
    for name in ("Okafor", "Hale"):
        talk.say(f"/add {name}")
    talk.say("okafor is a lefty")
    talk.say("next: okafor and hale")
    talk.say("we serve")
    talk.say("our point")
    assert keep_book("check", store, None) == DONE
    if "entry" in damage:
        talk.say("undo")
    with store.writing() as connection:
        connection.execute(text(damage))
    capsys.readouterr()
    assert keep_book("check", store, None) == FAILED
    lines = capsys.readouterr().out.splitlines()
    assert any(told in line for line in lines), lines


def test_a_reference_that_leads_nowhere_is_told(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """On SQLite only: PostgreSQL cannot be brought to store one."""
    file = tmp_path / "book.sqlite"
    store = open_store(f"sqlite:///{file}")
    user_of(store).say("/add Hale")
    user_of(store).say("hale is tall")
    with closing(sqlite3.connect(file)) as raw:
        raw.execute("DELETE FROM player")
        raw.commit()
    assert keep_book("check", store, None) == FAILED
    assert "its player_id is no player of ours" in capsys.readouterr().out
    store.close()


def test_a_torn_file_is_told(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """`PRAGMA integrity_check` (sqlite.org/pragma.html): an index without its rows."""
    file = tmp_path / "book.sqlite"
    store = open_store(f"sqlite:///{file}")
    user_of(store).say("/add Hale")
    with closing(sqlite3.connect(file)) as raw:
        raw.execute("PRAGMA writable_schema = ON")
        raw.execute("UPDATE sqlite_schema SET sql = replace(sql, 'name TEXT NOT NULL', 'name TEXT"
                    " NOT NULL CHECK (name <> ''Hale'')') WHERE name = 'player'")  # fmt: skip
        raw.commit()
    store.close()
    store = open_store(f"sqlite:///{file}")
    assert keep_book("check", store, None) == FAILED
    assert "CHECK constraint failed" in capsys.readouterr().out
    store.close()
