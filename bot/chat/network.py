"""A small recurrent network over the words of a line, trained elsewhere and run with numpy.

A word is the sum of the vectors of what is seen of it: itself, its letters, the lexicon's phrases.
One layer of gated recurrent units (Cho et al. 2014, in the form that PyTorch documents) reads the
line forwards and one backwards; every head then looks at the words that matter to it (a softmax
over the words) and scores what it looked at. So each score can name the words that spoke for it.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import fields
from itertools import chain
from typing import Any

import numpy as np
import numpy.typing as npt

from knowledge.dataclass import dataclass
from knowledge.reading.feature_table import Numbers

INT8_TOP = 127

AS_STORED = ("keys", "vectors", "scale")
"""A row a feature, of which a line needs a few: they stay in the file until then."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Looked:
    """What every head made of a line: its score, where it looked (rows sum to 1), what it saw.

    `states` are the readings of each word that the heads look at.
    """

    scores: Numbers
    places: Numbers
    seen: Numbers
    states: Numbers


@dataclass(frozen=True, slots=True, kw_only=True)
class Network:
    """The weights; `width` numbers a word and direction, `heads` scores.

    `keys` (ascending) and `vectors` are the features known, a vector in whole bytes times its
    `scale`. The recurrent layer: `inward` and `across` are (2, width, 3 width), their biases
    (2, 3 width), the gates in the order reset, update, new. A head's `looks` and `weighs` are over
    the three readings of a word: forwards, backwards and the word alone (heads, 3 width).
    """

    keys: npt.NDArray[np.uint32]
    vectors: npt.NDArray[np.int8]
    scale: npt.NDArray[np.floating[Any]]
    inward: Numbers
    inward_bias: Numbers
    across: Numbers
    across_bias: Numbers
    looks: Numbers
    weighs: Numbers
    bias: Numbers

    def read(self, words: Sequence[Sequence[int]]) -> Looked:
        """What the heads make of a line of words, each given by the keys of its features."""
        alone = self._vectors_of(words)
        states = np.concatenate([*self._both_ways(alone), alone], axis=1)
        looks = states @ self.looks.T
        looks = np.exp(looks - looks.max(axis=0))
        places = (looks / looks.sum(axis=0)).T
        seen = places @ states
        scores = np.einsum("hs,hs->h", seen, self.weighs) + self.bias
        return Looked(scores=scores, places=places, seen=seen, states=states)

    def votes(self, looked: Looked, head: int) -> Numbers:
        """How much each word spoke for a head: the votes add up to its score less its bias."""
        votes: Numbers = looked.places[head] * (looked.states @ self.weighs[head])
        return votes

    def _vectors_of(self, words: Sequence[Sequence[int]]) -> Numbers:
        counts = [len(word) for word in words]
        keys = np.fromiter(chain.from_iterable(words), dtype=np.uint32, count=sum(counts))
        rows = np.minimum(np.searchsorted(self.keys, keys), len(self.keys) - 1)
        known = self.keys[rows] == keys
        rows = rows[known]
        owners = np.repeat(np.arange(len(words)), counts)[known]
        vectors = np.zeros((len(words), self.vectors.shape[1]), dtype=np.float32)
        begins = np.flatnonzero(np.diff(owners, prepend=-1))
        if len(begins):
            seen = self.vectors[rows] * self.scale[rows, None].astype(np.float32)
            vectors[owners[begins]] = np.add.reduceat(seen, begins, axis=0)
        return vectors

    def _both_ways(self, alone: Numbers) -> tuple[Numbers, Numbers]:
        """The recurrent layer's states after each word, read from the front and from the back."""
        count, width = alone.shape
        given = np.stack([alone, alone[::-1]]) @ self.inward + self.inward_bias[:, None]
        states = np.empty((2, count, width), dtype=np.float32)
        state = np.zeros((2, 1, width), dtype=np.float32)
        carried = np.empty((2, 1, 3 * width), dtype=np.float32)
        gates = np.empty((2, 1, 2 * width), dtype=np.float32)
        new = np.empty((2, 1, width), dtype=np.float32)
        bias, reset, update = self.across_bias[:, None], gates[..., :width], gates[..., width:]
        # In place, since making arrays of this size costs more than reckoning with them.
        for at in range(count):
            step = given[:, at : at + 1]
            np.matmul(state, self.across, out=carried)
            carried += bias
            np.add(step[..., : 2 * width], carried[..., : 2 * width], out=gates)
            _logistic(gates)
            np.multiply(reset, carried[..., 2 * width :], out=new)
            new += step[..., 2 * width :]
            np.tanh(new, out=new)
            state -= new
            state *= update
            state += new
            states[:, at : at + 1] = state
        return states[0], states[1, ::-1]

    def arrays(self) -> dict[str, npt.NDArray[Any]]:
        """The weights by name, for an .npz file; all but `keys` and `vectors` in half precision."""
        given = {field.name: getattr(self, field.name) for field in fields(self)}
        return {
            name: array.astype(np.float16) if array.dtype == np.float32 else array
            for name, array in given.items()
        }

    @classmethod
    def load(cls, stored: Mapping[str, npt.NDArray[Any]]) -> Network:
        """Of the features as they are stored, of the layers in single precision."""
        given: dict[str, Any] = {
            field.name: stored[field.name]
            if field.name in AS_STORED
            else stored[field.name].astype(np.float32)
            for field in fields(cls)
        }
        return cls(**given)


def _logistic(sums: Numbers) -> None:
    """Each number's logistic, in its place."""
    np.negative(sums, out=sums)
    np.exp(sums, out=sums)
    sums += 1
    np.reciprocal(sums, out=sums)


def in_bytes(vectors: Numbers) -> tuple[npt.NDArray[np.int8], Numbers]:
    """Vectors in whole bytes, and the scale of each."""
    scale = np.maximum(np.abs(vectors).max(axis=1), 1e-6) / INT8_TOP
    scale = scale.astype(np.float16).astype(np.float32)
    whole = np.clip(np.rint(vectors / scale[:, None]), -INT8_TOP, INT8_TOP)
    return whole.astype(np.int8), scale
