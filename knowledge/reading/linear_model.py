"""A linear model over a message's features: one column of weights a label, in whole bytes.

Trained in tests/support (linear_training.py, entry_training.py), read here with numpy alone, and
able to say how much each word of a message spoke for one label against another.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from typing import Any

import numpy as np
import numpy.typing as npt

from knowledge.dataclass import dataclass
from knowledge.reading.feature_table import FeatureTable, Indices, Numbers, Vector
from knowledge.reading.keys import Message
from knowledge.reading.stored import Source, arrays_of, as_bytes, as_text, packed_file


@dataclass(frozen=True, slots=True, kw_only=True)
class LinearModel:
    """Weights by feature and label (whole numbers times the label's scale)."""

    table: FeatureTable
    weights: npt.NDArray[np.int8]
    scale: Numbers

    def scores(self, vector: Vector) -> Numbers:
        """One score a label: of a ridge regression about 1 for a clear case, 0 for the others."""
        scores: Numbers = vector.values @ self.weights[vector.rows].astype(np.float32)
        return scores * self.scale

    def votes(self, vector: Vector, places: Indices, *, winner: int, other: int | None) -> Numbers:
        """For each token, how much it spoke for the winner, against the other label if any.

        `places` are the tokens [start, end) of each row of the vector.
        """
        weights = self.weights[vector.rows, winner] * self.scale[winner]
        if other is not None:
            weights = weights - self.weights[vector.rows, other] * self.scale[other]
        width = np.maximum(1, places[:, 1] - places[:, 0])
        share = vector.values * weights / width
        steps = np.zeros(places.max(initial=0) + 1, dtype=np.float32)
        np.add.at(steps, places[:, 0], share)
        np.subtract.at(steps, places[:, 1], share)
        votes: Numbers = np.cumsum(steps)[:-1]
        return votes

    def packed(self, recipe: Mapping[str, Any], **more: npt.NDArray[Any]) -> bytes:
        """The bytes of an .npz file: the model, how it was trained, and whatever goes along."""
        arrays: dict[str, Any] = {
            "keys": self.table.keys,
            "telling": self.table.telling.astype(np.float16),
            "weights": self.weights,
            "scale": self.scale,
            "recipe": as_bytes(json.dumps(dict(recipe))),
            **more,
        }
        return packed_file(arrays)

    @classmethod
    def load(
        cls, stored: Mapping[str, npt.NDArray[Any]], lengths: tuple[float, ...]
    ) -> LinearModel:
        return cls(
            table=FeatureTable(
                keys=stored["keys"],
                telling=stored["telling"],
                lengths=lengths,
            ),
            weights=stored["weights"],
            scale=stored["scale"],
        )


def unpacked(
    source: Source, lengths: tuple[float, ...]
) -> tuple[LinearModel, dict[str, Any], dict[str, npt.NDArray[Any]]]:
    """The model of a packed file over groups of these lengths, its recipe, and all its arrays."""
    arrays = arrays_of(source)
    return LinearModel.load(arrays, lengths), json.loads(as_text(arrays["recipe"])), arrays


def places_of(seen: Message) -> Indices:
    """The tokens [start, end) of every feature, in order of the groups."""
    places = [place for group in seen.groups for place in group.values()]
    return np.array(places, dtype=np.intp).reshape(-1, 2)
