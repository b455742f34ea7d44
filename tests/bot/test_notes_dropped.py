"""Notes taken back by what they were about, pairs with their undo, and pools beside a match.

The wordings are our own: common practice, no source.
"""

from __future__ import annotations

import pytest
from talk import Talk


def test_what_one_note_says_goes_with_an_undo(demo: Talk) -> None:
    demo.say("hale is patient")
    assert demo.say("forget that hale is patient") == "Taken back: “hale is patient”."
    assert demo.tap("undo").startswith("Back in the book: “hale is patient”.")
    assert "hale is patient" in demo.say("show notes on hale")


@pytest.mark.parametrize(
    "text",
    [
        "forget what i said about hale",
        "delete my note on hale",
        "scratch what i said about hale",
        "thats wrong about hale",
        "ignore my notes on hale",
    ],
)
def test_of_several_notes_each_has_its_button(demo: Talk, text: str) -> None:
    before = demo.say("show notes on hale")
    assert demo.say(text).splitlines()[0] == "Which note on Hale goes?"
    assert demo.say("show notes on hale") == before
    demo.say(text)
    assert demo.tap("delete 1") == "Note deleted."
    assert demo.say("show notes on hale") != before


def test_to_delete_a_note_is_no_note(demo: Talk) -> None:
    before = len(demo.notes())
    assert demo.say("delete the hale note").startswith("Which note on Hale goes?")
    assert len(demo.notes()) == before


def test_of_the_one_note_that_says_all_of_it_that_part_goes(demo: Talk) -> None:
    said = demo.say("please remove the hale slow feet note")
    assert said.startswith("Taken back: “slow feet”.")


@pytest.mark.parametrize(
    "text",
    [
        "forget that hale is slow",
        "delete that hale has slow feet",
        "forget what i said about hale being slow",
    ],
)
@pytest.mark.parametrize("noted", ["brandt has slow feet. hale doesn't", "hale isn't slow"])
def test_a_note_of_the_contrary_stays_and_nothing_new_is_noted(
    fresh: Talk, noted: str, text: str
) -> None:
    fresh.say("new opponent ben hale")
    fresh.say("new opponent lena brandt")
    fresh.say(noted)
    kept = fresh.notes(), fresh.claims("Hale"), fresh.claims("Brandt")
    assert fresh.say(text).startswith("No note on Hale says that.")
    assert (fresh.notes(), fresh.claims("Hale"), fresh.claims("Brandt")) == kept


@pytest.mark.parametrize(
    "text", ["forget that both hands thing", "forget the both hands thing about hale"]
)
def test_a_note_that_shares_a_word_is_not_the_one_meant(fresh: Talk, text: str) -> None:
    fresh.say("new opponent ben hale")
    fresh.say("hale single hand bh")
    assert fresh.say(text).startswith("No note o")
    fresh.say("hale plays with both hands")
    assert fresh.say(text) == "Taken back: “hale plays with both hands”."


def test_one_of_somebody_who_is_not_in_the_book_is_no_note(demo: Talk) -> None:
    before = len(demo.notes())
    assert demo.say("delete the backhand one about frank") == "No frank in your book yet."
    assert [one.label for one in demo.buttons] == ["add frank"]
    assert len(demo.notes()) == before


def test_one_about_somebody_is_looked_for(demo: Talk) -> None:
    said = demo.say("delete the backhand one about okafor")
    assert said.splitlines()[0] == "Which note on Okafor goes?"


def test_of_a_note_that_says_more_the_rest_stays(demo: Talk) -> None:
    before = demo.claims("Okafor")
    reply = demo.say("forget that okafor jams").splitlines()
    assert reply[0] == "Taken back: “hates balls at the body”."
    assert reply[1].startswith("Kept: “")
    assert before - demo.claims("Okafor") == {("body_jam", "weakness", False)}
    demo.tap("undo")
    assert demo.claims("Okafor") == before


TWO_TOLD = "brandt lobs a lot when pulled wide, castellano poaches alot and he cheats on line calls"


@pytest.mark.parametrize(
    ("text", "gone", "left"),
    [
        (
            "forget what i said about castellano cheating",
            "he cheats on line calls",
            "brandt lobs a lot when pulled wide, castellano poaches alot",
        ),
        (
            "forget the cheating part about castellano",
            "he cheats on line calls",
            "brandt lobs a lot when pulled wide, castellano poaches alot",
        ),
        (
            "scratch what i said about castellano",
            "castellano poaches alot, he cheats on line calls",
            "brandt lobs a lot when pulled wide",
        ),
        (
            "delete the note about brandt lobbing",
            "brandt lobs a lot when pulled wide",
            "castellano poaches alot, he cheats on line calls",
        ),
    ],
)
def test_only_what_is_asked_goes(fresh_anywhere: Talk, text: str, gone: str, left: str) -> None:
    fresh_anywhere.say("next: lena brandt and joao castellano")
    fresh_anywhere.press(fresh_anywhere.buttons[0].payload)
    fresh_anywhere.say(TWO_TOLD)
    told = fresh_anywhere.say(text)
    assert fresh_anywhere.notes(1)[0].text == left
    assert told.startswith(f"Taken back: “{gone[:20]}")
    assert fresh_anywhere.tap("undo").startswith(f"Back in the book: “{gone[:20]}")
    assert fresh_anywhere.notes(1)[0].text == TWO_TOLD
    assert fresh_anywhere.tap("put it back").startswith(f"Out of the book again: “{gone[:20]}")
    assert fresh_anywhere.notes(1)[0].text == left


