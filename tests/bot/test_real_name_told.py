"""What somebody known by looks is really called: renamed, still found by the old name, undone."""

from __future__ import annotations

import pytest
from talk import Talk


@pytest.fixture
def met(fresh: Talk) -> Talk:
    fresh.say("next: lanky and redcap")
    fresh.tap("add lanky and redcap")
    return fresh


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("redcap is called Nigel Frost", "Redcap is now Nigel Frost."),
        ("his name isnt redcap its nigel frost", "Redcap is now Nigel Frost."),
        ("nigel frost is redcap, same bloke", "Redcap is now Nigel Frost."),
        ("so lanky is marcus", "Lanky is now Marcus."),
        ("lanky's name is marcus apparently", "Lanky is now Marcus."),
    ],
)
def test_the_book_has_the_new_name(met: Talk, text: str, told: str) -> None:
    assert met.say(text) == told
    old, _, new = told.removesuffix(".").partition(" is now ")
    assert met.say(f"{old.lower()} is a lefty") == f"Noted. {new.split()[-1]}: left-handed."


@pytest.mark.parametrize(
    "text",
    [
        "redcap is slow", "so redcap is gassed", "lanky is redcap",
        "redcap is our best target", "is redcap called Nigel Frost?",
 "redcap and Nigel Frost both lob",
    ],
)  # fmt: skip
def test_nobody_is_renamed_by_what_tells_something_else(met: Talk, text: str) -> None:
    assert "is now" not in met.say(text)


def test_two_told_by_looks_are_a_pair_till_their_names_are_known(fresh: Talk) -> None:
    told = fresh.say("next: the tall lad and red cap, 9:20, court 3, to 11")
    assert told == "No tall lad and red cap in your book yet."
    told = fresh.tap("add tall lad and red cap")
    assert told.startswith("Next: Tall Lad and Red Cap, 09:20, court 3, best of 3 to 11.\n")
    assert fresh.say("the tall lad has slow feet") == "Noted. Lad: foot speed weak."
    assert fresh.say("so the tall lad is Marcus") == "Tall Lad is now Marcus."
    assert fresh.say("the tall lad lobs a lot") == "Noted. Marcus: lob often."


def test_the_old_name_goes_with_the_undo_and_comes_back(met: Talk) -> None:
    met.say("rename lanky to marcus")
    assert met.say("lanky's real name is Marcus Webb") == "Marcus is now Marcus Webb."
    met.say("undo")
    met.say("undo")
    assert met.say("lanky is a lefty") == "Noted. Lanky: left-handed."
    assert "No marcus" in met.say("marcus lobs a lot")
