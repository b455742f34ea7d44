"""Training of the claim model with PyTorch (the `train` extra), by gradient descent on its notes.

Beside what `network_training` spoils, a pass leaves out what the rules read of some notes.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import chain
from typing import Any

import torch
from claim_examples import Taught, opening_words
from network_training import LEFT_OUT, ReadingLayers, array, begin, descend, shown
from torch import nn
from torch.nn import functional

from bot.chat.claim_model import HEADS, SAID_COLUMNS, TAKES, ClaimModel, ClaimNetwork, head_of
from bot.chat.note_features import SeenWord

WIDTH = 96
PASSES = 8
SEEDS = (0, 2)
"""One reader each, whose mean is read, and invents a tenth less than one alone."""
NO_RULES = 0.15  # share of notes that a pass shows without what the rules read; not searched over
OPENED = 0.05  # share of notes that a pass shows after a word or two that say nothing
OPENINGS = tuple(
    opening_words(said) for said in ("note", "note to self", "fyi", "ok so", "btw", "watching now")
)
RARE = -3.0  # where a head's score begins, since most notes claim one or two of fifty

_FAR = 1e4  # what a value its head never finds is pushed down by


class Trainer:
    """The layers of the model while they learn."""

    def __init__(self, notes: Sequence[Taught], seed: int) -> None:
        self.chance = begin(seed)
        lines = (chain.from_iterable(word.keys for word in note.seen) for note in notes)
        self.reading = ReadingLayers(lines, heads=len(HEADS), width=WIDTH)
        self.reading.bias.data.fill_(RARE)
        self.inner = nn.Linear(3 * WIDTH, WIDTH, bias=False)
        self.inner_bias = nn.Parameter(torch.randn(len(HEADS), WIDTH) * 0.1)
        self.outer = nn.Linear(WIDTH, len(SAID_COLUMNS))
        self.drop = nn.Dropout(LEFT_OUT)
        self.never = torch.tensor(~TAKES)

    def parameters(self) -> list[Any]:
        layers = (self.inner, self.outer)
        return [
            *self.reading.parameters(),
            *chain.from_iterable(layer.parameters() for layer in layers),
            self.inner_bias,
        ]

    def loss(self, notes: Sequence[Taught]) -> Any:
        """How far off the model is on these notes, shown as a pass shows them."""
        trait_scores, value_scores = self._forward(notes)
        claimed = torch.zeros_like(trait_scores)
        said = torch.full(trait_scores.shape, -1)
        for at, note in enumerate(notes):
            for trait, value, denied in note.claims:
                row = head_of(trait, value)
                claimed[at, row] = 1
                said[at, row] = SAID_COLUMNS.index((value, denied))
        told = claimed > 0
        loss = functional.binary_cross_entropy_with_logits(trait_scores, claimed, reduction="sum")
        if told.any():
            loss = loss + functional.cross_entropy(value_scores[told], said[told], reduction="sum")
        return loss / len(notes)

    def _forward(self, notes: Sequence[Taught]) -> tuple[Any, Any]:
        seen = self.reading.seen(*self.reading.given([self._shown(note) for note in notes]))
        hidden = functional.relu(self.inner(seen) + self.inner_bias)
        values = self.outer(self.drop(hidden)).masked_fill(self.never, -_FAR)
        return self.reading.scores(seen), values

    def _shown(self, note: Taught) -> list[list[int]]:
        rules = self.chance.random() >= NO_RULES
        opening = self.chance.choice(OPENINGS) if self.chance.random() < OPENED else ()
        return [list(self._keys(word, rules=rules)) for word in (*opening, *note.seen)]

    def _keys(self, word: SeenWord, *, rules: bool) -> Iterator[int]:
        yield from shown(word, self.chance)
        if rules:
            yield from word.rules

    def reader(self) -> ClaimNetwork:
        """What was learned, as the bot reads it."""
        return ClaimNetwork(
            network=self.reading.network(),
            inner=array(self.inner.weight).T,
            inner_bias=array(self.inner_bias),
            outer=array(self.outer.weight).T,
            outer_bias=array(self.outer.bias),
        )


def train(notes: Sequence[Taught], recipe: dict[str, Any]) -> ClaimModel:
    """The model that many passes over the notes end in, from every seed."""
    readers = tuple(_trained(notes, seed) for seed in SEEDS)
    return ClaimModel(
        readers=readers,
        recipe={**recipe, "width": WIDTH, "passes": PASSES, "seeds": list(SEEDS)},
    )


def _trained(notes: Sequence[Taught], seed: int) -> ClaimNetwork:
    trainer = Trainer(notes, seed)
    descend(
        trainer.parameters(),
        notes,
        trainer.loss,
        trainer.chance,
        passes=PASSES,
        length=lambda note: len(note.seen),
    )
    return trainer.reader()
