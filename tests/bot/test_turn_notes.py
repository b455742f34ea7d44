"""Notes through the whole turn: kept whole, read, corrected, taken back, settled by a name."""

from __future__ import annotations

import pytest
from talk import Talk

from bot.post import IncomingKind

SAID = "note okafor: lefty, pops up backhand dinks, slow coming forward, partner Lindqvist is quick"


def test_the_words_are_stored_whole_and_what_was_read_is_shown(demo: Talk) -> None:
    reply = demo.say(SAID)
    assert demo.notes()[0].text == SAID
    assert reply.startswith("Noted. Okafor: left-handed")
    assert "Lindqvist: foot speed strong" in reply
    assert ("hand", "left", False) in demo.claims("Okafor")
    assert ("foot_speed", "strength", False) in demo.claims("Lindqvist")


def test_undo_and_redo_are_exact(demo: Talk) -> None:
    before = demo.claims("Okafor")
    demo.say(SAID)
    after = demo.claims("Okafor")
    demo.tap("undo")
    assert demo.claims("Okafor") == before
    assert demo.notes()[0].text != SAID
    demo.tap("put it back")
    assert demo.claims("Okafor") == after
    assert demo.notes()[0].text == SAID


def test_undo_in_words_goes_back_one_by_one_and_then_says_so(fresh_anywhere: Talk) -> None:
    fresh_anywhere.say("/add Hale")
    fresh_anywhere.say("hale is tall")
    assert "hale is tall" in fresh_anywhere.say("undo")
    assert "Hale" in fresh_anywhere.say("undo")
    assert fresh_anywhere.say("undo") == "Nothing of yours to take back here."


@pytest.mark.parametrize("words", ["delete", "Delete it.", "scratch that", "undo"])
def test_a_reply_deletes_the_note_it_is_under(demo: Talk, words: str) -> None:
    demo.say("hale is tall")
    first = demo.reply_number
    demo.say("ruiz-peña poaches a lot")
    assert demo.say(words, reply_to=first).startswith("Note deleted")
    assert [one.text for one in demo.notes(1)] == ["ruiz-peña poaches a lot"]
    demo.tap("undo")
    assert "hale is tall" in [one.text for one in demo.notes(2)]


def test_a_reply_says_whose_the_note_is(demo: Talk) -> None:
    demo.say("brandt: misses short lobs, lefty")
    number = demo.reply_number
    reply = demo.say("it was castellano", reply_to=number)
    assert reply.startswith("Changed. Castellano:")
    assert ("hand", "left", False) in demo.claims("Castellano")
    assert ("hand", "left", False) not in demo.claims("Lena Brandt")
    demo.tap("undo")
    assert ("hand", "left", False) in demo.claims("Lena Brandt")


def test_a_reply_says_what_is_right_of_the_player_of_that_note(demo: Talk) -> None:
    demo.say("brandt: lefty, poaches a lot")
    number = demo.reply_number
    demo.say("castellano is tall")
    reply = demo.say("righty", reply_to=number)
    assert reply.startswith(("Changed. Brandt:", "Changed. Lena Brandt:"))
    assert ("hand", "right", False) in demo.claims("Lena Brandt")
    assert ("hand", "left", False) not in demo.claims("Lena Brandt")
    assert ("poaching", "often", False) in demo.claims("Lena Brandt")
    assert not demo.claims("Castellano") & {("hand", "right", False)}
    assert "righty" in [one.text for one in demo.notes()], "what was typed is a note as well"


def test_a_question_under_a_note_is_a_question(demo: Talk) -> None:
    demo.say("hale is tall")
    before = demo.stored()
    demo.say("where do I dink him?", reply_to=demo.reply_number)
    assert demo.heard is not None
    assert demo.heard.kind == "question"
    assert demo.stored() == before


def test_a_name_that_nobody_bears_never_deletes_a_note(demo: Talk) -> None:
    demo.say("hale is tall")
    before = demo.notes()
    reply = demo.say("no, it was Zorblatt")
    assert reply.startswith("No Zorblatt in your book yet.")
    assert demo.notes() == before
    demo.tap("add Zorblatt")
    assert ("height", "tall", False) in demo.claims("Zorblatt")
    assert ("height", "tall", False) in demo.claims("Hale"), "as an older note of the demo says"


def test_an_edit_reads_the_note_again(demo: Talk) -> None:
    demo.say("brandt: lefty", external_message_id=41)
    reply = demo.send(IncomingKind.EDIT, text="brandt: righty", external_message_id=41)
    assert "right-handed" in reply
    assert ("hand", "right", False) in demo.claims("Lena Brandt")
    assert ("hand", "left", False) not in demo.claims("Lena Brandt")
    texts = [one.text for one in demo.notes()]
    assert "brandt: lefty" in texts, "the words first typed are never lost"
    assert "brandt: righty" in texts


def test_an_edit_of_anything_else_changes_nothing(demo: Talk) -> None:
    demo.say("/players", external_message_id=42)
    before = demo.stored()
    reply = demo.send(IncomingKind.EDIT, text="/helpp", external_message_id=42)
    assert reply.startswith("I saw your edit.")
    assert demo.stored() == before


