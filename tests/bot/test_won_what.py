"""A running match is closed by words that name it, never by a rally told in other words.

How rallies are told, and what dictation writes for "two" and "four", is from memory.
"""

from __future__ import annotations

import pytest
from talk import Talk

from scouting_db.values import MatchState

STANDS = "2-1-2 us"


@pytest.fixture
def match(demo: Talk) -> Talk:
    demo.say("next: ruiz and hale")
    demo.say(STANDS)
    return demo


def is_on(talk: Talk) -> bool:
    match = talk.context.match
    with talk.book() as book:
        row = None if match is None else book.match(match)
        return row is not None and row.state is MatchState.RUNNING


@pytest.mark.parametrize(
    ("text", "leads_to"),
    [
        ("they won too in a row", "they serve at 2-2-1"),
        ("they won to in a row", "they serve at 2-2-1"),
        ("they won two in a row", "they serve at 2-2-1"),
        ("they won for in a row", "they serve at 4-2-1"),
        ("they won three strait", "they serve at 3-2-1"),
        ("they won the last two points", "they serve at 2-2-1"),
        ("we won too", "we serve at 4-1-2"),
        ("we lost too in a row", "they serve at 2-2-1"),
        ("we won five points", "we serve at 7-1-2"),
    ],
)
def test_several_rallies_wait_for_a_tap(match: Talk, text: str, leads_to: str) -> None:
    stored = match.stored()
    match.say(text)
    assert match.button(leads_to)
    assert match.stored() == stored


@pytest.mark.parametrize("text", ["they won a few", "we won sum points", "they won several"])
def test_some_rallies_want_the_score(match: Talk, text: str) -> None:
    assert match.say(text).startswith(("Which score?", "Tap if"))
    assert is_on(match)


@pytest.mark.parametrize(
    ("text", "offered"),
    [
        ("they won there serve", "their rally"),
        ("we won back the serve", "our rally"),
        ("they won off the net", "their rally"),
        ("we won won", "our rally"),
        ("we lost again", "their rally"),
    ],
)
def test_what_was_won_is_asked(match: Talk, text: str, offered: str) -> None:
    stored = match.stored()
    assert match.say(text).startswith("Tap if it was a rally.")
    assert [one.label for one in match.buttons] == [offered]
    assert match.stored() == stored
    assert match.tap(offered).startswith(("3-1-2", "1-2-1"))


@pytest.mark.parametrize("text", ["they won that too", "they won the next too", "they won again"])
def test_one_rally_still_counts(match: Talk, text: str) -> None:
    assert match.say(text).startswith("1-2-1")


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("we won the match", "Won."),
        ("they won the match they were too good", "Lost."),
        ("we won, great match", "Won."),
    ],
)
def test_words_of_the_match_close_it(match: Talk, text: str, said: str) -> None:
    assert match.say(text).startswith(said)
    assert not is_on(match)


def test_a_score_after_a_match_closed_by_a_slip_opens_it_again(match: Talk) -> None:
    match.say("they won the match")
    assert match.say("3-1-2").startswith("No match is on")
    match.tap("that match goes on")
    assert is_on(match)
    assert match.say("3-1-2 us").startswith("3-1-2.")


def test_a_match_long_over_is_not_offered_again(match: Talk) -> None:
    match.say("they won the match")
    match.say("okafor is a lefty")
    match.say("3-1-2")
    assert not match.buttons
