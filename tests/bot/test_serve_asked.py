"""Who serves, asked: two words answer it, rallies told meanwhile wait, and undo reaches them.

Scores follow the 2025 rulebook's side-out scoring (only the serving side scores).
"""

from __future__ import annotations

import pytest
from talk import Talk

NEXT = "next: brandt and castellano, to 11"


@pytest.mark.parametrize(
    ("answer", "score"),
    [
        ("we do", "0-0-2. Mira serves from the right."),
        ("us", "0-0-2. Mira serves from the right."),
        ("they do", "0-0-2. They serve from the right to Mira."),
        ("them", "0-0-2. They serve from the right to Mira."),
        ("its them", "0-0-2. They serve from the right to Mira."),
    ],
)
def test_two_words_answer_who_serves_first(demo: Talk, answer: str, score: str) -> None:
    assert demo.say(NEXT).endswith("Who serves first?")
    assert demo.say(answer) == score


def test_nobody_asked_and_the_same_words_tell_a_rally(demo: Talk) -> None:
    demo.say(NEXT)
    demo.say("we serve")
    assert demo.say("us").startswith("1-0-2.")


def test_a_rally_waits_until_it_is_known_who_served(demo: Talk) -> None:
    demo.say(NEXT)
    assert demo.say("4-2-1") == "4-2-1: who serves?"
    assert demo.say("our point").endswith("I keep that rally and count it then.")
    assert demo.say("no theirs").endswith("I keep that rally and count it then.")
    assert demo.say("they hit it out").endswith("I keep those 2 rallies for then.")
    assert demo.say("they do").splitlines() == ["5-2-2. They serve.", "Noted: their error."]
    assert demo.say("undo").splitlines()[0] == "Taken back: our rally."
    assert demo.say("undo").splitlines()[0] == "Taken back: their rally."
    assert demo.say("score").startswith("4-2-1. They serve.")


def test_a_tap_answers_it_too_and_counts_what_waits(demo: Talk) -> None:
    demo.say(NEXT)
    demo.say("4-2-1")
    demo.say("our point")
    assert demo.tap("we serve").startswith("5-2-1. We serve:")


def test_undo_takes_back_a_waiting_rally_first(demo: Talk) -> None:
    demo.say(NEXT)
    demo.say("4-2-1")
    demo.say("our point")
    assert demo.say("undo").splitlines() == ["Taken back: our rally.", "4-2-1: who serves?"]
    assert demo.tap("they serve").startswith("4-2-1. They serve.")


@pytest.mark.parametrize(
    "text",
    [
        "who serves",
        "whose serving",
        "whos serving?",
        "is it my serve",
        "which server are we on",
        "who is serving now",
    ],
)
def test_who_serves_now_is_in_the_score_and_changes_nothing(demo: Talk, text: str) -> None:
    demo.say(NEXT)
    demo.say("they serve")
    for _ in range(2):
        assert demo.say(text) == "0-0-2. They serve from the right to Mira."


@pytest.mark.parametrize(
    ("text", "reply"),
    [
        ("add okafor", "In your book already: Chidi Okafor."),
        ("add hale to the book", "In your book already: Ben Hale."),
        ("add tom", "In your book already: Tom Adeyemi."),
        ("add okafor and zorblatt", "Added Chidi Okafor and Zorblatt."),
    ],
)
def test_a_name_added_in_a_match_is_no_rally(demo: Talk, text: str, reply: str) -> None:
    demo.say(NEXT)
    demo.say("we serve")
    assert demo.say(text) == reply
    assert demo.say("score").startswith("0-0-2.")


def test_one_added_to_a_side_still_is_a_rally(demo: Talk) -> None:
    demo.say(NEXT)
    demo.say("we serve")
    assert demo.say("add one for us").startswith("1-0-2.")


def test_another_of_the_same_name_is_one_tap_away(demo: Talk) -> None:
    demo.say("add okafor")
    demo.tap("add another okafor")
    assert demo.say("undo") == "Taken back: Okafor."


@pytest.mark.parametrize(
    ("said", "score"),
    [
        ("game 2 they serve first", "Game 2. 0-0-2. They serve from the right to Mira."),
        ("they serve first in game two", "Game 2. 0-0-2. They serve from the right to Mira."),
        ("second game, we serve", "Game 2. 0-0-2. Mira serves from the right."),
        ("ok g2 our serve", "Game 2. 0-0-2. Mira serves from the right."),
        ("mira serves first in the next game", "Game 2. 0-0-2. Mira serves from the right."),
    ],
)
def test_who_serves_first_may_be_told_with_the_game(demo: Talk, said: str, score: str) -> None:
    demo.say(NEXT)
    demo.say("we serve")
    demo.say("11-9")
    assert demo.say(said).splitlines()[0] == score


@pytest.mark.parametrize(
    "asked", ["which end if they serve first?", "they serve first, should we take the sun side?"]
)
def test_between_games_the_next_serve_may_be_asked_about(demo: Talk, asked: str) -> None:
    """The game before is over: a serve asked about is none of its own."""
    demo.say(NEXT)
    demo.say("we serve")
    demo.say("11-9")
    assert "my side" not in demo.say(asked)


def test_between_games_another_format_is_asked_about_from_its_start(demo: Talk) -> None:
    """15-9 can't happen in a game to 11."""
    demo.say("next: brandt and castellano, to 15")
    demo.say("we serve")
    demo.say("15-9")
    assert "I took 0-0-2" in demo.say("what if it was a game to 11, what are our chances?")


def test_who_serves_without_a_match_is_answered_with_how_to_announce_one(fresh: Talk) -> None:
    for said in ("we serve", "they serve", "we are serving"):
        assert fresh.say(said) == "No match is on. Say: next: NAME and NAME, to 11"


def test_the_example_of_a_match_names_opponents_of_the_book(fresh: Talk) -> None:
    fresh.say("add priya shah")
    assert fresh.say("4-2-1") == "No match is on. Say: next: Shah and NAME, to 11"
    fresh.say("add jo vance")
    assert fresh.say("we serve") == "No match is on. Say: next: Shah and Vance, to 11"


@pytest.mark.parametrize(
    ("told", "score"),
    [
        (("0-0-2", "our point they netted it", "side out i mean we get it now"), "0-0-1. Mira"),
        (("0-0-2", "our point", "side out"), "0-0-1. Mira serves"),
        (("3-1-2", "our point", "side out"), "1-3-1. Tom serves"),
        (("3-1-2", "their point", "side out"), "1-3-1. They serve"),
        (("3-1-2", "side out we serve"), "1-3-1. Tom serves"),
        (("3-1-2", "side out they serve"), "1-3-1. They serve"),
        (("3-1-1", "side out we serve"), "3-1-1. We serve"),
    ],
)
def test_a_side_out_tells_who_served(demo: Talk, told: tuple[str, ...], score: str) -> None:
    """Only the pair that served loses the serve; the first server's call is after the side-out."""
    demo.say(NEXT)
    for each in told[:-1]:
        assert "who serves?" in demo.say(each)
    assert demo.say(told[-1]).startswith(score)


def test_a_side_out_alone_leaves_open_who_serves(demo: Talk) -> None:
    demo.say(NEXT)
    demo.say("3-1-2")
    assert demo.say("side out") == "3-1-2: who serves?"
    assert demo.say("we do").startswith("3-1-2. We serve")
