"""A score that is only supposed: ours first whatever stands, told whose, and never stored."""

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


STANDS = ["we serve 5-5-2", "they serve 5-5-1", "9-3-1 they serve", "we serve 2-8-1", "20-17"]


@pytest.mark.parametrize("stands", STANDS)
@pytest.mark.parametrize(
    ("said", "whose"),
    [
        ("win chance 3-9", "we 3, they 9"),
        ("win chance 9-3", "we 9, they 3"),
        ("whats our chance at 9-3-2", "At 9-3-2, we serve: we 9, they 3"),
        ("win chance at 9-3, they serve", "At 3-9-1, they serve: we 9, they 3"),
        ("win chance if theyre up 9-3", "we 3, they 9"),
    ],
)
def test_the_same_words_ask_of_the_same_score(
    match: Talk, stands: str, said: str, whose: str
) -> None:
    match.say(stands)
    assert whose in match.say(said)


def test_the_very_call_that_stands_is_no_other_score(match: Talk) -> None:
    match.say("9-3-1 they serve")
    assert "we 3, they 9" in match.say("win chance 9-3-1")


def test_a_score_told_with_the_question_is_the_one_that_stands_now(match: Talk) -> None:
    match.say("they serve 8-3-1")
    said = match.say("9-3-1 whats our chance")
    assert "9-3-1. They serve" in said
    assert "1 in 10" in said.splitlines()[0]


def test_where_no_order_can_follow_ours_comes_first(match: Talk) -> None:
    match.say("they serve 5-5-1")
    assert "we 2, they 4" in match.say("risk at 2-4")


@pytest.mark.parametrize("first", ["8-8-2", "win chance"])
@pytest.mark.parametrize(
    ("said", "whose"),
    [
        ("and at 3-9", "we 3, they 9"),
        ("or at 9-3", "we 9, they 3"),
        ("and at nine three", "we 9, they 3"),
        ("what about 3-9", "we 3, they 9"),
        ("how about at 10-9", "we 10, they 9"),
        ("same at 9-3 us serving", "At 9-3-1, we serve: we 9, they 3"),
        ("and at 9-3 receiving", "At 3-9-1, they serve: we 9, they 3"),
        ("and when its 3-9", "we 3, they 9"),
        ("what if 9-3 up", "we 9, they 3"),
        ("suppose 3-9", "we 3, they 9"),
        ("and at 8 all", "At 8-8"),
    ],
)
def test_another_score_is_asked_about_and_not_stored(
    match: Talk, first: str, said: str, whose: str
) -> None:
    match.say("we serve 8-8-2")
    match.say(first)
    stored = match.stored()
    assert whose in match.say(said)
    assert match.stored() == stored


@pytest.mark.parametrize("said", ["and at 3-9", "what if 3-9", "what about 3-9"])
def test_with_nothing_asked_before_it_asks_for_our_chances(demo: Talk, said: str) -> None:
    assert "At 3-9-1, we serve: we 3, they 9" in demo.say(said)


def test_the_score_stays_told_where_it_changes_nothing(match: Talk) -> None:
    match.say("we serve 7-5-1")
    match.say("win chance 9-3")
    assert "we 9, they 3" in match.say("and at 9-3")


@pytest.mark.parametrize(
    ("said", "stands"),
    [
        ("at 8-5", "8-5-1. We serve"),
        ("ok at 8-5", "8-5-1. We serve"),
        ("and now 8-5", "8-5-1. We serve"),
        ("and 8-5-2", "8-5-2. We serve"),
        ("and we're up 8-5", "8-5-1. We serve"),
        ("so 8-5", "8-5-1. We serve"),
    ],
)
def test_how_it_stands_is_told_as_before(match: Talk, said: str, stands: str) -> None:
    match.say("we serve 7-5-1")
    match.say("win chance")
    assert match.say(said).startswith(stands)


@pytest.mark.parametrize(
    ("asked", "at"),
    [
        ("how risky should i be at 6-3", "At 3-6-1, they serve: we 6, they 3."),
        ("how risky should i be at 3-6", "At 3-6-1, they serve"),
        ("how risky should i be at 8-3", "At 8-3-1, we serve"),
    ],
)
def test_the_score_as_it_stands_keeps_its_serve(demo: Talk, asked: str, at: str) -> None:
    demo.say("next: okafor and lindqvist")
    demo.say("3-6-1 they serve")
    assert at in demo.say(asked)


@pytest.mark.parametrize(
    "said",
    [
        "9-10-2 their serve, whats our chance",
        "0-0-2 we serve, how likely do we win to 11",
        "we're 8-8-1, they serve, win chance?",
        "at 10-10 receiving what chance to win",
    ],
)
def test_before_a_match_has_begun_a_score_asked_with_is_not_its_score(
    fresh: Talk, said: str
) -> None:
    fresh.say("next: Halvard and Brekken, to 11")
    fresh.say("yes")
    stored = fresh.stored()
    assert fresh.say(said).startswith("Game: ")
    assert fresh.stored() == stored


def test_who_has_begun_without_counting_keeps_it_with_a_tap(fresh: Talk) -> None:
    fresh.say("next: Halvard and Brekken, to 11")
    fresh.say("yes")
    fresh.say("9-10-2 their serve, whats our chance")
    assert fresh.tap("they serve at 9-10-2").startswith("9-10-2. They serve")


@pytest.mark.parametrize(
    ("said", "is_told"),
    [
        ("at 10-10 receiving what chance to win", False),
        ("what chance to win from 9-6 with us serving", False),
        ("we're at 10-10 receiving what chance to win", True),
        ("9-6-1 whats our chance", True),
    ],
)
def test_a_score_after_a_bare_at_is_only_asked_about(
    match: Talk, said: str, *, is_told: bool
) -> None:
    match.say("we serve 9-5-1")
    stored = match.stored()
    match.say(said)
    assert (match.stored() != stored) is is_told
