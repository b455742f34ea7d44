"""What would change the last call, and whether it is of the book's notes. Our own wordings."""

from __future__ import annotations

from talk import Talk


def test_a_call_is_questioned_as_it_stands_and_nothing_is_stored(fresh: Talk) -> None:
    for said in (
        "we are devi and soren",
        "add ike okoye and tamsin brandt",
        "next: ike okoye and tamsin brandt",
        "brandt's bh dink is weak",
    ):
        fresh.say(said)
    stored = fresh.stored()
    call = fresh.say("where do i dink brandt").split("\n")[0]
    for said in ("is that from my notes or a default?", "what is that based on"):
        told = fresh.say(said)
        assert told.startswith(f"{call}\n1 of 3 reasons from what you told"), said
    for said in ("what would change ur mind", "what would flip that", "when would that change"):
        told = fresh.say(said)
        assert told.startswith(f"{call}\nWhat would change it:"), said
        assert "Without your notes: Dink Brandt: middle" in told
    at_score = fresh.say("should we take timeout at 3-7-1 them").split("\n")[:2]
    assert fresh.say("is that a default").split("\n")[:3:2] == at_score
    assert "If we have a change: Take it now" in fresh.say("what would change your mind")
    assert "medical staff" in fresh.say("my ankle hurts, can i play on")
    assert "medical staff decide" in fresh.say("what would change your mind")
    assert fresh.stored() == stored
    assert "What would change it" not in fresh.say("what would you change in this match")
