"""Two answers to one message that ask for the same newcomer: one tap, and nothing lost by it."""

from __future__ import annotations

from talk import Talk


def test_one_tap_adds_whom_a_note_and_a_question_name(fresh: Talk) -> None:
    fresh.say("we are marisol and benedikt")
    fresh.say("what if it hits my paddle hand")
    fresh.say("and gretel has slow feet")
    told = fresh.tap("add gretel")
    assert "Noted. Gretel: foot speed weak." in told