def test_an_unknown_name_keeps_the_words_and_add_attaches_them(fresh_anywhere: Talk) -> None:
    fresh_anywhere.say("note zorblatt: lefty, lobs a lot")
    assert fresh_anywhere.sent[-1].splitlines()[:2] == [
        "No zorblatt in your book yet.",
        "Your words are kept.",
    ]
    assert fresh_anywhere.notes()[0].unread
    reply = fresh_anywhere.tap("add zorblatt")
    assert reply.startswith("Noted. Zorblatt: left-handed")
    assert ("hand", "left", False) in fresh_anywhere.claims("Zorblatt")
    assert len(fresh_anywhere.notes()) == 1, "the stored note was read, not stored again"
    assert not fresh_anywhere.notes()[0].unread


def test_a_note_of_an_unknown_name_needs_no_command_word(fresh_anywhere: Talk) -> None:
    reply = fresh_anywhere.say("zorblatt: lefty")
    assert "Your words are kept." in reply
    assert fresh_anywhere.notes()[0].text == "zorblatt: lefty"


def test_one_tap_adds_everybody_unknown_in_a_note(fresh_anywhere: Talk) -> None:
    reply = fresh_anywhere.say("note zorblatt: lefty. Quexley: poaches a lot")
    assert "No zorblatt and Quexley in your book yet." in reply
    fresh_anywhere.tap("add zorblatt and Quexley")
    assert ("hand", "left", False) in fresh_anywhere.claims("Zorblatt")
    assert ("poaching", "often", False) in fresh_anywhere.claims("Quexley")


def test_alike_names_are_asked_about_and_a_tap_attaches(demo: Talk) -> None:
    reply = demo.say("note ana: lobs a lot")
    assert reply == "Which ana?"
    assert {"Ana Ruiz", "Anna Ruis", "Ana Ruiz-Peña"} <= {one.label for one in demo.buttons}
    assert ("lob", "often", False) not in demo.claims("Anna Ruis")
    demo.tap("Anna Ruis")
    assert ("lob", "often", False) in demo.claims("Anna Ruis")
    assert demo.notes()[0].text == "note ana: lobs a lot"


def test_hearsay_by_forward_counts_less_and_says_so(demo: Talk) -> None:
    reply = demo.say("brandt: lefty", forwarded=True)
    assert "counts less" in reply
    assert demo.notes()[0].observations[0].seen == "hearsay"


def test_a_note_about_nobody_keeps_the_words_and_asks_whose(fresh_anywhere: Talk) -> None:
    fresh_anywhere.say("/add Hale")
    fresh_anywhere.say("undo")
    reply = fresh_anywhere.say("note: lobs a lot, lefty")
    assert "kept" in reply
    assert fresh_anywhere.notes()[0].text == "note: lobs a lot, lefty"
    assert fresh_anywhere.notes()[0].observations == ()


def test_a_reply_with_a_name_gives_a_note_about_nobody_its_player(demo: Talk) -> None:
    demo.say("won 11-2 11-3")
    demo.say("note: lobs a lot, lefty")
    assert demo.notes()[0].observations == ()
    reply = demo.say("castellano", reply_to=demo.reply_number)
    assert "Castellano" in reply
    assert ("lob", "often", False) in demo.claims("Castellano")


def test_injuries_are_handed_back_and_not_stored(demo: Talk) -> None:
    before = demo.stored()
    reply = demo.say("note okafor has a bad knee")
    assert "note okafor has a bad knee" in reply
    assert demo.stored() == before


def test_words_about_pain_are_handed_back_with_a_caution(demo: Talk) -> None:
    # Usual caution, from memory: pain that is sharp, new or getting worse ends play.
    lines = demo.say("my calf hurts").splitlines()
    assert "my calf hurts" in lines
    assert lines[0] == "Off it till medical staff look: no running on it."
    assert "Not medical advice: medical staff decide." in lines


def test_a_note_that_is_stored_brings_no_caution_about_pain(demo: Talk) -> None:
    assert "medical" not in demo.say("okafor is slow coming forward")


def test_a_condition_that_the_trait_says_already_is_not_said_twice(demo: Talk) -> None:
    reply = demo.say("brandt is slow coming forward")
    assert "speed coming forward weak" in reply
    assert "moving forward" not in reply


@pytest.mark.parametrize(
    ("said", "first"),
    [
        ("lindq prolly 2h bh", "Noted. Lindqvist: two-handed backhand."),
        ("maybe lindqvist lobs a lot", "Noted. Lindqvist: lob often."),
        ("i think okafor is slow", "Noted. Okafor: foot speed weak."),
    ],
)
def test_a_note_that_hedges_is_told_to_count_less(demo: Talk, said: str, first: str) -> None:
    assert demo.say(said).splitlines()[:2] == [first, "Not for sure: counts less."]


@pytest.mark.parametrize("said", ["okafor is slow", "okafor is a bit slow", "heard okafor is slow"])
def test_a_note_that_does_not_hedge_is_not(demo: Talk, said: str) -> None:
    assert "Not for sure" not in demo.say(said)
