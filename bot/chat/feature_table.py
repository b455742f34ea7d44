"""The features a model knows: their keys, how telling each is, and a message's vector over them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import chain

import numpy as np
import numpy.typing as npt

from bot.chat.features import Seen

Numbers = npt.NDArray[np.float32]
Indices = npt.NDArray[np.intp]

GROUP_LENGTHS = (1.14, 1.41, 1.0, 0.55, 1.14, 0.71)
"""How much words, characters, concepts, form, context and the asking part count (lengths of
vectors), chosen on the open voices, each scored by a model that had not read it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Vector:
    """A message over a table: rows of known features, their values, and which were known."""

    rows: Indices
    values: Numbers
    known: npt.NDArray[np.bool_]


@dataclass(frozen=True, slots=True, kw_only=True)
class FeatureTable:
    """Keys in ascending order; `telling` is 1 + log inverse share of messages with the feature."""

    keys: npt.NDArray[np.uint32]
    telling: Numbers

    @classmethod
    def of(cls, messages: Sequence[Seen]) -> FeatureTable:
        """The table of all features that any of the messages shows."""
        shown = [np.unique(_keys(message)) for message in messages]
        keys, counts = np.unique(np.concatenate(shown), return_counts=True)
        telling = np.log((1 + len(messages)) / (1 + counts)) + 1
        return cls(keys=keys, telling=telling.astype(np.float16).astype(np.float32))

    def vector(self, message: Seen) -> Vector:
        """Telling features count more, and each group has its length whatever its size."""
        keys = _keys(message)
        groups = np.repeat(np.arange(len(GROUP_LENGTHS)), [len(g) for g in message.groups])
        rows = np.minimum(np.searchsorted(self.keys, keys), len(self.keys) - 1)
        known = self.keys[rows] == keys
        telling = self.telling[rows] * known
        lengths = np.sqrt(np.bincount(groups, telling * telling, len(GROUP_LENGTHS)))
        factors = np.divide(GROUP_LENGTHS, lengths, where=lengths > 0, out=np.zeros(len(lengths)))
        values = (telling * factors[groups]).astype(np.float32)
        return Vector(rows=rows[known], values=values[known], known=known)


def _keys(message: Seen) -> npt.NDArray[np.uint32]:
    return np.array(list(chain.from_iterable(message.groups)), dtype=np.uint32)
