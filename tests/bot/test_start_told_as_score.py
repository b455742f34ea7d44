"""A game that begins with a score without its server begins at 0-0-2.

Official Rulebook 2025, 4.B (the paragraph from memory): who serves first in a game has one
server, the second (side-out scoring).
"""

from __future__ import annotations

import pytest
from talk import Talk


@pytest.mark.parametrize(
    ("said", "then"),
    [
        ("we serve 0 0", "0-0-2. Mira serves from the right."),
        ("they serve 0-0", "0-0-2. They serve from the right to Mira."),
        ("its 0-0, our serve", "0-0-2. Mira serves from the right."),
        ("they serve first, 0-0", "0-0-2. They serve from the right to Mira."),
        ("we served first, score 0-0-2", "0-0-2. Mira serves from the right."),
    ],
)
def test_a_match_begins_with_one_server(demo: Talk, said: str, then: str) -> None:
    demo.say("next: okafor and lindqvist")
    assert demo.say(said).splitlines()[0] == then
    assert demo.say("their rally" if "we" in said or "our" in said else "our rally").startswith(
        "0-0-1."
    )


@pytest.mark.parametrize(
    ("said", "call"), [("0-0-1 they serve", "0-0-1."), ("1-0 us", "1-0, ours first. Who serves?")]
)
def test_a_server_told_and_a_later_score_stay(demo: Talk, said: str, call: str) -> None:
    demo.say("next: okafor and lindqvist")
    assert demo.say(said).startswith(call)


def test_a_side_out_at_nothing_all_is_the_first_server(demo: Talk) -> None:
    for line in ("next: okafor and lindqvist", "we serve 0 0", "side out"):
        demo.say(line)
    assert demo.say("0-0 they serve").startswith("0-0-1.")


@pytest.mark.parametrize(
    ("said", "then"),
    [
        ("they serve tom starts right", "0-0-2. They serve from the right to Tom."),
        ("tom starts right, they serve", "0-0-2. They serve from the right to Tom."),
        ("we serve and mira starts left", "0-0-2. Tom serves from the right."),
        (
            "we serve, mira starts right and hale starts left",
            "0-0-2. Mira serves from the right to Ana Ruiz.",
        ),
        ("hale starts right and they serve first", "0-0-2. Hale serves from the right"),
    ],
)
def test_who_serves_and_who_starts_where_in_one_message(demo: Talk, said: str, then: str) -> None:
    demo.say("next: ruiz and hale to 15")
    assert demo.say(said).startswith(then)
    assert not demo.notes(limit=1) or demo.notes(limit=1)[0].text != said


def test_what_else_is_told_beside_a_start_is_no_opening(demo: Talk) -> None:
    demo.say("next: ruiz and hale to 15")
    before = demo.stored()["entry"]
    demo.say("they serve tom starts well")
    assert demo.stored()["entry"] == before


@pytest.mark.parametrize(
    ("said", "then"),
    [
        ("we serve first to zero zero two", "0-0-2. Mira serves from the right."),
        ("they serve first to zero zero two", "0-0-2. They serve from the right to Mira."),
    ],
)
def test_first_to_zero_zero_is_no_game_to_nothing(demo: Talk, said: str, then: str) -> None:
    demo.say("next: okafor and lindqvist")
    assert demo.say(said).splitlines()[0] == then


def test_first_to_a_number_still_is_the_games_length(demo: Talk) -> None:
    demo.say("next: okafor and lindqvist")
    assert "at least 1, not 0" in demo.say("first to zero")


def test_in_rally_scoring_who_serves_first_is_no_server_number(demo: Talk) -> None:
    demo.say("next: ruiz and hale, rally to 21 win by 2")
    assert demo.say("they serve first, 0-0").startswith("0-0. They serve")


def test_in_rally_scoring_a_serve_is_aimed_while_they_serve(demo: Talk) -> None:
    """The serve goes over with a point there, so that the score does not fit the question."""
    demo.say("next: ruiz and hale, rally to 21 win by 2")
    demo.say("our point")
    assert demo.say("where do i return hale's serve").startswith("Return")
    demo.say("their point")
    assert demo.say("where do i serve hale").startswith("Serve")
