"""Training of the model that tells questions from notes and scores, on writers of all of them."""

from __future__ import annotations

from collections.abc import Iterable

import numpy as np
from claim_examples import rows_of
from claim_examples import sources_digest as notes_digest
from claim_examples import writer_files as note_files
from line_writers import LEARNED_FROM, digest_of, lines_of
from linear_training import fit, quantised
from topic_examples import known_words, lines_digest, utterance_of, writer_examples

from bot.chat.asks_model import AsksModel
from bot.chat.features import Seen, extract
from bot.chat.lexicon import the_lexicon

RIDGE = 2.0  # not searched over
HARD_WEIGHT = 2.0  # a line that looks like the other side counts as two; 3 moved little


HARD_KINDS = ("asked", "noted", "scores")


def train_asks() -> AsksModel:
    asked = [one.text for one in writer_examples()]
    told = [row["text"] for path in note_files() for row in rows_of(path)]
    texts: list[str] = []
    sides: list[float] = []
    weights: list[float] = []
    for lines, side, weight in (
        (asked, 1.0, 1.0),
        (told, -1.0, 1.0),
        (_hard("asked"), 1.0, HARD_WEIGHT),
        (_hard("noted"), -1.0, HARD_WEIGHT),
        (_hard("scores"), -1.0, HARD_WEIGHT),
    ):
        texts += lines
        sides += [side] * len(lines)
        weights += [weight] * len(lines)
    table, fitted = fit(
        _see(texts),
        np.array(sides, dtype=np.float32)[:, None],
        np.array(weights, dtype=np.float32),
        ridge=RIDGE,
    )
    recipe = {
        "lines": lines_digest(),
        "notes": notes_digest(),
        "hard": digest_of(*HARD_KINDS),
        "learned_from": len(texts),
        "command": "python tests/train/train_asks.py",
        "ridge": RIDGE,
    }
    return AsksModel(linear=quantised(table, fitted), recipe=recipe)


def _hard(kind: str) -> list[str]:
    return [row["text"] for name in LEARNED_FROM for row in lines_of(name, kind)]


def _see(texts: Iterable[str]) -> list[Seen]:
    known, lexicon = known_words(), the_lexicon()
    return [extract(utterance_of(text), lexicon, known=known, context_topic=None) for text in texts]
