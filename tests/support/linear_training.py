"""Ridge regression on the features of messages, for every model of the bot (scikit-learn)."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

import numpy as np
import scipy.sparse
from sklearn.linear_model import Ridge

from bot.chat.features import GROUP_LENGTHS
from knowledge.reading.feature_table import FeatureTable, Numbers
from knowledge.reading.keys import Message
from knowledge.reading.linear_model import LinearModel

TOLERANCE = 5e-3  # of the least-squares solver; 1e-3 moved one voice by a line, at twice the time
FEWEST_MESSAGES = 2
"""A feature seen in one message only is dropped after training: that costs 0.35 in 100 of the open
voices' best topics (measured, left out in turn) and more than halves the file."""
INT8_TOP = 127


def matrix_of(seen: Sequence[Message], table: FeatureTable) -> scipy.sparse.csr_matrix:
    """One row a message; a feature that occurs in two groups is summed."""
    vectors = [table.vector(one) for one in seen]
    ends = np.cumsum([0, *(len(vector.rows) for vector in vectors)])
    values = np.concatenate([vector.values for vector in vectors])
    columns = np.concatenate([vector.rows for vector in vectors])
    shape = (len(seen), len(table.keys))
    return scipy.sparse.csr_matrix((values, columns, ends), shape=shape, dtype=np.float32)


def one_of(labels: Sequence[int], count: int) -> Numbers:
    """A row a message: 1 for its label, and a little less than nothing for the others."""
    targets = np.full((len(labels), count), -1 / count, dtype=np.float32)
    targets[np.arange(len(labels)), labels] = 1
    return targets


def fit(
    seen: Sequence[Message],
    targets: Numbers,
    weight: Numbers,
    *,
    ridge: float,
    lengths: tuple[float, ...] = GROUP_LENGTHS,
    fewest: int = FEWEST_MESSAGES,
) -> tuple[FeatureTable, Numbers]:
    """Features and weights: minimises sum_i weight_i |x_i W - target_i|² + ridge |W|²."""
    table = FeatureTable.of(seen, lengths)
    rows = matrix_of(seen, table)
    model = Ridge(alpha=ridge, solver="lsqr", fit_intercept=False, tol=TOLERANCE)
    model.fit(rows, targets, sample_weight=weight)
    often = np.diff(rows.tocsc().indptr) >= fewest
    kept = FeatureTable(keys=table.keys[often], telling=table.telling[often], lengths=lengths)
    return kept, np.asarray(np.atleast_2d(model.coef_).T[often], dtype=np.float32)


def quantised(table: FeatureTable, weights: Numbers) -> LinearModel:
    """The model with weights in whole bytes and the scale of each label's column."""
    scale = np.abs(weights).max(axis=0) / INT8_TOP
    whole: np.ndarray[Any, np.dtype[np.int8]] = np.rint(weights / scale).astype(np.int8)
    return LinearModel(table=table, weights=whole, scale=scale.astype(np.float32))
