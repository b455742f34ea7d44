"""What to change, in the chat: one answer at once, four buttons, and the log of this match."""

from __future__ import annotations

import pytest
from talk import Talk

from bot.chat.said import Kind
from bot.chat.wording import wording

TROUBLES = ["our misses", "their winners", "stuck back", "pop-ups"]


def test_four_troubles_stand_under_the_answer(demo: Talk) -> None:
    assert demo.say("what do we change").splitlines()[0].endswith(".")
    assert [one.label for one in demo.buttons][:4] == TROUBLES


def test_a_trouble_tapped_is_a_trouble_said(demo: Talk) -> None:
    typed = demo.say("we are stuck back, what do we change").splitlines()[0]
    demo.say("what do we change")
    assert demo.tap("stuck back").splitlines()[0] == typed


@pytest.mark.parametrize("typed", ["our misses", "their winners", "too many errors"])
def test_what_happens_many_times_is_no_rally(demo: Talk, typed: str) -> None:
    demo.say("what do we change")
    demo.say(typed)
    assert demo.heard is not None
    assert demo.heard.kind is not Kind.RALLY


@pytest.mark.parametrize("label", TROUBLES)
def test_a_trouble_typed_is_the_button(demo: Talk, label: str) -> None:
    demo.say("what do we change")
    tapped = demo.tap(label)
    demo.say("what do we change")
    assert demo.say(label).splitlines()[0] == tapped.splitlines()[0]


def test_a_change_of_ends_is_asked_of_the_rulebook(demo: Talk) -> None:
    assert "ends" in demo.say("switch sides at 6 in game 3?").lower()


def test_a_note_to_forget_is_no_rally(demo: Talk) -> None:
    demo.say("forget the jam note on Okafor")
    assert demo.heard is not None
    assert demo.heard.kind is not Kind.RALLY


def test_a_button_of_no_trouble_we_know_is_answered_kindly(demo: Talk) -> None:
    demo.say("what do we change")
    payload = demo.button("stuck back").payload
    assert "stuck_back" in payload
    said = demo.press(payload.replace("stuck_back", "stuck_up"))
    assert said == wording("unclear.too_old")


def test_how_rallies_ended_counts_and_is_shown(demo: Talk) -> None:
    demo.say("match vs okafor and lindqvist")
    demo.say("they serve first")
    for _ in range(10):
        demo.say("lost it, tom missed the return")
    said = demo.say("what do we change? our misses")
    assert said.startswith("Return higher")
    assert "It lost 10 of the 10 you tagged (book: 10 lost rallies today)" in said
    why = demo.tap("why")
    assert "Log: 10 of 10 lost rallies today tagged" in why
    assert "Match chance" in why


@pytest.mark.parametrize(
    "asks",
    [
        "6-2-1 us, keep it going or change",
        "we lead 6-2, change anything?",
        "up 6-2 keep going or change something",
    ],
)
def test_who_leads_clearly_keeps_what_works(demo: Talk, asks: str) -> None:
    """Common practice, no source."""
    demo.say("next: okafor and lindqvist")
    call, then, *_ = demo.say(asks).splitlines()
    assert call == "Keep it: you lead 6-2. Change nothing yet."
    assert then.startswith("· If it turns: ")


@pytest.mark.parametrize(
    "asks",
    [
        "2-6 down, keep it going or change",
        "6-5 up, keep it going or change",
        "6-2-1 us, our dinks pop up, keep it or change",
    ],
)
def test_who_trails_or_hurts_is_told_what_to_change(demo: Talk, asks: str) -> None:
    demo.say("next: okafor and lindqvist")
    assert "Keep it" not in demo.say(asks)
