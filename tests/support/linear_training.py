"""Ridge regression on the features of messages, for every model of the bot (SciPy)."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

import numpy as np
import scipy.sparse
from scipy.sparse.linalg import LinearOperator, cg

from bot.chat.features import GROUP_LENGTHS
from knowledge.reading.feature_table import FeatureTable, Numbers
from knowledge.reading.keys import Message
from knowledge.reading.linear_model import LinearModel

TOLERANCE = 0.01
"""How much of the slope at nothing the solver leaves. Less than that moves no figure by a line."""

FEWEST_MESSAGES = 2  # and no fewer: what one message alone has is not solved for
"""A feature seen in one message only is dropped after training: that costs 0.35 in 100 of the open
voices' best topics (measured, left out in turn) and more than halves the file."""
INT8_TOP = 127


def matrix_of(seen: Sequence[Message], table: FeatureTable) -> scipy.sparse.csr_matrix:
    """One row a message, `FeatureTable.vector` of all of them at once.

    A feature that occurs in two groups is summed.
    """
    shape = (len(seen), len(table.keys))
    keys = np.fromiter((key for one in seen for group in one.groups for key in group), np.uint32)
    sizes = np.array([[len(group) for group in one.groups] for one in seen], dtype=np.intp)
    groups = np.repeat(np.arange(sizes.size), sizes.ravel())
    columns = np.minimum(np.searchsorted(table.keys, keys), len(table.keys) - 1)
    known = table.keys[columns] == keys
    telling = table.telling[columns].astype(np.float32) * known
    lengths = np.sqrt(np.bincount(groups, telling * telling, sizes.size))
    wanted = np.tile(table.lengths, len(seen))
    factors = np.divide(wanted, lengths, where=lengths > 0, out=np.zeros(sizes.size))
    values = (telling * factors[groups]).astype(np.float32)[known]
    counts = np.bincount(groups[known] // len(table.lengths), minlength=len(seen))
    ends = np.concatenate([[0], np.cumsum(counts)])
    return scipy.sparse.csr_matrix((values, columns[known], ends), shape=shape, dtype=np.float32)


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
    tolerance: float = TOLERANCE,
) -> tuple[FeatureTable, Numbers]:
    """Features and weights: minimises sum_i weight_i |x_i W - target_i|² + ridge |W|²."""
    table = FeatureTable.of(seen, lengths)
    rows = matrix_of(seen, table)
    messages = np.diff(rows.tocsc().indptr)
    shared, often = messages > 1, messages >= fewest
    counts = weight * _left_by_their_own(rows[:, ~shared], weight, ridge)
    weights = _ridge(rows[:, shared], targets, counts, ridge, tolerance)
    kept = FeatureTable(keys=table.keys[often], telling=table.telling[often], lengths=lengths)
    return kept, weights[often[shared]]


def _left_by_their_own(own: scipy.sparse.csr_matrix, weight: Numbers, ridge: float) -> Numbers:
    """What part of a message's weight is left once features of that message alone have their say.

    Their best weights follow from what the others leave: put in, they only make the message count
    less, so that none of them need be solved for.
    """
    squares = np.asarray(own.multiply(own).sum(axis=1), dtype=np.float32).ravel()
    left: Numbers = ridge / (ridge + weight * squares)
    return left


def _ridge(
    rows: scipy.sparse.csr_matrix,
    targets: Numbers,
    weight: Numbers,
    ridge: float,
    tolerance: float,
) -> Numbers:
    """The weights (features, labels), all labels in one descent: the rows are read once for all."""
    scaled = scipy.sparse.diags_array(np.sqrt(weight)).astype(np.float32) @ rows
    turned = scaled.T.tocsr()
    wanted = turned @ (targets * np.sqrt(weight)[:, None])
    shape = wanted.shape

    def slope(flat: Numbers) -> Numbers:
        weights = flat.reshape(shape)
        sloping: Numbers = turned @ (scaled @ weights) + np.float32(ridge) * weights
        return sloping.ravel()

    size = wanted.size
    operator = LinearOperator((size, size), matvec=slope, dtype=np.float32)
    found, _ = cg(operator, wanted.ravel(), rtol=tolerance)
    return np.asarray(found, dtype=np.float32).reshape(shape)


def quantised(table: FeatureTable, weights: Numbers) -> LinearModel:
    """The model with weights in whole bytes and the scale of each label's column."""
    scale = np.abs(weights).max(axis=0) / INT8_TOP
    whole: np.ndarray[Any, np.dtype[np.int8]] = np.rint(weights / scale).astype(np.int8)
    return LinearModel(table=table, weights=whole, scale=scale.astype(np.float32))
