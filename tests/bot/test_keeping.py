"""Looking after a store: what goes wrong is told in a line, and nothing is left half done."""

from __future__ import annotations

from pathlib import Path

import pytest
from talk import Talk

from bot.keeping import DONE, FAILED, MISUSED, keep_book
from scouting_db.session import Store


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
    assert keep_book("export", store, tmp_path / "book.jsonl") == FAILED
    assert "no book of yours" in capsys.readouterr().err
    assert not (tmp_path / "book.jsonl").exists()


def test_the_book_in_use_is_what_is_exported(store: Store, tmp_path: Path) -> None:
    talk = user_of(store)
    talk.say("/add Hale")
    talk.say("hale is tall")
    first, second = tmp_path / "first.jsonl", tmp_path / "second.jsonl"
    assert keep_book("export", store, first) == DONE
    assert keep_book("import", store, first) == DONE
    talk.say("hale lobs a lot")
    assert keep_book("export", store, second) == DONE
    assert "hale lobs a lot" in second.read_text(encoding="utf-8")


@pytest.mark.parametrize("text", ["", "not json\n", '{"kind": "book"}\n', "[]\n", '{"a": 1}\n' * 3])
def test_wrong_lines_import_nothing(
    store: Store, tmp_path: Path, text: str, capsys: pytest.CaptureFixture[str]
) -> None:
    talk = user_of(store)
    talk.say("/add Hale")
    before = talk.stored()
    file = tmp_path / "wrong.jsonl"
    file.write_text(text, encoding="utf-8")
    assert keep_book("import", store, file) == FAILED
    assert capsys.readouterr().err.startswith("Nothing imported: ")
    assert talk.stored() == before


def test_a_missing_file_imports_nothing(store: Store, tmp_path: Path) -> None:
    assert keep_book("import", store, tmp_path / "missing.jsonl") == FAILED


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
