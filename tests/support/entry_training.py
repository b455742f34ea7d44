"""Training of the models of entries, on all examples of a kind or without one writer's."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import asdict, dataclass

import numpy as np
from entry_examples import OTHERS, OWN, Example, digest, examples
from linear_training import fit, matrix_of, one_of, quantised

from knowledge.reading.entry_features import LENGTHS, Told, told
from knowledge.reading.entry_model import Bands, EntryModel, Kind
from knowledge.reading.feature_table import FeatureTable, Numbers

RIDGE = 0.4
RIDGE_SHARPNESS = 9.0
BAYES_SHARE = 0.5
"""Of the log shares beside the sharpened ridge. Chosen on the writers left out: ridge alone finds
80, Bayes alone 82, both 85 of 100 symptoms at once; shares of .3 to .8 differ by less than one."""

FEWEST = 3
"""Examples that a feature must stand in to be kept: of two the files are half as large again."""

OTHER_WEIGHT = 0.5
"""A line about something else counts half: of 300 such lines more than twice as many are then said
to be of no entry, and what comes first of the others' entries stays as it is."""

OWN_WEIGHT = 4.0
"""A form that has to find its rule counts four times in the regression: counted once, two of 735 do
not find theirs."""

SMOOTHING = 0.03
"""Weight that each entry lends every feature before Bayes counts."""

BANDS = {
    Kind.RULES: Bands(sharpness=0.7, sure_from=0.9, half_sure_from=0.36, none_from=0.8),
    Kind.SYMPTOMS: Bands(sharpness=0.7, sure_from=0.9, half_sure_from=0.15, none_from=0.9),
    Kind.WEATHER: Bands(sharpness=0.7, sure_from=0.9, half_sure_from=0.1, none_from=0.9),
}
"""By the writers left out: one who is answered surely is right in some 97 of 100."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Taught:
    """Examples of a kind, as the model sees them."""

    kind: Kind
    examples: Sequence[Example]
    seen: Sequence[Told]

    @classmethod
    def of(cls, kind: Kind) -> Taught:
        found = examples(kind)
        return cls(kind=kind, examples=found, seen=[told(one.text) for one in found])

    def without(self, writer: str) -> Taught:
        kept = [n for n, one in enumerate(self.examples) if one.writer != writer]
        return Taught(
            kind=self.kind,
            examples=[self.examples[n] for n in kept],
            seen=[self.seen[n] for n in kept],
        )

    @property
    def ids(self) -> tuple[str, ...]:
        return tuple(sorted({one.id for one in self.examples}))


def train(taught: Taught) -> EntryModel:
    """A model of these examples; its recipe tells what of."""
    ids = taught.ids
    labels = [ids.index(one.id) for one in taught.examples]
    targets = one_of(labels, len(ids))
    weight = np.array([_weight(one) for one in taught.examples], dtype=np.float32)
    table, ridge = fit(taught.seen, targets, weight, ridge=RIDGE, lengths=LENGTHS, fewest=FEWEST)
    weights = RIDGE_SHARPNESS * ridge + BAYES_SHARE * _bayes(taught, table, labels)
    bands = BANDS[taught.kind]
    recipe = {
        "ids": ids,
        "bands": asdict(bands),
        "digest": digest(taught.kind),
        "examples": len(labels),
        "command": "python tests/train/train_entries.py",
    }
    return EntryModel(
        ids=ids, linear=quantised(table, weights.astype(np.float32)), bands=bands, recipe=recipe
    )


def _weight(example: Example) -> float:
    return {OTHERS: OTHER_WEIGHT, OWN: OWN_WEIGHT}.get(example.writer, 1.0)


def _bayes(taught: Taught, table: FeatureTable, labels: Sequence[int]) -> Numbers:
    """Log shares of the features in each entry's examples, their mean over entries taken off."""
    rows = matrix_of(taught.seen, table)
    targets = np.eye(max(labels) + 1, dtype=np.float32)[labels]
    mass = np.asarray(rows.T @ targets) + SMOOTHING
    shares = np.log(mass / mass.sum(axis=0))
    result: Numbers = shares - shares.mean(axis=1, keepdims=True)
    return result
