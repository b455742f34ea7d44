"""What the last answer would be without a note; the note stays. Wordings: our own, no source."""

from __future__ import annotations

import pytest
from talk import Talk


@pytest.fixture
def noted(fresh: Talk) -> Talk:
    for text in (
        "next: soll and quist",
        "yes",
        "soll jams at the right hip",
        "quist has slow feet",
        "where do i speed up",
    ):
        fresh.say(text)
    return fresh


@pytest.mark.parametrize(
    "text",
    [
        "and without that note?",
        "without the jam note",
        "what would you change if i took away the body note on soll",
        "what would you say without my note on soll",
    ],
)
def test_the_call_without_it_is_another_and_it_stays(noted: Talk, text: str) -> None:
    before = noted.stored()
    told = noted.say(text)
    assert "right hip" not in told.splitlines()[0]
    assert "without “soll jams at the right hip”. The note stays." in told
    assert "never the head" in told
    assert noted.stored() == before
    assert noted.say("where do i speed up").startswith("Speed up at Soll's right hip.")


def test_a_note_that_changes_nothing_is_said_to(noted: Talk) -> None:
    told = noted.say("and without the slow note?").splitlines()
    assert told[0] == "Speed up at Soll's right hip."
    assert told[-1] == "The same call without “quist has slow feet”."


@pytest.mark.parametrize("text", ["ignore that note", "share the plan without the notes"])
def test_taking_one_away_or_a_plan_without_is_another_wish(noted: Talk, text: str) -> None:
    assert "The note stays" not in noted.say(text)
