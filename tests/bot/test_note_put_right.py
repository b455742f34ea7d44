"""A note put right by the next message: what is said instead counts, and "Changed" is true.

How people take back what they said is from memory.
"""

from __future__ import annotations

import pytest
from talk import Talk


def claims_after(talk: Talk, note: str, said: str) -> str:
    assert talk.say(note).startswith("Noted.")
    return talk.say(said)


@pytest.mark.parametrize(
    ("note", "said", "changed"),
    [
        ("okafor is a lefty", "no he is right handed", "Okafor: right-handed."),
        ("okafor is a lefty", "actually he is right handed", "Okafor: right-handed."),
        ("okafor is a lefty", "no right handed", "Okafor: right-handed."),
        ("okafor is a lefty", "no okafor is a righty", "Okafor: right-handed."),
        ("okafor is fast", "no he is slow", "Okafor: foot speed weak."),
        ("okafor is fast", "sorry slow", "Okafor: foot speed weak."),
        ("okafor is fast", "i meant slow", "Okafor: foot speed weak."),
        ("okafor is fast", "no not fast he is slow", "Okafor: foot speed weak."),
        ("okafor is fast", "not fast, slow", "Okafor: foot speed weak."),
        ("okafor is fast", "that was wrong he is slow", "Okafor: foot speed weak."),
        ("okafor lobs a lot", "no he never lobs", "Okafor: lob rarely."),
        ("okafor has a weak backhand dink", "sorry strong", "Okafor: backhand dink strong."),
        (
            "okafor has a weak backhand dink",
            "no wait he is good at it",
            "Okafor: backhand dink strong.",
        ),
        ("okafor has a weak backhand dink", "no its his forehand", "Okafor: forehand dink weak."),
        ("okafor has a weak backhand dink", "i meant forehand", "Okafor: forehand dink weak."),
        (
            "okafor has a weak backhand dink",
            "forget what i said about his backhand, it was his forehand that breaks down",
            "Okafor: forehand dink weak.",
        ),
        ("okafor isnt a righty", "no hes righty", "Okafor: right-handed."),
        ("okafor poaches a lot", "no lindqvist poaches a lot", "Lindqvist: poaching often."),
        ("okafor poaches a lot", "lindqvist poaches not okafor", "Lindqvist: poaching often."),
    ],
)
def test_what_is_said_instead_counts(demo: Talk, note: str, said: str, changed: str) -> None:
    assert claims_after(demo, note, said) == f"Changed. {changed}"
    before = demo.tap("undo")
    assert before.startswith("Taken back: how I read that note.")


def test_the_corrected_hand_is_the_one_reported(fresh_anywhere: Talk) -> None:
    fresh_anywhere.say("next: rosalind tack and benny oyelaran")
    fresh_anywhere.press(fresh_anywhere.buttons[0].payload)
    fresh_anywhere.say("rosalind is a lefty")
    fresh_anywhere.say("no she is right handed")
    assert "lefty" not in fresh_anywhere.say("report tack").split("“")[0]


@pytest.mark.parametrize(
    ("said", "noted"),
    [
        ("no his third shot drop is good", "Noted. Okafor: third-shot drop strong."),
        ("wait he poaches a lot too", "Noted. Okafor: poaching often."),
    ],
)
def test_another_trait_is_a_note_of_its_own(demo: Talk, said: str, noted: str) -> None:
    assert claims_after(demo, "okafor is fast", said).startswith(noted)
    assert ("foot_speed", "strength", False) in demo.claims("Okafor")


def test_what_is_not_understood_says_what_still_stands(demo: Talk) -> None:
    reply = claims_after(demo, "okafor is fast", "no he wears two different shoes every time")
    assert "Changed" not in reply
    assert "Still noted: Okafor: foot speed strong." in reply


@pytest.mark.parametrize("said", ["no he isn't", "no he is not", "not true", "that's not right"])
def test_what_is_not_so_is_taken_back(demo: Talk, said: str) -> None:
    assert claims_after(demo, "okafor hates lobs", said).startswith("Note deleted.")
    demo.tap("undo")
    assert len(demo.notes(1)) == 1


