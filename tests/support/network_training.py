"""Training with PyTorch (the `train` extra) of the layers that bot/chat/network.py runs.

Every pass over the lines sees them a little spoiled: a slip of the thumb, a word it may not know,
phrases of the lexicon left out. So nothing becomes indispensable.
"""

from __future__ import annotations

import random
from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Sequence
from itertools import chain
from typing import Any, Protocol, TypeVar

import numpy as np
import torch
from torch import nn

from bot.chat.network import Network, in_bytes
from knowledge.reading.keys import character_keys

LINES_A_STEP = 64
LEARNING_RATE = 3e-3
DECAY = 1e-2
LEFT_OUT = 0.3  # of the numbers between the layers, at every step
FEWEST_LINES = 3
"""A feature seen in fewer lines is not kept."""

SLIPS = 0.06
STRANGE_WORDS = 0.15
NO_LETTERS = 0.05
NO_PHRASE = 0.15
"""Shares of words that a pass shows with this missing. None of these numbers was searched over;
they were set once, on writers kept out."""

_FAR = 1e4  # what a place outside the line is pushed down by

Line = TypeVar("Line")


class TaughtWord(Protocol):
    """The keys of one word's features by where they come from."""

    @property
    def place(self) -> tuple[int, ...]: ...
    @property
    def words(self) -> tuple[int, ...]: ...
    @property
    def letters(self) -> str: ...
    @property
    def lexicon(self) -> tuple[int, ...]: ...


def shown(word: TaughtWord, chance: random.Random) -> Iterator[int]:
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


def _slip(word: str, chance: random.Random) -> str:
    """The word with a letter dropped, two swapped, or one hit wrongly."""
    if len(word) < 4:
        return word
    at = chance.randrange(1, len(word) - 1)
    dropped, swapped = word[:at] + word[at + 1 :], word[:at] + word[at + 1] + word[at]
    wrong = word[:at] + chance.choice("aeiorstnl") + word[at + 1 :]
    return chance.choice([dropped, swapped + word[at + 2 :], wrong])


class ReadingLayers:
    """The layers of a network while they learn: vectors of features, both ways, and the heads."""

    def __init__(self, lines: Iterable[Iterable[int]], *, heads: int, width: int) -> None:
        counted: Counter[int] = Counter()
        for keys in lines:
            counted.update(set(keys))
        self.keys = sorted(key for key, count in counted.items() if count >= FEWEST_LINES)
        self.rows = {key: row + 1 for row, key in enumerate(self.keys)}
        self.width, seen = width, 3 * width
        self.vectors = nn.EmbeddingBag(len(self.keys) + 1, width, mode="sum")
        nn.init.normal_(self.vectors.weight, std=0.05)
        self.layer = nn.GRU(width, width, batch_first=True, bidirectional=True)
        self.looks = nn.Linear(seen, heads, bias=False)
        self.weighs = nn.Parameter(torch.randn(heads, seen) * 0.05)
        self.bias = nn.Parameter(torch.zeros(heads))
        self.drop = nn.Dropout(LEFT_OUT)

    def parameters(self) -> list[Any]:
        layers = (self.vectors, self.layer, self.looks)
        return [
            *chain.from_iterable(layer.parameters() for layer in layers),
            *(self.weighs, self.bias),
        ]

    def given(self, lines: Sequence[Sequence[Iterable[int]]]) -> tuple[Any, Any, Any]:
        """Rows of `vectors` word by word, where each word's begin, and which words there are."""
        longest = max(map(len, lines))
        rows: list[int] = []
        begins: list[int] = []
        there = torch.zeros(len(lines), longest)
        for at, line in enumerate(lines):
            there[at, : len(line)] = 1
            for keys in line:
                begins.append(len(rows))
                rows += [self.rows[key] for key in keys if key in self.rows]
            begins += [len(rows)] * (longest - len(line))
        return torch.tensor(rows), torch.tensor(begins), there

    def seen(self, rows: Any, begins: Any, there: Any) -> Any:
        """What every head saw of every line (lines, heads, 3 width)."""
        alone = self.drop(self.vectors(rows, begins).view(*there.shape, self.width))
        states = torch.cat([self.drop(self.layer(alone)[0]), alone], dim=-1)
        looks = self.looks(states) + (there.unsqueeze(-1) - 1) * _FAR
        return torch.einsum("nwt,nws->nts", torch.softmax(looks, dim=1), states)

    def scores(self, seen: Any) -> Any:
        return (seen * self.weighs).sum(-1) + self.bias

    def network(self) -> Network:
        """What was learned, as the bot reads it."""
        whole, scale = in_bytes(array(self.vectors.weight)[1:])
        ways = ("", "_reverse")
        layer = {
            name: np.stack([array(getattr(self.layer, f"{kind}_l0{way}")).T for way in ways])
            for name, kind in (
                ("inward", "weight_ih"),
                ("across", "weight_hh"),
                ("inward_bias", "bias_ih"),
                ("across_bias", "bias_hh"),
            )
        }
        return Network(
            keys=np.array(self.keys, dtype=np.uint32),
            vectors=whole,
            scale=scale,
            looks=array(self.looks.weight),
            weighs=array(self.weighs),
            bias=array(self.bias),
            **layer,
        )


def array(tensor: Any) -> Any:
    return tensor.detach().numpy().copy()


def begin(seed: int) -> random.Random:
    """One stream of chance for the layers and one for the passes."""
    torch.manual_seed(seed)
    torch.set_num_threads(1)  # the matrices are small: more threads wait for each other
    return random.Random(seed)


def descend(
    parameters: Sequence[Any],
    lines: Sequence[Line],
    loss: Callable[[Sequence[Line]], Any],
    chance: random.Random,
    *,
    passes: int,
    length: Callable[[Line], int],
) -> None:
    """Many passes over the lines, each a step down the loss for every batch."""
    steps = passes * (len(lines) // LINES_A_STEP + 1)
    descent = torch.optim.AdamW(parameters, lr=LEARNING_RATE, weight_decay=DECAY)
    schedule = torch.optim.lr_scheduler.OneCycleLR(
        descent, max_lr=LEARNING_RATE, total_steps=steps + 1, pct_start=0.15
    )
    for _ in range(passes):
        for batch in _batches(lines, chance, length):
            descent.zero_grad()
            loss(batch).backward()
            nn.utils.clip_grad_norm_(parameters, 1.0)
            descent.step()
            schedule.step()


def _batches(
    lines: Sequence[Line], chance: random.Random, length: Callable[[Line], int]
) -> list[list[Line]]:
    """All lines once, those of about one length together."""
    order = list(lines)
    chance.shuffle(order)
    wide = 16 * LINES_A_STEP
    batches = [
        alike[at : at + LINES_A_STEP]
        for start in range(0, len(order), wide)
        for alike in [sorted(order[start : start + wide], key=length)]
        for at in range(0, len(alike), LINES_A_STEP)
    ]
    chance.shuffle(batches)
    return batches
