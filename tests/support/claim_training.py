"""Training of the claim model with PyTorch (the `train` extra), by gradient descent on its notes.

Every pass over the notes sees them a little spoiled: a slip of the thumb, a word it may not know,
phrases of the lexicon and claims of the rules left out. So nothing becomes indispensable.
"""

from __future__ import annotations

import random
from collections import Counter
from collections.abc import Iterator, Sequence
from itertools import chain
from typing import Any

import numpy as np
import torch
from claim_examples import Taught
from torch import nn
from torch.nn import functional

from bot.chat.claim_model import TAKES, TRAIT_COLUMNS, VALUE_COLUMNS, ClaimModel
from bot.chat.features import character_keys
from bot.chat.network import Network, in_bytes
from bot.chat.note_features import SeenWord

WIDTH = 96
PASSES = 10
NOTES_A_STEP = 64
LEARNING_RATE = 3e-3
DECAY = 1e-2
LEFT_OUT = 0.3  # of the numbers between the layers, at every step
FEWEST_NOTES = 3
"""A feature seen in fewer notes is not kept."""

SLIPS = 0.06
STRANGE_WORDS = 0.15
NO_LETTERS = 0.05
NO_PHRASE = 0.15
NO_RULES = 0.15
"""Shares of words (of notes, for the rules) that a pass shows with this missing. None of these
numbers was searched over; they were set once, on writers kept out."""

_FAR = 1e4  # what a place outside the line, or a value its trait never takes, is pushed down by


def shown(word: SeenWord, chance: random.Random, *, rules: bool) -> Iterator[int]:
    """The keys of a word as one pass shows it."""
    letters, spelled = word.letters, word.words
    if chance.random() < SLIPS:
        letters, spelled = _slip(letters, chance), ()
    if chance.random() < STRANGE_WORDS:
        spelled = ()
    if chance.random() < NO_LETTERS:
        letters = ""
    yield from word.place
    yield from spelled
    if letters:
        yield from character_keys(letters)
    if chance.random() >= NO_PHRASE:
        yield from word.lexicon
    if rules:
        yield from word.rules


def _slip(word: str, chance: random.Random) -> str:
    """The word with a letter dropped, two swapped, or one hit wrongly."""
    if len(word) < 4:
        return word
    at = chance.randrange(1, len(word) - 1)
    dropped, swapped = word[:at] + word[at + 1 :], word[:at] + word[at + 1] + word[at]
    wrong = word[:at] + chance.choice("aeiorstnl") + word[at + 1 :]
    return chance.choice([dropped, swapped + word[at + 2 :], wrong])


