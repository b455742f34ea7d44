"""Matches and scores through the whole turn: announced, tapped, said, taken back, ended."""

from __future__ import annotations

import pytest
from talk import Talk

from bot.chat.match_log import unvoided
from bot.chat.payload import Tap, Verb
from bot.chat.wording import wording
from knowledge.vocabulary import Mode
from scouting_db.values import EntryRow

NEXT = "next: ruiz and hale, 10:40, court 7, to 11"


def begin(talk: Talk, *, we_serve: bool = True) -> str:
    """A match with Ruiz and Hale whose first serve was tapped."""
    talk.say(NEXT)
    return talk.tap("we serve" if we_serve else "they serve")


def log_of(talk: Talk) -> tuple[EntryRow, ...]:
    """The lines of the current match that count."""
    match = talk.context.match
    assert match is not None
    with talk.book() as book:
        return unvoided(book.entries(match))


def rallies(talk: Talk) -> int:
    return sum(one.kind == "rally" for one in log_of(talk))


def test_announcing_tells_who_when_and_where_and_asks_who_serves(demo: Talk) -> None:
    reply = demo.say(NEXT)
    assert reply.splitlines() == [
        "Next: Ana Ruiz and Ben Hale, 10:40, court 7, best of 3 to 11.",
        "I send the plan at 10:20, 20 min before.",
        "That's UTC. Say: we're in Denver",
        "Who serves first?",
    ]
    assert [one.label for one in demo.buttons][:2] == ["we serve", "they serve"]


def test_they_are_the_announced_pair(demo: Talk) -> None:
    demo.say(NEXT)
    assert set(demo.context.theirs) == {demo.player("Ana Ruiz"), demo.player("Ben Hale")}


def test_taking_back_an_announcement_brings_back_the_match_before(demo: Talk) -> None:
    before = demo.context
    demo.say(NEXT)
    demo.tap("undo")
    assert demo.context.match == before.match
    assert demo.context.theirs == before.theirs


def test_a_tap_counts_one_rally_and_calls_the_score(demo: Talk) -> None:
    assert begin(demo).startswith("0-0-2. Mira serves")
    assert demo.tap("our rally").startswith("1-0-2. Mira serves")
    assert demo.tap("their rally").startswith("0-1-1. They serve")
    assert demo.tap("their rally").startswith("1-1-1. They serve")


def test_a_double_tap_counts_once_and_shows_the_score_again(demo: Talk) -> None:
    begin(demo)
    pressed = demo.button("our rally").payload
    demo.press(pressed)
    reply = demo.press(pressed)
    assert reply.startswith("Already counted.")
    assert "1-0-2" in reply
    assert rallies(demo) == 1
    assert demo.tap("our rally").startswith("2-0-2"), "the buttons under it are the newest"


def test_who_serves_tapped_twice_starts_one_game(demo: Talk) -> None:
    demo.say(NEXT)
    pressed = demo.button("we serve").payload
    demo.press(pressed)
    demo.press(pressed)
    assert [one.kind for one in log_of(demo)] == ["game"]


def test_an_old_who_serves_button_does_not_throw_the_score_away(demo: Talk) -> None:
    demo.say(NEXT)
    ours, theirs = demo.button("we serve").payload, demo.button("they serve").payload
    demo.press(ours)
    demo.tap("our rally")
    demo.tap("our rally")
    for pressed in (theirs, ours):
        demo.press(pressed)
    assert demo.say("our point").startswith("3-0-2")


def test_the_other_who_serves_button_corrects_a_slip_before_the_first_rally(demo: Talk) -> None:
    demo.say(NEXT)
    ours, theirs = demo.button("we serve").payload, demo.button("they serve").payload
    demo.press(ours)
    assert demo.press(theirs).startswith("0-0-2. They serve")


def test_any_number_of_taps_is_taken_back_and_counting_goes_on(demo: Talk) -> None:
    begin(demo)
    for label in ("our rally", "our rally", "their rally", "our rally"):
        demo.tap(label)
    for call in ("2-0-2", "2-0-2", "1-0-2", "0-0-2"):
        reply = demo.say("undo")
        assert reply.startswith("Taken back"), reply
        assert call in reply or call == "2-0-2"
    assert rallies(demo) == 0
    assert demo.tap("our rally").startswith("1-0-2"), "the undo's own buttons count on"


