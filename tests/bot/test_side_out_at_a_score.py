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
