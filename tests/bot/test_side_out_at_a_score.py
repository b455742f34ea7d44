"""A side-out told with the score it came at: the serve goes over.

Scores follow the 2025 rulebook's side-out scoring (only the serving side scores, and its number
comes first); how they are told is from memory.
"""

from __future__ import annotations

import pytest
from talk import Talk

OURS = "3-5-1, we serve"
THEIRS = "5-3-2, they serve"


@pytest.mark.parametrize(
    ("before", "said", "then"),
    [
        (OURS, "4-5 side out", "5-4-1. They serve."),
        (OURS, "5-4 side out", "5-4-1. They serve."),
        (OURS, "4-5-2 side out", "5-4-1. They serve."),
        (OURS, "side out, 5-4-1", "5-4-1. They serve."),
        (OURS, "5 5 s/o", "5-5-1. They serve."),
        (THEIRS, "6-3 side out", "3-6-1. We serve"),
        (THEIRS, "side out at 3-5", "3-5-1."),
    ],
)
def test_the_serve_changes_and_only_the_serving_side_has_scored(
    demo: Talk, before: str, said: str, then: str
) -> None:
    demo.say("next: ruiz and hale")
    demo.say(before)
    assert demo.say(said).startswith(then)


@pytest.mark.parametrize(("before", "said"), [(OURS, "3-6 side out"), (OURS, "1-2 side out")])
def test_who_serves_is_asked_where_the_numbers_fit_neither_way(
    demo: Talk, before: str, said: str
) -> None:
    """From 3-5, with us serving, they can't have scored; nor can points go away."""
    demo.say("next: ruiz and hale")
    demo.say(before)
    stored = demo.stored()
    assert demo.say(said).endswith("who serves?")
    assert demo.stored() == stored


def test_a_side_out_past_the_end_of_a_game_is_questioned(demo: Talk) -> None:
    demo.say("next: ruiz and hale")
    demo.say(OURS)
    stored = demo.stored()
    assert "Not stored" in demo.say("14-5 side out")
    assert demo.stored() == stored


def test_of_rallies_without_a_known_server_it_is_asked_too(demo: Talk) -> None:
    demo.say("next: ruiz and hale")
    assert demo.say("4-5 side out") == "4-5: who serves?"


@pytest.mark.parametrize(
    ("said", "then"),
    [
        ("twelve thirteen us side out", "12-13-1. They serve."),
        ("13-12 us side out", "13-12-1. We serve"),
        ("side out 12-13 us", "12-13-1. They serve."),
    ],
)
def test_after_a_side_out_the_first_server_serves_whatever_stood_before(
    demo: Talk, said: str, then: str
) -> None:
    """The first point's one server is the second (4.B from memory), every later side-out's not."""
    demo.say("next: ruiz and hale to 15")
    demo.say("they serve")
    assert demo.say(said).startswith(then)


def test_points_told_by_side_go_over_from_the_server_that_scored(demo: Talk) -> None:
    demo.say("next: ruiz and hale to 15")
    demo.say(THEIRS)
    assert demo.say("6-3 them side out").startswith("3-6-1. We serve")


@pytest.mark.parametrize(
    ("before", "said", "then"),
    [
        ("6-6 they serve", "6-9 fkkk", "9-6-1. They serve"),
        ("6-6 they serve", "6-7", "7-6-1. They serve"),
        ("6-6 they serve", "9-6", "9-6-1. They serve"),
        ("0-0 they serve", "0-4", "4-0-2. They serve"),
        ("6-6 we serve", "9-6", "9-6-1. We serve"),
    ],
)
def test_from_a_level_score_only_who_served_has_risen(
    demo: Talk, before: str, said: str, then: str
) -> None:
    demo.say("next: ruiz and hale")
    demo.say(before)
    assert demo.say(said).startswith(then)


