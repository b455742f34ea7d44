"""Files through a chat: a preview first, a tap that does it, undo; and the book as a file."""

from __future__ import annotations

import csv
import io
import json

import pytest
from talk import Talk

from bot.chat.file import File
from bot.post import IncomingKind
from scouting_db.csv_reading import read_table
from scouting_db.roster_reading import read_roster

DRAW = "Name;Hand;Partner\nAna Ruiz;L;Ben Hale\nChidi Okafor;;Sven Lindqvist\n"


def give(someone: Talk, text: str | None, name: str = "draw.csv") -> str:
    content = None if text is None else text.encode()
    return someone.send(IncomingKind.FILE, file=File(name=name, content=content))


def test_a_roster_is_previewed_and_nothing_is_written_before_the_tap(fresh_anywhere: Talk) -> None:
    fresh_anywhere.say("hello")
    before = fresh_anywhere.stored()
    told = give(fresh_anywhere, DRAW)
    assert told.splitlines()[0] == "draw.csv: 4 players, 4 new."
    assert "Pairs to add: 2." in told
    assert "Hands to note: 1." in told
    assert fresh_anywhere.stored() == before


def test_the_tap_adds_them_and_undo_takes_them_out(fresh_anywhere: Talk) -> None:
    give(fresh_anywhere, DRAW)
    assert fresh_anywhere.tap("add them") == "Added 4 players, 2 pairs, 1 hands."
    assert "Ana Ruiz" in fresh_anywhere.say("/players")
    assert fresh_anywhere.claims("Ruiz") == {("hand", "left", False)}
    assert "4 players" in fresh_anywhere.say("undo")
    assert "Ana Ruiz" not in fresh_anywhere.say("/players")
    assert fresh_anywhere.notes() == ()
    fresh_anywhere.say("redo")
    assert fresh_anywhere.claims("Ruiz") == {("hand", "left", False)}


def test_who_is_known_is_not_written_twice(fresh_anywhere: Talk) -> None:
    fresh_anywhere.say("/add Ana Ruiz")
    assert "4 players, 3 new" in give(fresh_anywhere, DRAW)
    fresh_anywhere.tap("add them")
    assert "All of it is in your book already." in give(fresh_anywhere, DRAW)
    assert fresh_anywhere.buttons == []


def test_a_second_press_adds_nothing(fresh_anywhere: Talk) -> None:
    give(fresh_anywhere, DRAW)
    payload = fresh_anywhere.button("add them").payload
    fresh_anywhere.press(payload)
    before = fresh_anywhere.stored()
    assert fresh_anywhere.press(payload) == "All of it is in your book already."
    assert fresh_anywhere.stored() == before


def test_a_forged_or_foreign_tap_does_nothing(fresh_anywhere: Talk) -> None:
    give(fresh_anywhere, DRAW)
    payload = fresh_anywhere.button("add them").payload
    stranger = fresh_anywhere.of("Zed", chat="elsewhere")
    stranger.say("hello")
    before = fresh_anywhere.stored()
    assert "earlier time" in stranger.press(payload)
    assert "earlier time" in fresh_anywhere.press("1:import:999999")
    assert fresh_anywhere.stored() == before


@pytest.mark.parametrize(
    ("text", "said"),
    [
        (None, "I can't take that file"),
        ("", "I find no names"),
        ("{", "Nothing imported: the file is not JSON"),
        ('{"seamwise": 99}', "Nothing imported: the file is no export"),
    ],
)
def test_a_file_of_no_use_is_told_why(fresh_anywhere: Talk, text: str | None, said: str) -> None:
    assert give(fresh_anywhere, text).startswith(said)


def test_a_book_leaves_as_a_file_and_comes_back_as_one_of_its_own(demo: Talk) -> None:
    demo.say("export")
    file = demo.last[0].file
    assert file is not None
    assert file.content is not None
    assert file.name.endswith(".json")
    assert json.loads(file.content)["seamwise"] == 2
    players = len(demo.say("/players"))
    told = give(demo, file.content.decode(), file.name)
    assert "Open it here?" in told
    demo.tap("open it here")
    demo.say("/add Nils Overstone")
    assert len(demo.say("/players")) > players
    demo.say("undo")
    assert "opening that book" in demo.say("undo")
    assert len(demo.say("/players")) == players


def test_players_leave_as_a_table_that_is_read_again(demo: Talk) -> None:
    demo.say("export players")
    file = demo.last[0].file
    assert file is not None
    assert file.content is not None
    text = file.content.decode("utf-8-sig")
    with demo.book() as book:
        people = [row.name for row in book.players()]
    assert [row["Name"] for row in csv.DictReader(io.StringIO(text))] == people
    found = read_roster(read_table(text))
    assert {one.name for one in found.entrants} == {*people}
    assert "All of it is in your book already." in give(demo, text)


def test_a_name_is_no_formula_to_a_spreadsheet(fresh_anywhere: Talk) -> None:
    """OWASP, "CSV Injection": a cell that begins with =, +, - or @ is run."""
    fresh_anywhere.say("/add =HYPERLINK(1)")
    fresh_anywhere.say("export players")
    file = fresh_anywhere.last[0].file
    assert file is not None
    assert file.content is not None
    rows = list(csv.reader(io.StringIO(file.content.decode("utf-8-sig"))))
    assert all(not cell.startswith(("=", "+", "-", "@")) for row in rows for cell in row)
