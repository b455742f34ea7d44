"""Questions that look like notes: a fresh model, and both sides told apart on unread voices."""

from __future__ import annotations

import numpy as np
import pytest
from asks_training import HARD_KINDS
from claim_examples import sources_digest as notes_digest
from line_writers import ONLY_SCORED, digest_of, lines_of
from note_scores import OPEN_NOTE_VOICES, notes_of
from talk import Talk
from topic_examples import OPEN_VOICES, lines_digest, utterance_of, voice_examples

from bot.chat.asks_model import ASKS_FROM, the_asks_model

RETRAIN = "run: python tests/train/train_asks.py"


def test_it_was_trained_on_the_lines_and_notes_as_they_are() -> None:
    recipe = the_asks_model().recipe
    sources = (recipe["lines"], recipe["notes"], recipe["hard"])
    assert sources == (lines_digest(), notes_digest(), digest_of(*HARD_KINDS)), RETRAIN


def test_questions_and_notes_of_voices_it_has_not_read_are_told_apart() -> None:
    score = the_asks_model().score
    asked = [score(utterance_of(one.text)) for v in OPEN_VOICES for one in voice_examples(v)]
    told = [score(utterance_of(note["text"])) for v in OPEN_NOTE_VOICES for note in notes_of(v)]
    assert np.mean(np.array(asked) >= ASKS_FROM) >= 0.93
    assert np.mean(np.array(told) >= ASKS_FROM) <= 0.025


def test_hard_lines_of_writers_it_has_not_read_are_told_apart() -> None:
    """They were asked for what looks like the other side; recorded, no goal."""
    score = the_asks_model().score
    asked, noted, scored = (
        np.mean([score(utterance_of(row["text"])) >= ASKS_FROM for row in lines])
        for lines in (
            [row for writer in ONLY_SCORED for row in lines_of(writer, kind)]
            for kind in ("asked", "noted", "scores")
        )
    )
    assert asked >= 0.65
    assert noted <= 0.09
    assert scored <= 0.2


@pytest.mark.parametrize(
    ("said", "answered"),
    [
        ("Tom is serving to a lefty who stands way over, the middle looks free to me", "Serve"),
        (
            "Okafor and Lindqvist are both back, we are at the line, drop it short then",
            "Keep them back",
        ),
    ],
)
def test_what_is_asked_without_a_mark_is_answered(demo: Talk, said: str, answered: str) -> None:
    assert answered in demo.say(said)


@pytest.mark.parametrize("said", ["okafor backhand is weak", "brandt always poaches"])
def test_a_plain_note_gets_no_answer_beside(demo: Talk, said: str) -> None:
    reply = demo.say(said)
    assert reply.startswith("Noted.")
    assert len(reply.splitlines()) <= 3
