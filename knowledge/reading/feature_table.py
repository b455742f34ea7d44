"""The features a model knows: their keys, how telling each is, and a message's vector over them."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import chain
from typing import Any

import numpy as np
import numpy.typing as npt

from knowledge.dataclass import dataclass
from knowledge.reading.keys import Message

Numbers = npt.NDArray[np.float32]
Indices = npt.NDArray[np.intp]


@dataclass(frozen=True, slots=True, kw_only=True)
class Vector:
    """A message over a table: rows of known features, their values, and which were known."""

    rows: Indices
    values: Numbers
    known: npt.NDArray[np.bool_]


@dataclass(frozen=True, slots=True, kw_only=True)
class FeatureTable:
    """Keys in ascending order; `telling` is 1 + log inverse share of messages with the feature.

    As stored it is in half precision, of which a message's rows are made whole. `lengths` says how
    much each group of features counts: the lengths of their vectors.
    """

    keys: npt.NDArray[np.uint32]
    telling: npt.NDArray[np.floating[Any]]
    lengths: tuple[float, ...]

    @classmethod
    def of(cls, messages: Sequence[Message], lengths: tuple[float, ...]) -> FeatureTable:
        """The table of all features that any of the messages shows."""
        shown = [frozenset(chain.from_iterable(message.groups)) for message in messages]
        keys, counts = np.unique(
            np.fromiter(chain.from_iterable(shown), np.uint32), return_counts=True
        )
        telling = np.log((1 + len(messages)) / (1 + counts)) + 1
        return cls(
            keys=keys, telling=telling.astype(np.float16).astype(np.float32), lengths=lengths
        )

    def vector(self, message: Message) -> Vector:
        """Telling features count more, and each group has its length whatever its size."""
        keys = _keys(message)
        groups = np.repeat(np.arange(len(self.lengths)), [len(g) for g in message.groups])
        rows = np.minimum(np.searchsorted(self.keys, keys), len(self.keys) - 1)
        known = self.keys[rows] == keys
        telling = self.telling[rows].astype(np.float32) * known
        lengths = np.sqrt(np.bincount(groups, telling * telling, len(self.lengths)))
        factors = np.divide(self.lengths, lengths, where=lengths > 0, out=np.zeros(len(lengths)))
        values = (telling * factors[groups]).astype(np.float32)
        return Vector(rows=rows[known], values=values[known], known=known)


def _keys(message: Message) -> npt.NDArray[np.uint32]:
    return np.array(list(chain.from_iterable(message.groups)), dtype=np.uint32)
