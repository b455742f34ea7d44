"""Who started right, through the whole turn: asked once a game, named from then on, taken back.

The rotation behind the names is checked in tests/knowledge/test_game_moves.py; here by hand from
the national rulebook, 2025 edition, 4.B.6.
"""

from __future__ import annotations

import pytest
from talk import Talk

STARTERS = ["Tom starts right", "Ana Ruiz started right", "Hale started right"]


def labels(talk: Talk) -> list[str]:
    return [one.label for one in talk.buttons if "start" in one.label]


def begin(talk: Talk, format: str = "to 11", *, serve: str = "we serve") -> str:
    talk.say(f"next: ruiz and hale, {format}")
    return talk.tap(serve)


def test_our_starter_is_the_agreed_one_and_both_of_theirs_are_offered(demo: Talk) -> None:
    """The demo's pair agreed that Mira serves first."""
    assert begin(demo) == "0-0-2. Mira serves from the right."
    assert labels(demo) == STARTERS


def test_without_an_agreement_both_of_ours_are_offered(fresh_anywhere: Talk) -> None:
    for line in ("/pair Mira and Tom", "/add Hale", "/add Ruiz"):
        fresh_anywhere.say(line)
    assert begin(fresh_anywhere) == "0-0-2. We serve from the right."
    assert labels(fresh_anywhere)[:2] == ["Mira starts right", "Tom starts right"]
    assert fresh_anywhere.tap("Tom starts right") == "0-0-2. Tom serves from the right."
    assert fresh_anywhere.tap("our rally") == "1-0-2. Tom serves from the left."


def test_a_match_named_all_through(demo: Talk) -> None:
    begin(demo)
    assert demo.tap("Hale started right") == "0-0-2. Mira serves from the right to Hale."
    told = [demo.tap(label) for label in ("our rally", "their rally", "their rally", "our rally")]
    assert told == [
        "1-0-2. Mira serves from the left to Ana Ruiz.",
        "0-1-1. Hale serves from the right to Tom.",
        "1-1-1. Hale serves from the left to Mira.",
        "1-1-2. Ana Ruiz serves from the right to Tom.",
    ]


def test_they_are_asked_for_only_at_the_start_of_a_game(demo: Talk) -> None:
    begin(demo)
    demo.tap("our rally")
    assert labels(demo) == []
    demo.say("undo")
    assert labels(demo) == STARTERS, "nothing was played: it may still be said"


def test_the_score_asked_for_offers_what_is_not_known_yet(demo: Talk) -> None:
    begin(demo)
    demo.tap("our rally")
    assert demo.say("what's the score") == "1-0-2. Mira serves from the left."
    assert labels(demo) == STARTERS
    assert demo.tap("Hale started right") == "1-0-2. Mira serves from the left to Ana Ruiz."


def test_a_slip_is_put_right_by_the_other_button_or_by_undo(demo: Talk) -> None:
    begin(demo, serve="they serve")
    assert demo.tap("Tom starts right").endswith("to Tom.")
    assert demo.tap("Mira starts right").endswith("to Mira.")
    assert demo.say("undo") == (
        "Taken back: who plays where.\n0-0-2. They serve from the right to Tom."
    )
    assert demo.tap("put it back").endswith("to Mira.")


def test_pressed_twice_it_is_one_line_of_the_log(demo: Talk) -> None:
    begin(demo)
    pressed = demo.button("Hale started right").payload
    demo.press(pressed)
    assert demo.press(pressed).startswith("Already counted.")
    match = demo.context.match
    assert match is not None
    with demo.book() as book:
        assert [one.kind for one in book.entries(match)] == ["game", "sides"]


def test_an_answer_that_comes_late_names_the_rest_of_the_game(demo: Talk) -> None:
    begin(demo)
    late = demo.button("Ana Ruiz started right").payload
    demo.tap("our rally")
    assert demo.press(late) == "1-0-2. Mira serves from the left to Hale."


def test_the_next_game_asks_anew_and_an_old_button_is_too_old(demo: Talk) -> None:
    begin(demo)
    old = demo.button("Hale started right").payload
    demo.press(old)
    for _ in range(11):
        reply = demo.tap("our rally")
    assert reply == "Game 1 ours, 11-0. Ends change.\nThey serve first next."
    before = demo.stored()
    demo.press(old)
    assert demo.stored() == before
    demo.say("what's the score")
    assert demo.tap("they serve first") == "Game 2. 0-0-2. They serve from the right to Mira."
    assert labels(demo) == STARTERS


