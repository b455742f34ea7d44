"""A rally more or less, and who serves, supposed in a few words of the score asked about."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from coach_talks import coach_at_a_match
from talk import Talk

from bot.chat.rally_supposed import SupposedRally, rally_supposed


@pytest.fixture
def match() -> Iterator[Talk]:
    talk = coach_at_a_match()
    talk.say("we serve 10-9-2")
    yield talk
    talk.store.close()


LOST = "At 9-10-1, they serve: we 10, they 9"


@pytest.mark.parametrize(
    ("said", "at"),
    [
        ("and if we drop it?", LOST),
        ("and if we lose it", LOST),
        ("and if they win this one", LOST),
        ("what if they score", LOST),
        ("or if we lose", LOST),
        ("and after a loss", LOST),
        ("what if we drop the serve", LOST),
        ("win chance if we lose this rally", LOST),
        ("what are our chances if they get this point", LOST),
        ("and if we win it", "That game is ours, 11-9"),
        ("win chance at 5-5-2 if we lose it", "At 5-5-1, they serve"),
    ],
)
@pytest.mark.parametrize(
    "first", ["10-9-2", "win chance", "win chance at 8-8-2\n10-9-2 us serving"]
)
def test_the_rally_is_supposed_and_not_counted(match: Talk, first: str, said: str, at: str) -> None:
    for text in first.split("\n"):
        match.say(text)
    stored = match.stored()
    assert at in match.say(said)
    assert match.stored() == stored


def test_two_in_a_row_are_the_same_rally(match: Talk) -> None:
    match.say("win chance at 8-8-2")
    match.say("and if we lose it")
    assert "At 9-8-2, we serve" in match.say("and if we win it")
    assert "At 8-8-2, we serve" in match.say("and at 8-8-2")


@pytest.mark.parametrize(
    ("said", "at"),
    [
        ("same receiving", "At 8-8-1, they serve"),
        ("same but receiving", "At 8-8-1, they serve"),
        ("and on the return", "At 8-8-1, they serve"),
        ("same on their serve", "At 8-8-1, they serve"),
        ("what about receiving", "At 8-8-1, they serve"),
        ("how about they serve", "At 8-8-1, they serve"),
    ],
)
def test_who_serves_is_supposed_in_a_word(match: Talk, said: str, at: str) -> None:
    match.say("win chance at 8-8-2")
    stored = match.stored()
    assert at in match.say(said)
    assert match.stored() == stored


@pytest.mark.parametrize(
    ("said", "stands"), [("lost it", "9-10-1. They"), ("we lost that one", "9-10-1. They")]
)
def test_a_rally_told_counts_as_before(match: Talk, said: str, stands: str) -> None:
    match.say("win chance")
    assert match.say(said).startswith(stands)


def test_a_shot_missed_is_no_rally_of_the_score(match: Talk) -> None:
    match.say("where do i dink petra")
    assert "serve" not in match.say("and if i miss?")


@pytest.mark.parametrize(
    "said",
    [
        "should we take a time out",
        "should we take a timeout and who do we serve to",
        "should we take a break",
        "should we take the break now",
        "when we take a time out does it help",
    ],
)
def test_a_break_that_is_taken_is_no_rally(match: Talk, said: str) -> None:
    match.say("they serve 9-8-1")
    answered = match.say(said)
    assert "At " not in answered or "At 9-8-1" in answered
    line = said.replace("time out", "timeout")
    assert rally_supposed(line) is rally_supposed(said) is None


@pytest.mark.parametrize(
    ("said", "how"),
    [
        ("if we take a rally", SupposedRally.WON),
        ("if we take one more", SupposedRally.WON),
        ("if they take this one", SupposedRally.LOST),
        ("if we lose the serve", SupposedRally.SIDE_OUT),
    ],
)
def test_a_rally_that_is_taken_is_one(said: str, how: SupposedRally) -> None:
    assert rally_supposed(said) is how
