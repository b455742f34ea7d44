"""A name misspelt beyond the rules: answered, said for whom, and put right by a tap."""

from __future__ import annotations

from importlib.resources import files

import pytest
from rosters import roster_of
from seen_words import seen_words
from talk import Talk

from bot.chat.names import mentions_of
from bot.chat.view import ChatView

TAKEN = "I take lindkivst for Sven Lindqvist.\n"


def labels(talk: Talk) -> list[str]:
    return [button.label for button in talk.buttons]


def test_a_question_is_answered_and_says_for_whom(demo: Talk) -> None:
    said = demo.say("where do i dink lindkivst")
    assert said.startswith(f"{TAKEN}Dink ")
    assert "Lindqvist" in said.removeprefix(TAKEN)
    assert "add lindkivst" in labels(demo)


def test_what_is_typed_next_is_no_answer_to_it(demo: Talk) -> None:
    demo.say("where do i dink lindkivst")
    assert demo.context.asks_who is None
    assert "Lindqvist" in demo.say("why?")


def test_whoever_is_new_all_the_same_is_one_tap_away(demo: Talk) -> None:
    demo.say("where do i dink lindkivst")
    assert "Lindkivst" in demo.tap("add lindkivst")
    assert demo.player("Lindkivst")


def test_a_note_is_kept_in_its_own_words_and_read_of_them(demo: Talk) -> None:
    before = demo.claims("Sven Lindqvist")
    said = demo.say("lindkivst serves short and weak on the forehand dink")
    assert said.startswith(f"{TAKEN}Noted. ")
    assert demo.notes()[0].text == "lindkivst serves short and weak on the forehand dink"
    assert ("forehand_dink", "weakness", False) in demo.claims("Sven Lindqvist") - before


def test_a_note_about_somebody_new_moves_there_by_a_tap(demo: Talk) -> None:
    before = demo.claims("Sven Lindqvist")
    demo.say("lindkivst has a weak forehand dink")
    demo.tap("add lindkivst")
    assert demo.claims("Sven Lindqvist") == before
    assert ("forehand_dink", "weakness", False) in demo.claims("Lindkivst")


def test_nobody_is_supposed_where_a_pair_is_announced_or_a_player_added(demo: Talk) -> None:
    assert demo.say("new opponent lindkivst") == "Added Lindkivst."
    said = demo.say("next: oakfpr and brandt, court 3")
    assert said.startswith("No oakfpr in your book yet.")


def test_a_name_of_its_own_is_still_asked_about(demo: Talk) -> None:
    assert demo.say("where do i dink against Hutchinson").startswith(
        "No Hutchinson in your book yet."
    )


def test_everyday_words_are_those_that_the_writers_used() -> None:
    """After a change of what they wrote: python tests/train/train_words.py."""
    text = files("bot.chat.data").joinpath("seen_words.txt").read_text(encoding="utf-8")
    assert text.split() == seen_words()


@pytest.mark.parametrize(
    "text",
    ["can i try the fancy stuff", "cheer me up", "she is in tears", "how many calories in cheese"],
)
def test_an_everyday_word_is_nobody_mistyped(text: str) -> None:
    roster = roster_of("Mira Vance", "Chidi Okafor", "Tess O'Dell")
    view = ChatView(book=1, version=1, roster=roster)
    assert not [one for one in mentions_of(text, view) if not one.pronoun]
