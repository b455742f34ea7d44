"""Training of the question network with PyTorch: which topic, and whether it asks at all."""

from __future__ import annotations

import random
from collections.abc import Sequence
from itertools import chain
from typing import Any

import torch
from network_training import ReadingLayers, begin, descend, shown
from question_examples import TaughtLine, sources, taught_lines
from topic_examples import known_words
from torch.nn import functional

from bot.chat.question_network import ASKS, TOPICS, QuestionNetwork

WIDTH = 96
PASSES = 8
SMOOTHED = 0.05
"""What every topic keeps of a question's own: labels differ by about as much."""

ASKING_COUNTS = 0.5  # of a topic's loss


class _Trainer:
    """The layers while they learn."""

    def __init__(self, lines: Sequence[TaughtLine], chance: random.Random) -> None:
        self.chance = chance
        keys = (chain.from_iterable(word.keys for word in line.seen) for line in lines)
        self.reading = ReadingLayers(keys, heads=len(TOPICS) + 1, width=WIDTH)

    def loss(self, lines: Sequence[TaughtLine]) -> Any:
        """How far off topics (of what asks) and asking are, each line by its weight."""
        given = [[list(shown(word, self.chance)) for word in line.seen] for line in lines]
        reading = self.reading
        scores = reading.scores(reading.drop(reading.seen(*reading.given(given))))
        weight = torch.tensor([line.weight for line in lines])
        is_asked = torch.tensor([float(bool(line.topics)) for line in lines])
        topics = functional.cross_entropy(scores[:, :ASKS], _wanted(lines), reduction="none")
        asking = functional.binary_cross_entropy_with_logits(
            scores[:, ASKS], is_asked, reduction="none"
        )
        return ((topics * is_asked + ASKING_COUNTS * asking) * weight).sum() / weight.sum()


def _wanted(lines: Sequence[TaughtLine]) -> Any:
    """A row a line: its topics alike, and a little of all others."""
    wanted = torch.full((len(lines), len(TOPICS)), SMOOTHED / len(TOPICS))
    for at, line in enumerate(lines):
        for topic in line.topics:
            wanted[at, topic] += (1 - SMOOTHED) / len(line.topics)
    return wanted


def train(*, seed: int = 0) -> QuestionNetwork:
    """The network that many passes over the lines end in."""
    chance = begin(seed)
    lines = taught_lines(chance)
    trainer = _Trainer(lines, chance)
    descend(
        trainer.reading.parameters(),
        lines,
        trainer.loss,
        chance,
        passes=PASSES,
        length=lambda line: len(line.seen),
    )
    recipe = {
        **sources(),
        "learned_from": len(lines),
        "command": "python tests/train/train_questions.py",
        "width": WIDTH,
        "passes": PASSES,
        "seed": seed,
    }
    return QuestionNetwork(network=trainer.reading.network(), known=known_words(), recipe=recipe)
