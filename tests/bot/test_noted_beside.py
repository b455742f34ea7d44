"""A result or a score told with a note in one message: both are kept."""

from __future__ import annotations

import pytest
from talk import Talk


@pytest.fixture
def match(demo: Talk) -> Talk:
    demo.say("start match okafor lindqvist")
    return demo


@pytest.mark.parametrize(
    ("said", "game", "noted", "note"),
    [
        ("g1 lost 7-11 lindqvist is slow", "theirs, 7-11", "Lindqvist: foot", "lindqvist is slow"),
        ("we lost 7-11 because okafor poached everything", "theirs, 7-11", "Okafor: poach", "okaf"),
        ("okafor was slow. won 11-5", "ours, 11-5", "Okafor: foot speed weak", "okafor was slow"),
        ("okafor slow, lost g2 8-11", "theirs, 8-11", "Okafor: foot speed weak", "okafor slow"),
        (
            "lost 11-9 to okafor, he is slow",
            "theirs, 9-11",
            "Okafor: foot speed weak",
            "he is slow",
        ),
        ("g1 lost 7-11 zorblat is slow", "theirs, 7-11", "Your words are kept", "zorblat is slow"),
    ],
)
def test_game_and_note_are_both_kept(
    match: Talk, said: str, game: str, noted: str, note: str
) -> None:
    answer = match.say(said)
    assert f"Game 1 {game}" in answer
    assert noted in answer
    assert note in match.notes()[0].text
    assert len(match.last) == 1  # one message: the phone buzzes once


def test_words_without_a_trait_are_kept_too(match: Talk) -> None:
    answer = match.say("g1 lost 7-11 okafor started banana srv wide to toms bh")
    assert "Game 1 theirs, 7-11" in answer
    assert match.notes()[0].text == "okafor started banana srv wide to toms bh"


def test_a_score_and_a_note_are_both_kept(match: Talk) -> None:
    answer = match.say("6-4-1 lindqvist weak backhand")
    assert answer.startswith("6-4-1: who serves?")
    assert match.notes()[0].text == "lindqvist weak backhand"


def test_the_note_outlives_the_match_that_ends(match: Talk) -> None:
    answer = match.say("we won 11-4 11-6, okafor cant handle pace")
    assert answer.startswith("Won 11-4 11-6.")
    assert ("handles_pace", "weakness", False) in match.claims("Okafor")


def test_each_is_taken_back_by_its_own_button(match: Talk) -> None:
    notes = match.notes()
    match.say("g1 lost 7-11 lindqvist is slow")
    assert "Taken back" in match.tap("undo note")
    assert match.notes() == notes
    assert "7-11" in match.say("score")


@pytest.mark.parametrize(
    "said",
    [
        "lost 7-11 to okafor and lindqvist",
        "won 11-6 nice",
        "won 11-4 windy as hell out there",
        "lost 9-11, gg okafor",
        "won 11-8 vs okafor and lindqvist in the semis",
        "g1 lost 7-11 okafor serving first",
    ],
)
def test_a_result_with_names_or_chatter_notes_nothing(match: Talk, said: str) -> None:
    notes = match.notes()
    match.say(said)
    assert match.notes() == notes