def test_what_stays_says_what_it_said(fresh_anywhere: Talk) -> None:
    fresh_anywhere.say("next: lena brandt and joao castellano")
    fresh_anywhere.press(fresh_anywhere.buttons[0].payload)
    fresh_anywhere.say(TWO_TOLD)
    before = fresh_anywhere.claims("Brandt")
    fresh_anywhere.say("forget what i said about castellano cheating")
    assert fresh_anywhere.claims("Brandt") == before
    assert ("poaching", "often", False) in fresh_anywhere.claims("Castellano")


def test_what_no_note_says_takes_nothing_back(fresh_anywhere: Talk) -> None:
    fresh_anywhere.say("next: lena brandt and joao castellano")
    fresh_anywhere.press(fresh_anywhere.buttons[0].payload)
    fresh_anywhere.say(TWO_TOLD)
    assert fresh_anywhere.say("forget what i said about brandt drinking").startswith("No note on ")
    assert fresh_anywhere.notes(1)[0].text == TWO_TOLD


def test_each_undo_says_what_stands_then(fresh_anywhere: Talk) -> None:
    fresh_anywhere.say("next: lena brandt and joao castellano")
    fresh_anywhere.press(fresh_anywhere.buttons[0].payload)
    fresh_anywhere.say("brandt is slow")
    fresh_anywhere.say("forget what i said about brandt")
    assert fresh_anywhere.say("undo") == "Back in the book: “brandt is slow”."
    assert fresh_anywhere.say("undo that") == "Taken back: “brandt is slow”."


def test_an_undo_that_opens_a_finished_match_says_so(demo: Talk) -> None:
    demo.say("next: ruiz and hale")
    demo.say("won 11-5 11-4")
    assert "That match is on again." in demo.say("undo")


def test_to_forget_a_player_is_another_thing(demo: Talk) -> None:
    assert demo.say("forget okafor").startswith("Forget Chidi Okafor and")


def test_a_pair_told_in_words_has_an_undo_of_its_own(demo: Talk) -> None:
    demo.say("hale is patient")
    assert demo.say("okafor's partner is hale") == "Kept: Chidi Okafor plays with Ben Hale."
    assert demo.say("undo") == "Taken back: who plays with whom."
    assert demo.say("redo") == "Put back: who plays with whom."
    assert demo.say("undo") == "Taken back: who plays with whom."
    assert demo.say("undo") == "Taken back: “hale is patient”."


def test_lobs_that_are_missed_over_a_shoulder_are_not_theirs(demo: Talk) -> None:
    for text in (
        "Lindqvist misses lobs over the left shoulder, third shot drops float",
        "okafor misses lobs over his head, third shot drops float",
    ):
        demo.say(text)
        assert demo.heard is not None
        traits = [claim.trait.value for claim in demo.heard.trace["claims"]]
        assert traits == ["lob_defense", "third_shot_drop"]
    demo.say("hale lobs short")
    assert demo.heard is not None
    assert [claim.trait.value for claim in demo.heard.trace["claims"]] == ["lob"]


def test_a_pool_waits_for_the_match_that_is_on(demo: Talk) -> None:
    demo.say("next: okafor and lindqvist")
    demo.say("our point")
    told = demo.say("pool: brandt/castellano, ruiz/hale; one game to 15")
    assert "Okafor/Lindqvist are still on." in told
    assert demo.say("next").splitlines()[1:] == [
        "Okafor/Lindqvist are still on.",
        "This result first, then Lena Brandt/Castellano.",
    ]
    assert demo.say("our point").startswith("2-0-2.")


def test_a_result_that_only_the_pool_knows_is_the_pools(demo: Talk) -> None:
    demo.say("next: okafor and lindqvist")
    demo.say("our point")
    demo.say("pool: brandt/castellano, ruiz/hale; one game to 15")
    assert demo.say("won 15-11").startswith("Won 15-11.")
    assert "1 Lena Brandt/Castellano: won 15-11" in demo.say("pool")


def test_between_matches_of_a_pool_who_leads_is_the_table(demo: Talk) -> None:
    demo.say("pool: ruiz/hale; one game to 15")
    demo.say("won 15-11")
    assert demo.say("so whos ahead").startswith("Pool: 1 won, 0 lost, 0 to play.")


@pytest.mark.parametrize("text", ["what went wrong", "why did we lose", "what did we do wrong"])
def test_what_went_wrong_is_of_the_match_just_over(demo: Talk, text: str) -> None:
    demo.say("lost 5-11 6-11")
    assert demo.say(text).startswith("Last match: lost 5-11 6-11.")


def test_in_a_running_match_it_asks_what_to_change(demo: Talk) -> None:
    demo.say("our point")
    demo.say("what went wrong")
    assert demo.heard is not None
    assert demo.heard.trace["topic"].value == "adjust"


@pytest.mark.parametrize(
    "text",
    [
        "actually scratch the lazy bit that was mean",
        "scratch the lazy bit",
        "take out the lazy part please",
        "forget that lazy thing i was angry",
    ],
)
def test_a_part_told_by_its_word_goes_and_the_rest_stays(demo: Talk, text: str) -> None:
    demo.say("okafor is slow and lazy")
    demo.say("im on the right")
    assert demo.say(text) == "Taken back: “lazy”.\nKept: “okafor is slow”."
    assert "lazy" not in demo.say("what did i note about okafor")
    demo.say("undo")
    assert "slow and lazy" in demo.say("what did i note about okafor")


def test_a_note_with_nothing_left_goes_whole(demo: Talk) -> None:
    demo.say("okafor is grumpy")
    assert demo.say("scratch the grumpy bit") == "Taken back: “okafor is grumpy”."


@pytest.mark.parametrize("text", ["scratch the zebra bit", "undo that zebra thing it was a joke"])
def test_a_word_of_no_note_takes_nothing_back(demo: Talk, text: str) -> None:
    assert demo.say(text) == "No note of yours says “zebra”."
