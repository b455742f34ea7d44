"""Notes that no trait was read from are found again: read back, reported, and taken back."""

from __future__ import annotations

import pytest
from talk import Talk

from bot.chat.wording import wording

WORDS = ("bangs everything", "goes for the body", "leaves his line open", "dinks cross court")
LAST = f"note pellegrino {WORDS[-1]}"


@pytest.fixture
def noted(fresh_anywhere: Talk) -> Talk:
    fresh_anywhere.say("add Pellegrino")
    for words in WORDS:
        said = fresh_anywhere.say(f"note pellegrino {words}")
        assert said.startswith((wording("note.all_words"), wording("note.tap_which")))
    return fresh_anywhere


@pytest.mark.parametrize(
    "asked",
    ["read me my notes on pellegrino", "my notes on pellegrino", "notes on pellegrino",
     "show notes on pellegrino", "what did i note on pellegrino", "/notes pellegrino",
     "what did i note today about pellegrino", "what did i say about pellegrino",
     "what notes do you have on pellegrino", "which notes are there on pellegrino"],
)  # fmt: skip
def test_words_are_read_back(noted: Talk, asked: str) -> None:
    said = noted.say(asked)
    assert [line for line in said.splitlines() if line.startswith("·")] == [
        f"· note pellegrino {words}" for words in reversed(WORDS)
    ]


def test_what_was_read_stands_below(noted: Talk) -> None:
    noted.say("pellegrino has a good serve but no backhand")
    said = noted.say("my notes on pellegrino").splitlines()
    assert said[1:5] == [
        "· pellegrino has a good serve but no backhand",
        "  = serve strong, backhand dink weak",
        f"· note pellegrino {WORDS[-1]}",
        "  = words only",
    ]


def test_a_report_gives_the_newest_words(noted: Talk) -> None:
    said = noted.say("report on pellegrino")
    assert "no notes" not in said
    assert f"Pellegrino: “{WORDS[-1]}” (book: 1 note, today)" in said


def test_words_may_be_taken_back(noted: Talk) -> None:
    assert "Which note on Pellegrino goes?" in noted.say("delete a note on pellegrino")
    noted.tap("delete 1")
    assert WORDS[-1] not in noted.say("my notes on pellegrino")
    assert WORDS[-1] not in noted.say("report on pellegrino")


def test_notes_of_the_day_and_how_many(noted: Talk) -> None:
    assert noted.say("how many notes do i have") == "4 notes."
    assert noted.say("how many notes on pellegrino") == "Pellegrino: 4 notes."
    assert noted.say("what did i note today").startswith("Noted today, newest first:")
    assert noted.say("my notes from yesterday") == "Nothing noted yesterday."
    noted.later(days=1)
    assert noted.say("what did i note today") == "Nothing noted today."
    assert WORDS[0] in noted.say("what did i note yesterday")


def test_a_note_that_says_something_is_still_a_note(noted: Talk) -> None:
    assert noted.say("notes on pellegrino: weak backhand dink").startswith("Noted.")
    assert ("backhand_dink", "weakness", False) in noted.claims("Pellegrino")


def test_words_beside_a_claim_are_in_the_report(noted: Talk) -> None:
    noted.say("add Farkas")
    noted.say("farkas is a lefty and dinks cross court")
    said = noted.say("report on farkas")
    assert "Farkas: lefty" in said
    assert "Farkas: “dinks cross court” (book: 1 note, today)" in said


def test_the_last_of_several_goes_at_once(noted: Talk) -> None:
    assert noted.say("forget the last note about pellegrino") == f"Taken back: “{LAST}”."
    assert noted.say("undo") == f"Back in the book: “{LAST}”."


@pytest.mark.parametrize("words", ["scratch that last thing", "delete my last note"])
def test_the_last_thing_is_taken_back(noted: Talk, words: str) -> None:
    noted.say("report on pellegrino")
    assert noted.say(words) == f"Taken back: “{LAST}”."


@pytest.fixture
def doubted(fresh_anywhere: Talk) -> Talk:
    fresh_anywhere.say("add Pellegrino")
    fresh_anywhere.say("pellegrino is slow to the left maybe")
    fresh_anywhere.say("pellegrino has a weak backhand")
    return fresh_anywhere


def test_what_was_told_with_a_maybe_says_so(doubted: Talk) -> None:
    reply = doubted.say("what did i note about pellegrino")
    assert "  = moving left weak (not sure)" in reply
    assert "  = backhand dink weak\n" in f"{reply}\n"


@pytest.mark.parametrize(
    "asked",
    [
        "what did i note about pellegrino that is not so sure",
        "my notes on pellegrino that i'm not sure of",
    ],
)
def test_only_what_is_not_sure_is_read_back_if_asked(doubted: Talk, asked: str) -> None:
    reply = doubted.say(asked)
    assert "moving left weak" in reply
    assert "backhand" not in reply


def test_nothing_unsure_is_said(noted: Talk) -> None:
    asked = "what did i note about pellegrino that is not so sure"
    assert noted.say(asked) == "Nothing unsure is noted on Pellegrino."


@pytest.mark.parametrize(
    "asked",
    ["what do you not know about pellegrino", "what don't we know about pellegrino yet",
     "what's missing on pellegrino"],
)  # fmt: skip
def test_what_is_not_known_is_what_to_look_for(doubted: Talk, asked: str) -> None:
    assert doubted.say(asked).startswith("Look at")
    assert doubted.say("what do you know about pellegrino").startswith("Dink Pellegrino")
