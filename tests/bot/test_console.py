"""The `seamwise` command: as a real process, and in this one where that makes no difference."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from importlib.metadata import version
from pathlib import Path

import pytest
from command_here import command_here

HEAVY = ["matplotlib", "telegram", "sklearn", "scipy", "aiohttp", "psycopg"]
"""What an answer in the terminal has no use for."""


def seamwise(
    *arguments: str, typed: str | bytes = "", folder: Path | None = None
) -> subprocess.CompletedProcess[str]:
    """Run `python -m bot` to its end; decoded as UTF-8."""
    settings = {key: value for key, value in os.environ.items() if not key.startswith("SEAMWISE")}
    if folder is not None:
        settings["XDG_DATA_HOME"] = str(folder)
    done = subprocess.run(
        [sys.executable, "-W", "error", "-m", "bot", *arguments],
        input=typed if isinstance(typed, bytes) else typed.encode(),
        capture_output=True,
        env=settings,
        timeout=60,
        check=False,
    )
    return subprocess.CompletedProcess(
        done.args, done.returncode, done.stdout.decode(), done.stderr.decode()
    )


def test_the_version() -> None:
    done = seamwise("--version")
    assert (done.returncode, done.stdout) == (0, f"seamwise {version('seamwise')}\n")


def test_nothing_asked_is_said_in_words_by_a_process_too() -> None:
    done = seamwise("ask")
    assert done.returncode == 2
    assert "Ask something" in done.stderr
    assert "Traceback" not in done.stderr


def test_a_question_asked_once() -> None:
    done = seamwise("ask", "who covers the middle")
    assert (done.returncode, done.stderr) == (0, "")
    lines = done.stdout.splitlines()
    assert 0 < len(lines[0]) <= 60
    assert "[1]" in done.stdout


def test_talking_until_the_end_of_input() -> None:
    done = seamwise(typed="who covers the middle\n\nhale is tall\n1\n")
    assert (done.returncode, done.stderr) == (0, "")
    assert "Noted. Hale: tall." in done.stdout
    assert "Taken back: “hale is tall”." in done.stdout


def test_json_lines() -> None:
    done = seamwise("ask", "--json", typed="next: ruiz and hale, to 11\n6-4-2\n1\nour point\n")
    assert (done.returncode, done.stderr) == (0, "")
    answered = [json.loads(line) for line in done.stdout.splitlines()]
    assert [one["kind"] for one in answered] == ["match", "score", "score", "rally"]
    assert answered[-1]["reply"].startswith("7-4-2")


def test_bytes_that_are_no_text_do_not_end_it() -> None:
    done = seamwise("ask", "--json", typed=b"hale is tall \xff\xfe\nwho covers the middle\n")
    assert (done.returncode, done.stderr) == (0, "")
    assert len(done.stdout.splitlines()) == 2


def test_a_reader_that_leaves_early_is_no_traceback() -> None:
    """`seamwise ask --json | head -1`."""
    command = (
        f"yes 'who covers the middle' | head -200 | {sys.executable} -m bot ask --json | head -1"
    )
    done = subprocess.run(
        ["bash", "-c", command], capture_output=True, timeout=60, check=False, text=True
    )
    assert json.loads(done.stdout)["kind"] == "question"
    assert "Traceback" not in done.stderr


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (["ask"], "Ask something"),
        (["--book", "mysql://x/y"], "Only sqlite and postgresql"),
        (["--book", "/proc/none/all.sqlite"], "/proc/none"),
        (["telegram"], "SEAMWISE_TOKEN"),
    ],
)
def test_what_cannot_be_done_is_said_in_words(
    arguments: list[str], said: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.delenv("SEAMWISE_TOKEN", raising=False)
    done = command_here(*arguments)
    assert done.returncode == 2
    assert said in done.stderr
    assert "Traceback" not in done.stderr


def test_a_book_of_ones_own_is_kept(tmp_path: Path) -> None:
    book = str(tmp_path / "my.sqlite")
    command_here("--book", book, typed="/add Hale\nhale is tall\n")
    assert "hale is tall" in command_here("ask", "--book", book, "show notes on hale").stdout


def test_a_book_goes_out_and_comes_in_again(tmp_path: Path) -> None:
    one, two = str(tmp_path / "one.sqlite"), str(tmp_path / "two.sqlite")
    out, again = tmp_path / "book.json", tmp_path / "again.json"
    command_here("--book", one, typed="/add Hale\nhale is tall\nwe are Mira and Tom\n")
    assert command_here("book", "export", str(out), "--book", one).returncode == 0
    assert command_here("book", "import", str(out), "--book", two).returncode == 0
    assert command_here("book", "export", str(again), "--book", two).returncode == 0
    said = json.loads(out.read_text(encoding="utf-8"))
    back = json.loads(again.read_text(encoding="utf-8"))
    assert said == back
    assert "hale is tall" in command_here("ask", "--book", two, "show notes on hale").stdout


def test_a_backup_is_a_whole_book(tmp_path: Path) -> None:
    book, copy = str(tmp_path / "my.sqlite"), tmp_path / "copy.sqlite"
    command_here("--book", book, typed="/add Hale\nhale is tall\n")
    done = command_here("book", "backup", str(copy), "--book", book)
    assert done.returncode == 0
    assert "hale is tall" in command_here("ask", "--book", str(copy), "show notes on hale").stdout
    assert command_here("book", "check", "--book", str(copy)).stdout == "No faults found.\n"


def test_nothing_is_written_over(tmp_path: Path) -> None:
    book, copy = str(tmp_path / "my.sqlite"), tmp_path / "copy.sqlite"
    command_here("--book", book, typed="/add Hale\n")
    copy.write_text("precious", encoding="utf-8")
    for verb in ("backup", "export"):
        done = command_here("book", verb, str(copy), "--book", book)
        assert done.returncode == 2
        assert "exists already" in done.stderr
    assert copy.read_text(encoding="utf-8") == "precious"


def test_the_terminal_loads_only_what_it_uses() -> None:
    script = (
        "import sys; from bot.__main__ import main; before = set(sys.modules);"
        "code = main(['ask', 'who covers the middle']);"
        f"print([one for one in {HEAVY!r} if one in sys.modules], code, 'alembic' in before)"
    )
    done = subprocess.run(
        [sys.executable, "-c", script], capture_output=True, text=True, timeout=60, check=True
    )
    assert done.stdout.splitlines()[-1] == "[] 0 False"
