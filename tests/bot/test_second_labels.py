"""Two people file the same question alike: the ceiling for a topic reader, on the open voices."""

from __future__ import annotations

import json
from typing import Any

import pytest
from topic_examples import OPEN_VOICES, TESTS, VOICES

from knowledge.vocabulary import Topic

AGREEMENT = 0.99
"""Measured when the second labels were made: 99.5% of the open voices' 1,726 questions."""


def _rows(path: Any) -> list[dict[str, Any]]:
    return [json.loads(line) for line in path.read_text(encoding="utf-8").splitlines() if line]


def both_labels(voice: str) -> list[tuple[set[str], str]]:
    """Per question the first labels, and the second labeller's topic."""
    first = _rows(VOICES / f"{voice}.questions.jsonl")
    second = _rows(TESTS / "cases" / "second_labels" / f"{voice}.jsonl")
    assert [row["n"] for row in second] == list(range(1, len(first) + 1))
    return [
        ({one["topic"], *one.get("also", ())}, two["topic"])
        for one, two in zip(first, second, strict=True)
    ]


@pytest.mark.parametrize("voice", OPEN_VOICES)
def test_every_question_is_labelled_twice_with_topics_of_ours(voice: str) -> None:
    assert all(second in {*Topic} for _, second in both_labels(voice))


def test_the_labellers_agree_as_measured() -> None:
    pairs = [pair for voice in OPEN_VOICES for pair in both_labels(voice)]
    assert sum(second in first for first, second in pairs) / len(pairs) >= AGREEMENT
