"""The evaluation sets are as large and as spread as they were agreed to be.

Only labels are counted here, of the unread voices too: no text is looked at.
"""

from __future__ import annotations

import json
from collections import Counter
from typing import Any

from topic_examples import OPEN_VOICES, SECOND_LABELS, VOICES, voice_examples

from knowledge.vocabulary import Topic


def _rows(kind: str) -> list[dict[str, Any]]:
    return [
        json.loads(line)
        for path in sorted(VOICES.glob(f"*.{kind}.jsonl"))
        for line in path.read_text(encoding="utf-8").splitlines()
        if line.strip()
    ]


def test_eight_voices_asked_fifty_questions_or_more_of_every_topic() -> None:
    asked = Counter(row["topic"] for row in _rows("questions"))
    assert len(list(VOICES.glob("*.questions.jsonl"))) >= 8
    assert set(asked) == set(Topic)
    assert min(asked.values()) >= 50


def test_notes_scores_and_names_are_as_many_as_agreed() -> None:
    names = _rows("names")
    assert len(_rows("notes")) >= 400
    assert len(_rows("scores")) >= 150
    assert len(names) >= 300
    assert sum(row["right"] is None for row in names) >= 100


def test_where_the_labels_differ_a_question_carries_both_topics() -> None:
    differing = 0
    for voice in OPEN_VOICES:
        second = (SECOND_LABELS / f"{voice}.jsonl").read_text(encoding="utf-8").splitlines()
        for example, line in zip(voice_examples(voice), second, strict=True):
            topic = Topic(json.loads(line)["topic"])
            assert topic in example.right
            differing += topic is not example.topic
    assert differing > 0
