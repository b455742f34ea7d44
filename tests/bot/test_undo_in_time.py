"""Taking back in time: a format once played in, numbers of another match, and the mode put back."""

from __future__ import annotations

import pytest
from talk import Talk

from knowledge.vocabulary import Mode


@pytest.fixture
def announced(demo: Talk) -> Talk:
    demo.say("next: ruiz and hale, to 11")
    return demo


def test_a_format_stays_once_something_was_played_in_it(announced: Talk) -> None:
    announced.say("rally scoring to 21")
    undo = announced.button("undo").payload
    announced.say("we serve first")
    announced.say("12-3")
    assert "earlier time" in announced.press(undo)
    assert "12-3" in announced.say("score")


def test_a_format_can_be_taken_back_before(announced: Talk) -> None:
    announced.say("rally scoring to 21")
    assert announced.tap("undo").startswith("Taken back: the format")


def test_numbers_of_no_match_leave_those_of_the_next_alone(demo: Talk) -> None:
    demo.say("won 11-3 11-4")
    demo.say("we win 30% on serve, 40% returning")
    old = demo.button("undo").payload
    demo.say("next: ruiz and hale, to 11")
    demo.say("we win 50% on serve, 50% returning")
    demo.press(old)
    assert demo.context.rates == (0.5, 0.5)


def mode_after(talk: Talk, text: str) -> Mode:
    talk.say(text)
    return talk.context.mode


def test_a_time_out_put_back_is_a_break_again(announced: Talk) -> None:
    announced.say("we serve")
    assert mode_after(announced, "our timeout") is Mode.BREAK
    assert mode_after(announced, "undo") is Mode.MATCH
    assert mode_after(announced, "redo") is Mode.BREAK


def test_a_rally_that_ends_the_game_put_back_is_a_break_again(announced: Talk) -> None:
    announced.say("we serve")
    for _ in range(11):
        announced.say("our rally")
    assert announced.context.mode is Mode.BREAK
    announced.say("undo")
    announced.say("redo")
    assert announced.context.mode is Mode.BREAK


def test_a_note_taken_back_by_its_name_takes_no_match_with_it(fresh: Talk) -> None:
    fresh.say("next: lena jansen and ruud vos")
    fresh.say("yes")
    assert fresh.say("delete my last note") == "No note of yours to take back here."
    fresh.say("vos is slow")
    fresh.say("we serve")
    assert fresh.say("remove the last note").startswith("Taken back: “vos is slow”.")
    assert fresh.say("score").startswith("0-0-2")