@pytest.mark.parametrize(
    "said", ["ok good", "no thanks", "no way", "no their point", "no what does he do"]
)
def test_other_messages_behind_a_note_change_nothing_in_it(demo: Talk, said: str) -> None:
    before = demo.claims("Okafor")
    demo.say("okafor is fast")
    noted = demo.claims("Okafor")
    assert "Changed" not in demo.say(said)
    assert demo.claims("Okafor") == noted != before


def test_it_is_of_the_message_before_only(demo: Talk) -> None:
    demo.say("okafor is fast")
    demo.say("where do i serve lindqvist")
    assert "Changed" not in demo.say("no he is slow")


@pytest.mark.parametrize("said", ["no him", "no, the other one"])
def test_the_other_one_is_meant_where_nothing_else_would_change(demo: Talk, said: str) -> None:
    assert claims_after(demo, "okafor is slow", said) == "Changed. Lindqvist: foot speed weak."


def test_a_change_of_a_note_comes_back_after_undo(demo: Talk) -> None:
    demo.say("okafor is fast")
    demo.say("no he is slow")
    slow = demo.claims("Okafor")
    assert demo.say("undo") == "Taken back: how I read that note."
    assert demo.say("undo") == "Taken back: “okafor is fast”."
    assert demo.say("put it back") == "Put back: “okafor is fast”."
    assert demo.say("put it back") == "Put back: how I read that note."
    assert demo.claims("Okafor") == slow


def test_a_reading_overtaken_since_does_not_come_back(demo: Talk) -> None:
    demo.say("okafor is fast")
    demo.say("no he is slow")
    demo.say("undo")
    again = demo.button("put it back").payload
    demo.say("undo")
    stored = demo.claims("Okafor")
    demo.press(again)
    assert demo.claims("Okafor") == stored


@pytest.mark.parametrize(
    ("note", "said", "changed"),
    [
        ("okafor poaches", "no he doesnt poach at all that was lindqvist", "Lindqvist: poaching"),
        ("okafor poaches", "he never poaches that was lindqvist", "Lindqvist: poaching often."),
        ("okafor poaches", "no he doesnt its lindqvist", "Lindqvist: poaching often."),
        ("okafor is slow", "sorry he isnt slow, that is really lindqvist", "Lindqvist: foot speed"),
        ("okafor is slow", "nah okafor isnt slow, i meant lindqvist", "Lindqvist: foot speed"),
        ("okafor is slow", "he isnt slow that was lindqvist i was on about", "Lindqvist: foot"),
        ("okafor is slow", "nah thats lindqvist i was thinking of", "Lindqvist: foot speed weak."),
        ("okafor is slow", "i mixed them up", "Lindqvist: foot speed weak."),
        ("okafor is slow", "i got them the wrong way round", "Lindqvist: foot speed weak."),
        ("okafor is slow", "i mixed up okafor and lindqvist", "Lindqvist: foot speed weak."),
        (
            "okafor is slow",
            "swap okafor and lindqvist i mixed them up lindqvist is slow",
            "Lindqvist: foot speed weak.",
        ),
    ],
)
def test_a_note_moves_to_whom_it_really_was_of(
    demo: Talk, note: str, said: str, changed: str
) -> None:
    noted = demo.claims("Okafor")
    assert claims_after(demo, note, said).startswith(f"Changed. {changed}")
    assert demo.claims("Okafor") == noted
    demo.tap("undo")


def test_what_another_note_told_of_moves_nothing(demo: Talk) -> None:
    lobs = {one for one in demo.claims("Lindqvist") if one[0] == "lob"}
    reply = claims_after(demo, "okafor poaches", "no he doesnt lob at all that was lindqvist")
    assert "Changed" not in reply
    assert ("poaching", "often", False) in demo.claims("Okafor")
    assert {one for one in demo.claims("Lindqvist") if one[0] == "lob"} == lobs


@pytest.mark.parametrize(
    "said", ["was that lindqvist?", "he didnt lob that was a drive", "i mixed up the score"]
)
def test_what_names_no_other_moves_no_note(demo: Talk, said: str) -> None:
    claims_after(demo, "okafor is slow", said)
    assert ("foot_speed", "weakness", False) in demo.claims("Okafor")