class Trainer:
    """The layers of the model while they learn."""

    def __init__(self, notes: Sequence[Taught], seed: int) -> None:
        torch.manual_seed(seed)
        torch.set_num_threads(1)  # the matrices are small: more threads wait for each other
        self.chance = random.Random(seed)
        counted: Counter[int] = Counter()
        for note in notes:
            counted.update(set(chain.from_iterable(word.keys for word in note.seen)))
        self.keys = sorted(key for key, count in counted.items() if count >= FEWEST_NOTES)
        self.rows = {key: row + 1 for row, key in enumerate(self.keys)}
        traits, seen = len(TRAIT_COLUMNS), 3 * WIDTH
        self.vectors = nn.EmbeddingBag(len(self.keys) + 1, WIDTH, mode="sum")
        nn.init.normal_(self.vectors.weight, std=0.05)
        self.layer = nn.GRU(WIDTH, WIDTH, batch_first=True, bidirectional=True)
        self.looks = nn.Linear(seen, traits, bias=False)
        self.weighs = nn.Parameter(torch.randn(traits, seen) * 0.05)
        self.bias = nn.Parameter(torch.full((traits,), -3.0))
        self.inner = nn.Linear(seen, WIDTH, bias=False)
        self.inner_bias = nn.Parameter(torch.randn(traits, WIDTH) * 0.1)
        self.outer = nn.Linear(WIDTH, len(VALUE_COLUMNS))
        self.drop = nn.Dropout(LEFT_OUT)
        self.never = torch.tensor(~TAKES)

    def parameters(self) -> list[Any]:
        layers = (self.vectors, self.layer, self.looks, self.inner, self.outer)
        return [
            *chain.from_iterable(layer.parameters() for layer in layers),
            *(self.weighs, self.bias, self.inner_bias),
        ]

    def loss(self, notes: Sequence[Taught]) -> Any:
        """How far off the model is on these notes, shown as a pass shows them."""
        trait_scores, value_scores = self._forward(*self._given(notes))
        claimed = torch.zeros_like(trait_scores)
        value = torch.full(trait_scores.shape, -1)
        for at, note in enumerate(notes):
            for trait, said in note.claims.items():
                column = TRAIT_COLUMNS.index(trait)
                claimed[at, column] = 1
                value[at, column] = VALUE_COLUMNS.index(said)
        told = claimed > 0
        loss = functional.binary_cross_entropy_with_logits(trait_scores, claimed, reduction="sum")
        if told.any():
            loss = loss + functional.cross_entropy(value_scores[told], value[told], reduction="sum")
        return loss / len(notes)

    def _given(self, notes: Sequence[Taught]) -> tuple[Any, Any, Any]:
        """Rows of `vectors` word by word, where each word's begin, and which words there are."""
        longest = max(len(note.seen) for note in notes)
        rows: list[int] = []
        begins: list[int] = []
        there = torch.zeros(len(notes), longest)
        for at, note in enumerate(notes):
            rules = self.chance.random() >= NO_RULES
            there[at, : len(note.seen)] = 1
            for word in note.seen:
                begins.append(len(rows))
                keys = shown(word, self.chance, rules=rules)
                rows += [self.rows[key] for key in keys if key in self.rows]
            begins += [len(rows)] * (longest - len(note.seen))
        return torch.tensor(rows), torch.tensor(begins), there

    def _forward(self, rows: Any, begins: Any, there: Any) -> tuple[Any, Any]:
        alone = self.drop(self.vectors(rows, begins).view(*there.shape, WIDTH))
        states = torch.cat([self.drop(self.layer(alone)[0]), alone], dim=-1)
        looks = self.looks(states) + (there.unsqueeze(-1) - 1) * _FAR
        seen = torch.einsum("nwt,nws->nts", torch.softmax(looks, dim=1), states)
        hidden = functional.relu(self.inner(seen) + self.inner_bias)
        values = self.outer(self.drop(hidden)).masked_fill(self.never, -_FAR)
        return (seen * self.weighs).sum(-1) + self.bias, values

    def model(self, recipe: dict[str, Any]) -> ClaimModel:
        """What was learned, as the bot reads it."""
        whole, scale = in_bytes(_array(self.vectors.weight)[1:])
        ways = ("", "_reverse")
        layer = {
            name: np.stack([_array(getattr(self.layer, f"{kind}_l0{way}")).T for way in ways])
            for name, kind in (
                ("inward", "weight_ih"),
                ("across", "weight_hh"),
                ("inward_bias", "bias_ih"),
                ("across_bias", "bias_hh"),
            )
        }
        return ClaimModel(
            network=Network(
                keys=np.array(self.keys, dtype=np.uint32),
                vectors=whole,
                scale=scale,
                looks=_array(self.looks.weight),
                weighs=_array(self.weighs),
                bias=_array(self.bias),
                **layer,
            ),
            inner=_array(self.inner.weight).T,
            inner_bias=_array(self.inner_bias),
            outer=_array(self.outer.weight).T,
            outer_bias=_array(self.outer.bias),
            recipe=recipe,
        )


def _array(tensor: Any) -> Any:
    return tensor.detach().numpy().copy()


def train(notes: Sequence[Taught], recipe: dict[str, Any], *, seed: int = 0) -> ClaimModel:
    """The model that many passes over the notes end in."""
    trainer = Trainer(notes, seed)
    parameters = trainer.parameters()
    steps = PASSES * (len(notes) // NOTES_A_STEP + 1)
    descent = torch.optim.AdamW(parameters, lr=LEARNING_RATE, weight_decay=DECAY)
    schedule = torch.optim.lr_scheduler.OneCycleLR(
        descent, max_lr=LEARNING_RATE, total_steps=steps + 1, pct_start=0.15
    )
    for _ in range(PASSES):
        for batch in _batches(notes, trainer.chance):
            descent.zero_grad()
            trainer.loss(batch).backward()
            nn.utils.clip_grad_norm_(parameters, 1.0)
            descent.step()
            schedule.step()
    return trainer.model({**recipe, "width": WIDTH, "passes": PASSES, "seed": seed})


def _batches(notes: Sequence[Taught], chance: random.Random) -> list[list[Taught]]:
    """All notes once, those of about one length together."""
    order = list(notes)
    chance.shuffle(order)
    wide = 16 * NOTES_A_STEP
    batches = [
        alike[at : at + NOTES_A_STEP]
        for start in range(0, len(order), wide)
        for alike in [sorted(order[start : start + wide], key=lambda note: len(note.seen))]
        for at in range(0, len(alike), NOTES_A_STEP)
    ]
    chance.shuffle(batches)
    return batches