def test_put_back_counts_again(demo: Talk) -> None:
    begin(demo)
    demo.tap("our rally")
    demo.tap("undo")
    assert "1-0-2" in demo.tap("put it back")
    assert rallies(demo) == 1
    assert demo.tap("their rally").startswith("0-1-1")


def test_undo_pressed_twice_takes_back_once(demo: Talk) -> None:
    begin(demo)
    demo.tap("our rally")
    demo.tap("our rally")
    pressed = demo.button("undo").payload
    demo.press(pressed)
    assert "already" in demo.press(pressed)
    assert rallies(demo) == 1


@pytest.mark.parametrize(
    ("said", "call"),
    [
        ("6-4-2", "6-4-2. We serve"),
        ("we're up 9-8 receiving", "8-9"),
        ("8 all", "8-8"),
        ("side out", "0-0-1. They serve"),
        ("our point", "1-0-2. Mira serves"),
        ("their point", "0-0-1. They serve"),
    ],
)
def test_a_score_as_players_say_it(demo: Talk, said: str, call: str) -> None:
    begin(demo)
    assert demo.say(said).startswith(call)


@pytest.mark.parametrize("said", ["99-3-7", "6-4-3", "11-3-1 and 40-2", "30-2-1"])
def test_an_impossible_score_is_questioned_and_not_stored(demo: Talk, said: str) -> None:
    begin(demo)
    before = demo.stored()
    reply = demo.say(said)
    assert demo.stored() == before
    assert "Not stored" in reply or "?" in reply


def test_a_score_without_a_match_says_how_to_announce_one(fresh_anywhere: Talk) -> None:
    before = fresh_anywhere.stored()
    assert "No match is on" in fresh_anywhere.say("6-4-2")
    assert fresh_anywhere.stored() == before


def test_a_result_closes_the_match_and_they_mean_nobody(demo: Talk) -> None:
    begin(demo)
    reply = demo.say("won 11-8 9-11 11-6")
    assert reply.startswith("Won 11-8 9-11 11-6.")
    assert demo.context.match is None
    assert demo.context.theirs == ()


def test_a_result_taken_back_opens_the_match_again(demo: Talk) -> None:
    begin(demo)
    match = demo.context.match
    demo.say("lost 4-11 6-11")
    demo.tap("undo")
    assert demo.context.match == match
    assert demo.tap("our rally").startswith("1-0-2")


def test_a_result_put_back_closes_it_again(demo: Talk) -> None:
    begin(demo)
    demo.say("lost 4-11 6-11")
    demo.tap("undo")
    demo.tap("put it back")
    assert demo.context.match is None


def test_an_old_undo_never_leaves_the_match_that_is_on(demo: Talk) -> None:
    begin(demo)
    demo.say("lost 4-11 6-11")
    old = demo.button("undo").payload
    demo.say("next: brandt and castellano, to 15")
    running = demo.context.match
    demo.press(old)
    assert demo.context.match == running


def test_the_last_rally_of_a_match_wins_it(demo: Talk) -> None:
    demo.say("next: ruiz and hale, one game to 11")
    demo.tap("we serve")
    for _ in range(10):
        demo.tap("our rally")
    reply = demo.tap("our rally")
    assert reply.startswith("Won 11-0.")
    assert demo.context.match is None


def test_a_word_after_the_match_does_not_change_its_last_rally(demo: Talk) -> None:
    demo.say("next: ruiz and hale, one game to 11")
    demo.tap("we serve")
    for _ in range(10):
        demo.tap("our rally")
    demo.say("our point, hale netted a drive")
    before = demo.stored()
    demo.say("our point, ruiz popped it up")
    assert demo.stored() == before


def test_a_rally_told_in_words_keeps_the_words(demo: Talk) -> None:
    begin(demo)
    demo.say("our point, hale netted a drive")
    match = demo.context.match
    assert match is not None
    with demo.book() as book:
        told = [one.words for one in book.rallies(match)]
    assert told == ["our point, hale netted a drive"]