def test_a_game_said_to_be_served_first_by_the_other_side(demo: Talk) -> None:
    begin(demo)
    for _ in range(11):
        demo.tap("our rally")
    assert [one.label for one in demo.buttons] == [
        "our rally",
        "their rally",
        "they serve first",
        "we serve first",
        "winner",
        "their miss",
        "forced",
        "undo",
    ]
    they = demo.button("they serve first").payload
    assert demo.tap("we serve first") == "Game 2. 0-0-2. Mira serves from the right."
    put_right = demo.press(they)
    assert put_right == "Game 2. 0-0-2. They serve from the right to Mira.", "a slip put right"
    demo.tap("their rally")
    assert "earlier" in demo.press(they), "a rally was played since"


def test_an_unanswered_question_keeps_to_the_rulebook(demo: Talk) -> None:
    """5.B, from memory: the side that did not serve the game before first serves this one."""
    begin(demo, serve="they serve")
    for _ in range(12):
        reply = demo.tap("our rally")
    assert reply.endswith("We serve first next.")
    assert demo.tap("our rally") == "1-0-2. Mira serves from the left."


def test_undo_goes_back_over_the_end_of_a_game_and_of_the_match(demo: Talk) -> None:
    begin(demo, "one game to 11")
    for _ in range(11):
        reply = demo.tap("our rally")
    assert reply.startswith("Won 11-0.")
    assert "10-0-2. Mira serves from the right." in demo.tap("undo")
    assert demo.tap("put it back").startswith("Put back")
    assert demo.context.match is None
    demo.say("undo")
    assert demo.say("undo").endswith("9-0-2. Mira serves from the left.")
    for _ in range(2):
        reply = demo.tap("our rally")
    assert reply.startswith("Won 11-0.")


def test_undo_over_the_end_of_a_game_tells_how_it_ended(demo: Talk) -> None:
    begin(demo)
    for _ in range(12):
        demo.tap("our rally")
    assert demo.say("undo") == (
        "Taken back: our rally.\nGame 1 ours, 11-0. Ends change.\nThey serve first next."
    )
    assert "10-0-2" in demo.say("undo")


def test_a_last_rally_played_otherwise_since_is_not_put_back(demo: Talk) -> None:
    begin(demo, "one game to 11")
    for _ in range(11):
        demo.tap("our rally")
    demo.tap("undo")
    put_back = demo.button("put it back").payload
    demo.tap("their rally")
    score = demo.tap("their rally")
    before = demo.stored()
    assert demo.press(put_back) == f"Too old to put back: you went on since then.\n{score}"
    assert demo.stored() == before
    assert demo.context.match is not None


def test_an_old_line_taken_back_leaves_a_finished_match_closed(demo: Talk) -> None:
    begin(demo, "one game to 11")
    demo.tap("Hale started right")
    old = demo.button("undo").payload
    for _ in range(11):
        demo.tap("our rally")
    assert demo.press(old) == "Taken back: who plays where."
    assert demo.context.match is None


def test_the_match_is_told_game_by_game(demo: Talk) -> None:
    begin(demo)
    for label in ["our rally"] * 11 + ["their rally"] * 11 + ["our rally"] * 11:
        reply = demo.tap(label)
    assert reply.startswith("Won 11-0 0-11 11-0.")


def test_ends_change_in_the_deciding_game(demo: Talk) -> None:
    """5.B: at 6 in a single game to 11."""
    begin(demo, "one game to 11")
    told = [demo.tap("our rally") for _ in range(7)]
    assert [("ends" in one) for one in told] == [False] * 5 + [True, False]


def test_a_rally_before_anybody_said_who_serves_says_what_it_took(demo: Talk) -> None:
    demo.say("next: ruiz and hale, to 11")
    assert demo.say("our point") == (
        "1-0-2. Mira serves from the left.\nI took it that we served first."
    )
    assert demo.tap("our rally") == "2-0-2. Mira serves from the right."


@pytest.mark.parametrize(
    ("said", "told"),
    [
        # One rally on from 1-0-2, so it is known who serves.
        ("2-0-2", "2-0-2. Mira serves from the right to Hale."),
        # A correction: either partner may serve, the courts follow from our 6.
        ("6-3-1", "6-3-1. We serve: Mira right, Tom left."),
        # At 0 nobody of theirs has moved: server 1 is who started right (4.B.6).
        ("they serve 0-4-1", "0-4-1. Hale serves from the right to Mira."),
    ],
)
def test_a_said_score_keeps_the_names_it_settles(demo: Talk, said: str, told: str) -> None:
    begin(demo)
    demo.tap("Hale started right")
    demo.tap("our rally")
    assert demo.say(said) == told


def test_rally_scoring_does_not_guess_who_stands_where_after_a_correction(demo: Talk) -> None:
    """Courts follow from who won which rally; a score alone does not tell."""
    begin(demo, "rally scoring to 21")
    demo.tap("Hale started right")
    assert demo.tap("our rally") == "1-0. Mira serves from the left to Ana Ruiz."
    assert demo.say("2-0") == "2-0. Mira serves from the right to Hale."
    assert demo.say("we serve 9-5") == (
        "9-5. We serve from the left.\nA score doesn't tell who stands where."
    )
    assert demo.tap("our rally") == "10-5. We serve from the right."
    assert demo.tap("their rally") == "6-10. They serve from the right."


