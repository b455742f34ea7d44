"""Training of the model that tells questions from notes, on the practice writers of both."""

from __future__ import annotations

import json

import numpy as np
from claim_training import sources_digest as notes_digest
from claim_training import writer_files as note_files
from linear_training import fit, quantised
from topic_examples import known_words, lines_digest, utterance_of, writer_examples

from bot.chat.asks_model import AsksModel
from bot.chat.features import extract
from bot.chat.lexicon import the_lexicon

RIDGE = 2.0  # not searched over


def train_asks() -> AsksModel:
    known, lexicon = known_words(), the_lexicon()
    asked = [one.text for one in writer_examples()]
    told = [
        json.loads(line)["text"]
        for path in note_files()
        for line in path.read_text(encoding="utf-8").splitlines()
    ]
    seen = [
        extract(utterance_of(text), lexicon, known=known, context_topic=None)
        for text in (*asked, *told)
    ]
    sides = np.where(np.arange(len(seen)) < len(asked), 1.0, -1.0).astype(np.float32)
    weight = np.ones(len(seen), dtype=np.float32)
    return AsksModel(
        linear=quantised(*fit(seen, sides[:, None], weight, ridge=RIDGE)),
        recipe={
            "lines": lines_digest(),
            "notes": notes_digest(),
            "questions": len(asked),
            "told": len(told),
            "command": "python tests/train/train_asks.py",
            "ridge": RIDGE,
        },
    )
