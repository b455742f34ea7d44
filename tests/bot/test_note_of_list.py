"""A note told by its place in the list shown last. Wordings: our own, no source."""

from __future__ import annotations

from talk import Talk


def test_a_note_shown_goes_by_its_place(fresh: Talk) -> None:
    fresh.say("add pat olsen, lobs a lot")
    fresh.say("pat is slow")
    fresh.say("what did i note about pat")
    assert fresh.say("delete that second one") == "Taken back: “pat olsen, lobs a lot”."
    assert fresh.say("undo").startswith("Back in the book")
    fresh.say("forget what i said about pat")
    assert fresh.say("the first one") == "Taken back: “pat is slow”."
    assert not fresh.say("the first one").startswith("Taken back")


def test_none_and_undo_keep_what_we_asked_about(fresh: Talk) -> None:
    fresh.say("add pat olsen, lobs a lot")
    fresh.say("pat is slow")
    for answer in ("none", "undo", "leave them all"):
        fresh.say("forget what i said about pat")
        assert fresh.say(answer) == "Kept: no note is deleted."
    fresh.say("erase pat")
    assert fresh.say("no") == "Kept: nobody is forgotten."
    assert len(fresh.say("what did i note about pat").split("\n")) == 5
