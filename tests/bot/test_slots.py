"""What a question settles beside its topic."""

from __future__ import annotations

from enum import StrEnum
from typing import Any

import pytest
from voices import EVENING

from bot.chat.forms import branches, patterns, word_set
from bot.chat.names import find_mentions
from bot.chat.question import Slots
from bot.chat.slots import find_slots
from bot.chat.words import words
from knowledge.game import GameFormat, Scoring
from knowledge.situation import Wind
from knowledge.vocabulary import BallKind, BallQuality, Hand, Side, Wing


def slots(text: str) -> Slots:
    said = words(text)
    return find_slots(said, find_mentions(said, EVENING))


@pytest.mark.parametrize(
    ("text", "slot", "value"),
    [
        ("dink to her backhand", "wing", Wing.BACKHAND),
        ("dink to her bh", "wing", Wing.BACKHAND),
        ("forehand or backhand", "wing", None),
        ("he is a lefty", "hand", Hand.LEFT),
        ("I got pulled wide, where do I dink", "ball", BallQuality.STRETCHED),
        ("it sits up, where do I hit it", "ball", BallQuality.EASY),
        ("where do I dink", "ball", None),
        ("who takes the lob in the middle", "ball_kind", BallKind.LOB),
        ("who takes a drive down the middle", "ball_kind", BallKind.DRIVE),
        ("who takes the speed up", "ball_kind", BallKind.SPEED_UP),
        ("she is on the left side", "side", Side.LEFT),
        ("do I play the left side or the right side", "side", None),
        ("wind at our backs", "wind", Wind.BEHIND_US),
        ("into the wind", "wind", Wind.AGAINST_US),
        ("it is windy", "wind", Wind.SOME),
        ("sun in my eyes", "sun", True),
        ("indoors today", "sun", False),
        ("we're serving", "serving", True),
        ("they're serving, where do I stand", "serving", False),
        ("game to 15", "format", GameFormat(target=15)),
        ("rally scoring to 21", "format", GameFormat(target=21, scoring=Scoring.RALLY)),
        ("where do I stand", "format", None),
    ],
)
def test_slot(text: str, slot: str, value: Any) -> None:
    assert getattr(slots(text), slot) == value


def test_the_score_in_a_question_is_a_slot() -> None:
    score = slots("we're up 10-8-2 receiving, where do I stand").score
    assert score is not None
    assert (score.ours, score.theirs, score.server, score.we_serve) == (10, 8, 2, False)


@pytest.mark.parametrize(
    ("key", "kind"),
    [("wing", Wing), ("hand", Hand), ("ball", BallQuality), ("kind", BallKind), ("side", Side)],
)
def test_the_file_names_only_values_that_exist(key: str, kind: type[StrEnum]) -> None:
    assert set(branches(key)) <= {member.value for member in kind}


def test_every_listed_form_finds_itself() -> None:
    """A plain phrase of the file is found by the slot it is listed under."""
    for key, slot in (("wing", "wing"), ("ball", "ball"), ("wind", "wind")):
        for branch in branches(key):
            for form in patterns(f"{key}.{branch}"):
                if form.replace(" ", "").isalpha():
                    assert getattr(slots(form), slot) is not None, form


def test_words_are_folded() -> None:
    assert all(word == word.lower() for word in word_set("small"))