def test_in_rally_scoring_whoever_scored_serves(demo: Talk) -> None:
    begin(demo, "rally scoring to 21")
    assert demo.say("they're up 1-0").startswith("1-0. They serve from the left")


def test_a_tap_tells_who_serves_where_the_score_left_it_open(demo: Talk) -> None:
    begin(demo)
    demo.tap("Hale started right")
    assert demo.say("6-3-1") == "6-3-1. We serve: Mira right, Tom left."
    stale = demo.button("Mira serves").payload
    # Our 6 is even, so Tom, who started left, serves from the left; their 3 is odd, so Hale,
    # who started right, is left too.
    assert demo.tap("Tom serves") == "6-3-1. Tom serves from the left to Hale."
    assert "earlier" in demo.press(stale)
    assert demo.tap("our rally") == "7-3-1. Tom serves from the right to Ana Ruiz."
    demo.say("undo")
    assert demo.say("undo").endswith("6-3-1. We serve: Mira right, Tom left.")


def test_in_rally_scoring_a_tap_tells_it_too(demo: Talk) -> None:
    begin(demo, "rally scoring to 21")
    demo.say("they serve 7-4")
    demo.say("we serve 9-5")
    assert demo.tap("Tom serves") == "9-5. Tom serves from the left."
    assert demo.tap("our rally") == "10-5. Tom serves from the right."
    # A point on our own serve swapped them: Tom is right now, and receives there.
    assert demo.tap("their rally") == "6-10. They serve from the right to Tom."


@pytest.mark.parametrize(
    ("said", "told"),
    [
        ("hale started right", "0-0-2. Mira serves from the right to Hale."),
        ("ok ruiz starts on the even side", "0-0-2. Mira serves from the right to Ana Ruiz."),
        ("hale started left", "0-0-2. Mira serves from the right to Ana Ruiz."),
        ("tom starts", "0-0-2. Tom serves from the right."),
        ("tom serves first this game", "0-0-2. Tom serves from the right."),
    ],
)
def test_who_started_in_words(demo: Talk, said: str, told: str) -> None:
    begin(demo)
    assert demo.say(said) == told
    assert demo.say("undo").endswith("0-0-2. Mira serves from the right.")


@pytest.mark.parametrize(
    "said", ["hale starts points with a lob", "hale right", "does hale start right?"]
)
def test_what_only_looks_like_a_starter_changes_no_score(demo: Talk, said: str) -> None:
    begin(demo)
    demo.say(said)
    assert demo.say("what's the score") == "0-0-2. Mira serves from the right."


def test_singles_name_the_one_opponent(demo: Talk) -> None:
    """One server a side; own score even, right; the receiver stands diagonally across."""
    assert demo.say("next: okafor, singles, one game to 11").splitlines()[0] == (
        "Next: Chidi Okafor, one game to 11, singles."
    )
    assert demo.tap("we serve") == "0-0. We serve from the right to Okafor."
    assert labels(demo) == []
    assert demo.tap("our rally") == "1-0. We serve from the left to Okafor."
    assert demo.tap("their rally") == "0-1. Okafor serves from the right."


def test_best_of_five_is_no_time_of_day(demo: Talk) -> None:
    assert demo.say("next: ruiz and hale, best of 5 to 11, cap 15").splitlines()[0] == (
        "Next: Ana Ruiz and Ben Hale, best of 5 to 11, cap 15."
    )


def test_names_that_are_too_long_for_a_line_give_way(fresh_anywhere: Talk) -> None:
    for line in (
        "/pair Bartholomew-Maximilian and Tom",
        "/add Featherstonehaugh-Cholmondeley",
        "/add Ruiz",
        "next: featherstonehaugh-cholmondeley and ruiz, to 11",
    ):
        fresh_anywhere.say(line)
    fresh_anywhere.tap("we serve")
    fresh_anywhere.tap("Bartholomew-Maximilian starts right")
    label = next(one.label for one in fresh_anywhere.buttons if one.label.startswith("Feather"))
    reply = fresh_anywhere.tap(label)
    assert reply == "0-0-2. Bartholomew-Maximilian serves from the right."


def test_a_player_taken_off_the_roster_is_not_named(demo: Talk) -> None:
    begin(demo)
    demo.tap("Hale started right")
    hale = demo.player("Ben Hale")
    with demo.book() as book:
        book.remove_player(hale)  # type: ignore[arg-type]
    assert demo.tap("our rally") == "1-0-2. Mira serves from the left to Ana Ruiz."
    assert demo.tap("our rally") == "2-0-2. Mira serves from the right."
