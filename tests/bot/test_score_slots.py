"""What questions about the score settle beside their topic: cases, and that nothing typed fails."""

from __future__ import annotations

import tomllib
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from voices import EVENING

from bot.chat.message import read_message
from bot.chat.said import Question, SaidScore, ScoreSaid, Slots
from bot.chat.slots import find_slots
from bot.chat.understand import understand
from knowledge.vocabulary import Topic

CASES = tomllib.loads(
    (Path(__file__).parent.parent / "cases" / "score_slots.toml").read_text("utf-8")
)["said"]

OF_FORMAT = ("target", "best_of", "scoring", "discipline")
OF_SCORE = ("ours", "theirs", "server", "we_serve")


def slots_of(text: str) -> Slots:
    message = read_message(text, EVENING)
    return find_slots(message.said, message.mentions, message.told)


def value_of(slots: Slots, key: str, *, bare: bool) -> Any:
    if key in OF_FORMAT:
        return getattr(slots.format_said, key, None)
    if key == "call":
        return str(slots.score.call) if slots.score else None
    if key in OF_SCORE:
        return score_part(slots.score, key, bare=bare)
    return getattr(slots, key)


def score_part(score: SaidScore | None, key: str, *, bare: bool) -> Any:
    """Ours and theirs as named; a `bare` call's first number as ours."""
    if score is not None and bare and score.call is not None and key in ("ours", "theirs"):
        return score.call.serving if key == "ours" else score.call.receiving
    return getattr(score, key, None)


@pytest.mark.parametrize("case", CASES, ids=lambda case: case["text"])
def test_case(case: dict[str, Any]) -> None:
    slots = slots_of(case["text"])
    for key, wanted in case.items():
        if key in ("text", "unsaid", "bare"):
            continue
        got = value_of(slots, key, bare=case.get("bare", False))
        assert (list(got) if isinstance(got, tuple) else got) == wanted, key
    for key in case.get("unsaid", ()):
        assert value_of(slots, key, bare=False) is None, key


def test_every_kind_of_slot_has_a_case_that_sets_it_and_one_that_does_not() -> None:
    said = [slots_of(case["text"]) for case in CASES]
    for key in (
        "lost_in_a_row", "timeouts_left", "tired", "hot", "has_change", "toss_won", "they_chose",
        "background", "sun", "wind", "games", "format_said", "score",
    ):  # fmt: skip
        assert {getattr(one, key) is None for one in said} == {True, False}, key


def test_a_time_out_weighed_beside_a_score_is_a_question() -> None:
    said = understand("one timeout left, 7-9, use it", chat=EVENING)
    assert isinstance(said[0], Question)
    assert said[0].topic is Topic.TIMEOUT_NOW
    assert isinstance(understand("we called a timeout at 7-9", chat=EVENING)[0], ScoreSaid)


WORDS = st.sampled_from(
    [
        "we",
        "they",
        "won",
        "lost",
        "the",
        "first",
        "game",
        "one",
        "two",
        "all",
        "time-out",
        "left",
        "9-8-2",
        "42%",
        "on",
        "serve",
        "in",
        "a",
        "row",
        "to",
        "11",
        "cap",
        "15",
        "both",
        "last",
        "run",
        "of",
        "toss",
        "wind",
        "hot",
        "gassed",
        "no",
        "up",
        "down",
        "5",
        "0",
        "-3",
        "best",
        "singles",
        "rally",
    ]
)


@given(st.lists(WORDS, max_size=14).map(" ".join))
def test_no_order_of_these_words_makes_it_fail(text: str) -> None:
    slots = slots_of(text)
    assert slots.lost_in_a_row is None or slots.lost_in_a_row >= 0
    assert slots.games is None or min(slots.games) >= 0
