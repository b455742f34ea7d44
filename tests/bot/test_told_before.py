"""A score or a rally told before a question counts, and one message answers both."""

from __future__ import annotations

import pytest
from talk import Talk, demo_talk


@pytest.fixture
def match() -> Talk:
    talk = demo_talk()
    for said in ("next: okafor and lindqvist", "0-0-2 we serve", "5-5-1 we serve"):
        talk.say(said)
    return talk


def stands(talk: Talk) -> str:
    return talk.say("score?").splitlines()[0]


@pytest.mark.parametrize(
    ("said", "then"),
    [
        ("4-7-1 they serve, should we call a timeout", "4-7-1. They serve."),
        ("its 8-8-2 our serve who takes the middle", "8-8-2. We serve: Mira right, Tom left."),
        ("9-8-2, safe or bold?", "9-8-2. We serve: Tom right, Mira left."),
        ("were up 9-8-2, how big is this rally", "9-8-2. We serve: Tom right, Mira left."),
        ("we lost 4 in a row, 4-7-2, timeout?", "4-7-2. We serve: Mira right, Tom left."),
        ("side out. where do i serve", "5-5-1. They serve from the right to Tom."),
        ("that makes it 6-4-1, where do I return", "6-4-1. We serve: Mira right, Tom left."),
        ("so thats 9-8-2 our serve, safe or bold?", "9-8-2. We serve: Tom right, Mira left."),
        ("10-9 us game point what serve", "10-9-1. We serve: Mira right, Tom left."),
        ("4-10 match point them, timeout?", "10-4-1. They serve."),
        ("our point! who do we target now?", "6-5-1. We serve: Mira right, Tom left."),
        (
            "time-out now, 8-5, what do we change and who serves after",
            "8-5-1. We serve: Mira right, Tom left.",
        ),
        ("6-5-1 tom is serving, where should i stand", "6-5-1. Tom serves from the left."),
        ("they won that rally. should i lob more", "5-5-2. We serve: Tom right, Mira left."),
        ("tom sailed a third what should he do", "5-5-2. We serve: Tom right, Mira left."),
        ("okafor smashed one what do we do", "5-5-2. We serve: Tom right, Mira left."),
        ("i missed another dink, drop or drive?", "5-5-2. We serve: Tom right, Mira left."),
        ("they scored again, im picked on what now", "5-5-2. We serve: Tom right, Mira left."),
    ],
)
def test_what_is_told_counts(match: Talk, said: str, then: str) -> None:
    answered = match.say(said)
    assert then in answered.splitlines()
    assert answered.splitlines()[0] != then, "the answer stands first"
    assert stands(match) == then


@pytest.mark.parametrize(
    "said",
    [
        "how big is this rally at 9-8-2",
        "at 9-8-2 what do i serve",
        "if we're 10-9-1, do we play safe?",
        "say its 10-9-2, safe or bold?",
        "lost that one, what do we change?",  # it may be a game
        "was that our point?",
        "game point for them, where do i serve",
        "match point us, what serve",
        "my serve hit the net and landed in the kitchen, is it good",
        "okafor won 11-4, who do we target?",
        "lost 9-11 to them last time, what do we change?",
        "we need to win 11-9, how do we do that",
        "if we win 11-9 what changes",
        "who serves at 8-8-2?",
        "okafor always smashes short lobs, what do we do",
        "mira got pulled super wide, do i slide over?",  # a scene, and none of these
        "the wrong one of us served and we won the rally, what happens to the point?",
        "if okafor smashed one, what do we do?",
        "they hit everything to tom, should we stack?",
    ],
)
def test_what_is_only_supposed_or_asked_moves_nothing(match: Talk, said: str) -> None:
    before = stands(match)
    match.say(said)
    assert stands(match) == before


@pytest.mark.parametrize(
    ("said", "offered", "then"),
    [
        ("lost that one, what do we change?", "their rally", "5-5-2. We serve"),
        ("they won that one, should we call a timeout", "their rally", "5-5-2. We serve"),
        ("lost that one what now", "their rally", "5-5-2. We serve"),
        ("won that one! who do we target", "our rally", "6-5-1. We serve"),
    ],
)
def test_what_may_be_a_rally_or_a_game_is_one_tap_away(
    match: Talk, said: str, offered: str, then: str
) -> None:
    match.say(said)
    assert [one.label for one in match.buttons][-1] == offered
    assert match.tap(offered).startswith(then)


@pytest.mark.parametrize(
    ("said", "then"),
    [
        ("won that one 11-9 what do we change", "Game 1 ours, 11-9. Ends change."),
        ("lost that 11-9, what do we change?", "Game 1 theirs, 9-11. Ends change."),
        ("game one theirs 8-11. they lob everything what now", "Game 1 theirs, 8-11. Ends change."),
        ("lost 11-9 in the first, what do we change", "Game 1 theirs, 9-11. Ends change."),
        (
            "lost 11-9 in the first, 3-5 down now, they serve, timeout?",
            "Game 2. 5-3-1. They serve.",
        ),
        ("beat them 11-6 11-4, what should we practise", "Won 11-6 11-4. The match is closed."),
    ],
)
def test_a_game_told_before_a_question_counts(match: Talk, said: str, then: str) -> None:
    before = stands(match)
    answered = match.say(said).splitlines()
    assert then in answered[1:], "the answer stands first"
    match.tap("undo")
    assert stands(match) == before


def test_the_answer_is_about_the_score_told(match: Talk) -> None:
    told = match.say("4-7-1 they serve, should we call a timeout")
    match.say("undo")
    match.say("4-7-1 they serve")
    asked = match.say("should we call a timeout")
    assert told.splitlines()[:2] == asked.splitlines()[:2]


def test_undo_takes_the_score_back_and_the_answer_stays_short_of_buttons(match: Talk) -> None:
    before = stands(match)
    match.say("9-8-2, safe or bold?")
    labels = [one.label for one in match.buttons]
    assert labels[-3:] == ["our rally", "their rally", "undo"]
    match.tap("undo")
    assert stands(match) == before


def test_a_score_that_cannot_be_is_questioned_under_the_answer(match: Talk) -> None:
    before = stands(match)
    answered = match.say("12-3-1, who takes the middle?").splitlines()
    assert answered[0].startswith("Slow:")
    assert answered[-1].startswith("12-3 can't happen in a game to 11.")
    assert stands(match) == before


def test_without_a_match_nothing_is_counted() -> None:
    talk = demo_talk()
    assert "No match" not in talk.say("4-7-1 they serve, should we call a timeout")


@pytest.mark.parametrize(
    ("said", "then"),
    [
        ("won 11-7 15-13? no 11-7 and 11-9", "Won 11-7 11-9. The match is closed."),
        ("won 11-7 15-13, no 11-7 and 11-9", "Won 11-7 11-9. The match is closed."),
        ("lost 11-7 15-13? wait 11-7 and 11-9", "Lost 7-11 9-11. The match is closed."),
        ("won it 11-8? no 11-9", "Game 1 ours, 11-9. Ends change."),
    ],
)
def test_games_put_right_in_the_same_message_are_the_ones_kept(
    match: Talk, said: str, then: str
) -> None:
    assert match.say(said).startswith(then)


def test_a_game_doubted_and_told_again_is_kept_once(match: Talk) -> None:
    match.say("they won it 11-9")
    before = stands(match)
    assert "Which of these" in match.say("lost 11-9 but up 1 game? no we lost that one")
    assert stands(match) == before