def test_a_time_out_is_a_break_and_counting_goes_on_after_it(demo: Talk) -> None:
    begin(demo)
    demo.tap("our rally")
    reply = demo.tap("time-out")
    assert reply.startswith("Time-out taken.")
    modes = [demo.context.mode]
    assert demo.tap("our rally").startswith("2-0-2")
    modes.append(demo.context.mode)
    assert modes == [Mode.BREAK, Mode.MATCH]


def test_time_outs_do_not_go_below_none(demo: Talk) -> None:
    begin(demo)
    told = []
    for _ in range(3):
        told.append(demo.tap("time-out").splitlines()[0])
        demo.tap("our rally")
    # Two in a game to 11: national rulebook 2025, 10.A.
    assert told == [
        "Time-out taken. 1 left this game.",
        "Time-out taken. 0 left this game.",
        "No time-out left in this game.",
    ]
    assert sum(one.kind == "timeout" for one in log_of(demo)) == 2


def test_their_time_outs_are_counted_too(demo: Talk) -> None:
    """10.A: two in a game to 11, for either side; a rally in between keeps the count."""
    begin(demo)
    match = demo.context.match
    told = []
    for line in (2, 4, 6):
        told.append(demo.press(f"1:to:them:{match}:{line}").splitlines()[0])
        demo.say("our point")
    assert told[:2] == ["Their time-out. Ask me one thing."] * 2
    assert told[2] == "By my count they have none left."


def test_a_taken_back_time_out_ends_the_break(demo: Talk) -> None:
    begin(demo)
    demo.tap("time-out")
    demo.tap("undo")
    assert demo.context.mode is Mode.MATCH


def test_match_mode_answers_with_the_call_and_one_reason(demo: Talk) -> None:
    demo.press("1:ask:cover_middle")
    long = demo.last[0].text
    begin(demo)
    demo.press("1:ask:cover_middle")
    short = demo.last[0].text
    assert len(short.splitlines()) < len(long.splitlines())
    assert len(short.splitlines()) <= 3
    assert demo.last[0].picture is None


def test_a_rally_button_of_another_match_is_too_old(demo: Talk) -> None:
    begin(demo)
    old = demo.button("our rally").payload
    demo.say("next: brandt and castellano, to 15")
    before = demo.stored()
    assert "earlier" in demo.press(old)
    assert demo.stored() == before


def test_the_log_on_both_databases(fresh_anywhere: Talk) -> None:
    fresh_anywhere.say("/pair Mira and Tom")
    fresh_anywhere.say("/add Hale")
    fresh_anywhere.say("/add Ruiz")
    fresh_anywhere.say("next: ruiz and hale, to 11")
    fresh_anywhere.tap("they serve")
    fresh_anywhere.tap("our rally")
    fresh_anywhere.tap("our rally")
    fresh_anywhere.tap("undo")
    assert rallies(fresh_anywhere) == 1
    assert Tap.parse(fresh_anywhere.button("our rally").payload).verb is Verb.RALLY


@pytest.mark.parametrize(
    ("said", "score"),
    [
        ("next: okafor and lindqvist, 10:40, they serve first", "0-0-2. They serve"),
        ("next: okafor and lindqvist, we serve first", "0-0-2. Mira serves"),
        ("next is lindqvist and okafor game to 11 they serve", "0-0-2. They serve"),
        ("playing okafor/lindqvist, our serve, court 4", "0-0-2. Mira serves"),
    ],
)
def test_who_serves_first_may_come_with_the_announcement(demo: Talk, said: str, score: str) -> None:
    reply = demo.say(said)
    assert reply.startswith("Next: ")
    assert score in reply
    assert wording("match.who_serves") not in reply
    demo.say("undo")
    assert demo.say("undo") == "Taken back: the match."


@pytest.mark.parametrize(
    ("said", "at"), [("12:12 am", "00:12"), ("12:30 pm", "12:30"), ("1:05 am", "01:05")]
)
def test_twelve_at_night_is_midnight(demo: Talk, said: str, at: str) -> None:
    assert f"{at}, best of 3" in demo.say(f"next: ruiz and hale, {said}")
