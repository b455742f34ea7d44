"""Points whose server is not told: they stand, ours first, and who serves is asked beside them.

Only the serving side scores (2025 rulebook, side-out scoring), so where both sides have scored
since the last score, either may serve now.
"""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from coach_talks import coach_at_a_match
from talk import Talk


@pytest.fixture
def match() -> Iterator[Talk]:
    talk = coach_at_a_match()
    yield talk
    talk.store.close()


@pytest.mark.parametrize(
    ("before", "said", "points"),
    [
        ((), "3-1 up", "3-1"),
        ((), "we have 5", "5-0"),
        ((), "down 2-4", "2-4"),
        (("3-1 up",), "now 4-5", "4-5"),
        (("they serve", "0-3"), "2-6", "2-6"),
        (("they serve", "0-3"), "0-5", "0-5"),
        (("we serve", "4-2"), "6-9", "6-9"),
        (("we serve", "4-2", "6-9"), "7-10, noor keeps popping up", "7-10"),
    ],
)
def test_who_serves_is_asked_where_nothing_tells_it(
    match: Talk, before: tuple[str, ...], said: str, points: str
) -> None:
    for text in before:
        match.say(text)
    assert match.say(said).startswith(f"{points}, ours first. Who serves?")
    assert match.say("score?").startswith(f"{points}, ours first. Who serves?"), "nobody has said"
    ours, theirs = points.split("-")
    assert match.tap("they serve").startswith(f"{theirs}-{ours}-1. They serve")


@pytest.mark.parametrize(
    ("before", "said", "stands"),
    [
        (("we serve", "4-2"), "6-2", "6-2-2. We serve."),
        (("we serve", "4-2"), "4-5 they serve", "5-4-1. They serve"),
        (("we serve", "4-2"), "6-5-1", "6-5-1. We serve."),
        (("they serve",), "0-3", "3-0-2. They serve."),
        (("we serve",), "8-2 then 8-6, lost 4 in a row, we serve", "8-6-"),
    ],
)
def test_who_serves_is_not_asked_where_it_is_told(
    match: Talk, before: tuple[str, ...], said: str, stands: str
) -> None:
    for text in before:
        match.say(text)
    assert match.say(said).startswith(stands)


def test_a_typed_answer_sets_the_serve_and_rallies_count_on(match: Talk) -> None:
    match.say("3-1 up")
    assert match.say("they do").startswith("1-3-1. They serve")
    assert match.say("their point").startswith("2-3-1. They serve")


@pytest.mark.parametrize(
    ("said", "points"),
    [
        ("7-10, noor keeps popping up", "7-10"),
        ("7-10, ilka looks tired", "7-10"),
        ("7-10, we want it too much", "7-10"),
    ],
)
def test_what_one_of_us_does_beside_a_score_owns_no_number(
    match: Talk, said: str, points: str
) -> None:
    """The larger number had become ours, and a game nearly lost a game point."""
    for text in ("we serve", "4-2", "6-9"):
        match.say(text)
    assert match.say(said).startswith(points)


def test_a_game_told_as_it_went_ends_nothing(match: Talk) -> None:
    match.say("we serve")
    assert match.say("8-2 then 8-6, lost 4 in a row").startswith("6-8-1. They serve")
    assert match.say("we were 8-2 up now its 8-9").startswith("8-9")
