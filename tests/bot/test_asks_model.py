"""Questions that look like notes: a fresh model, and both sides told apart on unread voices."""

from __future__ import annotations

import numpy as np
import pytest
from claim_training import sources_digest as notes_digest
from note_scores import OPEN_NOTE_VOICES, notes_of
from talk import Talk
from topic_examples import OPEN_VOICES, lines_digest, utterance_of, voice_examples

from bot.chat.asks_model import ASKS_FROM, the_asks_model

RETRAIN = "run: python tests/train/train_asks.py"


def test_it_was_trained_on_the_lines_and_notes_as_they_are() -> None:
    recipe = the_asks_model().recipe
    assert (recipe["lines"], recipe["notes"]) == (lines_digest(), notes_digest()), RETRAIN


def test_questions_and_notes_of_voices_it_has_not_read_are_told_apart() -> None:
    score = the_asks_model().score
    asked = [score(utterance_of(one.text)) for v in OPEN_VOICES for one in voice_examples(v)]
    told = [score(utterance_of(note["text"])) for v in OPEN_NOTE_VOICES for note in notes_of(v)]
    assert np.mean(np.array(asked) >= ASKS_FROM) >= 0.93
    assert np.mean(np.array(told) >= ASKS_FROM) <= 0.025


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
