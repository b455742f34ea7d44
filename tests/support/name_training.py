"""Trains the weights by which a name that is nobody's as it stands is supposed to be somebody's."""

from __future__ import annotations

import json
from collections.abc import Sequence
from functools import lru_cache
from typing import Any

import numpy as np
import numpy.typing as npt
import sklearn
from name_examples import Lookup, all_of, digest, seen, sources
from sklearn.linear_model import LogisticRegression
from sklearn.preprocessing import StandardScaler

from knowledge.dataclass import dataclass
from scouting_db.name_chances import NameWeights

MADE_UP_COUNTS = 0.3
"""Weight of a stranger made up beside a line that somebody typed. Of .3 and 1 the better on writers
left out."""

STRENGTH = 0.1
"""Inverse of the penalty; .3 and 1 do the same on writers left out."""

ROUNDED = 4

Numbers = npt.NDArray[np.float64]


@dataclass(frozen=True, slots=True, kw_only=True)
class Seen:
    """A row a name that was compared: its features, the share it is right in, what it counts."""

    rows: tuple[dict[str, float], ...]
    shares: Numbers
    counts: Numbers


@lru_cache(maxsize=64)
def seen_of(source: str) -> Seen:
    """What one writer's look-ups teach."""
    rows, shares, counts = [], [], []
    for one in all_of([source]):
        for features, share in seen(one):
            rows.append(features)
            shares.append(share)
            counts.append(_count(one))
    return Seen(rows=tuple(rows), shares=np.array(shares), counts=np.array(counts))


def _count(one: Lookup) -> float:
    return MADE_UP_COUNTS if one.made_up else 1.0


def trained(chosen: Sequence[str]) -> NameWeights:
    """Weights learned from these writers.

    A name that is one of two answers as good counts half for being right, half against.
    """
    taught = [seen_of(source) for source in chosen]
    names = sorted({name for one in taught for row in one.rows for name in row})
    table = np.array([[row.get(name, 0.0) for name in names] for one in taught for row in one.rows])
    shares = np.concatenate([one.shares for one in taught])
    counts = np.concatenate([one.counts for one in taught])
    scaler = StandardScaler().fit(table)
    scaled = scaler.transform(table)
    model = LogisticRegression(C=STRENGTH, max_iter=1000)
    model.fit(
        np.vstack([scaled, scaled]),
        np.repeat([1, 0], len(shares)),
        sample_weight=np.concatenate([shares * counts, (1 - shares) * counts]),
    )
    weights = model.coef_[0] / scaler.scale_
    bias = float(model.intercept_[0] - weights @ scaler.mean_)
    told = {
        name: round(float(weight), ROUNDED) for name, weight in zip(names, weights, strict=True)
    }
    return NameWeights(bias=round(bias, ROUNDED), weights=told, recipe=_recipe(chosen, len(shares)))


def _recipe(chosen: Sequence[str], rows: int) -> dict[str, Any]:
    return {
        "trained by": "tests/train/train_names.py",
        "lines": digest(),
        "writers": len(chosen),
        "names compared": rows,
        "strangers made up count": MADE_UP_COUNTS,
        "strength": STRENGTH,
        "scikit-learn": sklearn.__version__,
    }


def written(model: NameWeights) -> str:
    """The file of the weights: one a line, so that two trainings can be compared by eye."""
    stored = {"recipe": model.recipe, "bias": model.bias, "weights": model.weights}
    return json.dumps(stored, indent=1, ensure_ascii=False) + "\n"


def everybody() -> tuple[str, ...]:
    return tuple(sources())