@pytest.mark.parametrize(
    ("serve", "said", "then"),
    [
        (
            "they serve",
            "side out lindq netted it",
            "0-0-1. Mira serves from the right.\nNoted: Lind",
        ),
        (
            "they serve",
            "side out, okaf dinked long",
            "0-0-1. Mira serves from the right.\nNoted: Okaf",
        ),
        ("they serve", "side out okafor long", "0-0-1. Mira serves from the right.\nNoted: Okafor"),
        (
            "they serve",
            "sideout. we hit a winner",
            "0-0-1. Mira serves from the right.\nNoted: our",
        ),
        ("we serve", "side out tom dumped the third", "0-0-1. They serve from the right"),
        ("we serve", "lost serve, lindqvist hit a winner", "0-0-1. They serve from the right"),
    ],
)
def test_whoever_lost_the_rally_lost_the_serve(
    demo: Talk, serve: str, said: str, then: str
) -> None:
    demo.say("next okafor lindqvist 10:40")
    demo.say(serve)
    assert demo.say(said).startswith(then)
    demo.say("undo")
    assert demo.say("score?").startswith("0-0-2.")


def test_a_side_out_that_takes_more_than_one_rally_goes_over_all_the_same(demo: Talk) -> None:
    demo.say("next okafor lindqvist 10:40")
    demo.say("3-2-1 we serve")
    assert demo.say("side out, tom netted it").startswith("2-3-1. They serve")


@pytest.mark.parametrize(
    ("serve", "said", "then"),
    [
        ("they serve", "side out", "0-0-1. Mira serves"),
        ("they serve", "side out to us", "0-0-1. Mira serves"),
        ("we serve", "side out lindqvist", "0-0-1. They serve"),
        ("we serve", "side out, okafor serves", "0-0-1. They serve"),
    ],
)
def test_the_name_behind_a_side_out_is_whose_serve_it_is(
    demo: Talk, serve: str, said: str, then: str
) -> None:
    demo.say("next okafor lindqvist 10:40")
    demo.say(serve)
    reply = demo.say(said)
    assert reply.startswith(then)
    assert "Noted" not in reply


@pytest.mark.parametrize(
    ("before", "said", "then"),
    [
        ("they serve", "we r 0-0-1", "0-0-1. Mira serves"),
        ("they serve", "0-0-1", "0-0-1. Mira serves"),
        ("0-1-1 they serve", "they got 1. 1-1-1", "1-1-1. They serve"),
        ("0-1-1 they serve", "1-1-1", "1-1-1. They serve"),
        ("0-1-2 they serve", "1-1-1", "1-1-1. We serve"),
        ("3-3-1 we serve", "they're 3-3-2", "3-3-2. They serve"),
        ("3-3-1 we serve", "3-3-2", "3-3-2. We serve"),
        ("3-3-2 we serve", "3-3-1", "3-3-1. They serve"),
    ],
)
def test_a_level_call_is_whose_it_can_be(demo: Talk, before: str, said: str, then: str) -> None:
    demo.say("next okafor lindqvist 10:40")
    demo.say("they serve")
    demo.say(before)
    assert demo.say(said).startswith(then)


@pytest.mark.parametrize(
    ("said", "then"),
    [
        ("they got 1. 0-1-1", "1-0-1. They serve"),
        ("they scored, 1-0-1", "1-0-1. They serve"),
        ("they got a point 1-0-2", "1-0-2. They serve"),
        ("we got one. 1-0-2", "1-0-2. Mira serves"),
    ],
)
def test_whoever_scored_serves(demo: Talk, said: str, then: str) -> None:
    demo.say("next okafor lindqvist 10:40")
    demo.say("we serve")
    assert demo.say(said).startswith(then)


def test_a_number_that_is_the_scores_is_no_point(demo: Talk) -> None:
    demo.say("next okafor lindqvist 10:40")
    demo.say("2-2-1 we serve")
    assert demo.say("we got 3-2-1").startswith("3-2-1. We serve")


def test_points_told_with_the_score_that_stands_are_counted(demo: Talk) -> None:
    demo.say("next okafor lindqvist 10:40")
    demo.say("1-0-1 they serve")
    assert demo.say("they got 1. 1-0-1").startswith("That's how I have it.")