@pytest.mark.parametrize("said", ["no, it was lindqvist", "not okafor, it was lindqvist"])
def test_a_bare_no_moves_it_as_ever(demo: Talk, said: str) -> None:
    assert claims_after(demo, "okafor is NOT slow", said).startswith("Changed. Lindqvist: foot")


@pytest.mark.parametrize(
    ("said", "changed"),
    [
        (
            "No that was Lindqvist who is slow to the left, not Okafor",
            "Lindqvist: moving left weak; Okafor: moving left not weak.",
        ),
        (
            "sorry it is lindqvist that is slow to the left, not okafor",
            "Lindqvist: moving left weak; Okafor: moving left not weak.",
        ),
        ("not okafor, lindqvist is slow to the left", "Lindqvist: moving left weak."),
        (
            "no it was not okafor who is slow to the left, it was lindqvist",
            "Lindqvist: moving left weak.",
        ),
        (
            "it wasn't okafor who is slow to the left, that was lindqvist",
            "Lindqvist: moving left weak.",
        ),
    ],
)
def test_who_it_was_instead_is_told_whole(demo: Talk, said: str, changed: str) -> None:
    assert claims_after(demo, "okafor is slow to the left", said) == f"Changed. {changed}"
    assert ("moves_left", "weakness", False) in demo.claims("Lindqvist")
    assert ("moves_left", "weakness", False) not in demo.claims("Okafor")


@pytest.mark.parametrize(
    "asked",
    [
        "that was lindqvist, who is next",
        "not lindqvist, who serves first?",
        "it was okafor who should i serve",
    ],
)
def test_a_name_pointed_at_leaves_a_question_one(demo: Talk, asked: str) -> None:
    before = demo.claims("Okafor") | demo.claims("Lindqvist")
    assert "Changed" not in claims_after(demo, "okafor is slow to the left", asked)
    added = (demo.claims("Okafor") | demo.claims("Lindqvist")) - before
    assert added <= {("moves_left", "weakness", False)}


@pytest.mark.parametrize(
    "said",
    [
        "he dealt w it fine last 3 times tho",
        "but he handled them well today",
        "he copes with it ok though",
    ],
)
def test_what_is_seen_against_a_weakness_counts_beside_it(demo: Talk, said: str) -> None:
    reply = claims_after(demo, "okafor is bad at resets", said)
    assert reply.startswith("Noted. Okafor: reset not weak.")
    assert {("reset", "weakness", False), ("reset", "weakness", True)} <= demo.claims("Okafor")


def test_who_dealt_with_it_behind_praise_is_no_news(demo: Talk) -> None:
    before = claims_after(demo, "okafor has a great reset", "he dealt with it fine though")
    assert "not" not in before.split(".")[0]


def test_that_it_is_so_after_all_takes_a_denial_back(demo: Talk) -> None:
    demo.say("okafor is not a lefty")
    assert demo.say("no he is") == "Note deleted."


def test_what_never_was_and_now_was_is_noted_no_longer(demo: Talk) -> None:
    for said in (
        "actually she lobbed 2 times just now",
        "wait she just lobbed",
        "oh she lobbed twice",
    ):
        demo.say("castellano never lobs")
        told = demo.say(said)
        is_told = said.startswith("oh") or told.startswith(
            "No longer noted: Castellano: lob rarely."
        )
        assert is_told, said
        assert not told.startswith("Changed"), said
    for said in ("actually she did", "oh wait she does"):
        demo.say("castellano never lobs")
        assert demo.say(said) == "Note deleted.", said
    demo.say("castellano is slow")
    assert demo.say("actually she is").startswith("I have it so: Castellano: foot speed weak.")
    assert "Changed" not in demo.say("actually she hit it long just now")


def test_one_claim_of_a_note_on_both_is_given_to_the_other(demo: Talk) -> None:
    demo.say("okafor is tired and lindqvist has a bad backhand")
    assert demo.say("no i think it's lindqvist that is tired").startswith("Changed.")
    assert not [one for one in demo.claims("Okafor") if one[0] == "fitness"]
    demo.say("hale is slow and ruiz lobs a lot")
    demo.say("no, ruiz is slow too")
    assert [one for one in demo.claims("Hale") if one[0] == "foot_speed"]
