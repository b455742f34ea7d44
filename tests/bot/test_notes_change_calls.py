"""A note changes the call that it speaks of, its undo changes it back, and "why" names the note."""

from __future__ import annotations

import pytest
from talk import Talk


@pytest.fixture
def met(fresh_anywhere: Talk) -> Talk:
    """Somebody whose next opponents are two of whom nothing is noted."""
    fresh_anywhere.say("next: gell and rudd")
    fresh_anywhere.tap("add gell and rudd")
    return fresh_anywhere


@pytest.mark.parametrize(
    ("note", "asked", "call", "reason"),
    [
        ("rudd counters everything", "speed up who", "Speed up at Gell's", "Not Rudd: strong cou"),
        ("gell counters everything", "speedup gell or rudd", "Speed up at Rudd's", "Not Gell: str"),
        ("rudd loves pace", "speed up who", "Speed up at Gell's", "Not Rudd: likes pace"),
        ("rudd cant dink", "dink who", "Dink Rudd", "Rudd's dink is weak"),
        ("gell cant handle pace", "drive who", "Drive at Gell", "Gell: dislikes pace"),
        ("rudd cant reset", "drive at gell or rudd", "Drive at Rudd", "Rudd: weak reset"),
        ("rudd counters everything", "who do i drive at", "Drive at Gell", "Not Rudd: strong cou"),
        ("gell pops up dinks", "dink rudd or gell", "Dink Gell", "Gell's dink is weak"),
    ],
)
def test_note_undo_and_why(met: Talk, note: str, asked: str, call: str, reason: str) -> None:
    before = met.say(asked)
    assert reason not in before
    met.say(note)
    after = met.say(asked)
    assert after.startswith(call)
    assert f"· {reason}" in after
    name, _, words = note.partition(" ")
    assert f"{name.capitalize()}: “{words}”" in met.say("why")
    met.say("undo")
    assert met.say(asked).splitlines()[:2] == before.splitlines()[:2]


def test_what_was_only_said_not_to_be_weak_is_not_called_strong(fresh: Talk) -> None:
    fresh.say("next: gell and rudd")
    fresh.tap("add gell and rudd")
    fresh.say("gell isnt weak on his backhand dink")
    assert "Gell's backhand dink is not weak (book" in fresh.say("where do i dink gell")
    fresh.say("gell has a strong backhand dink")
    assert "Gell's backhand dink is strong (book" in fresh.say("where do i dink gell")
