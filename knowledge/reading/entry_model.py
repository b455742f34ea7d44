"""Which entry of a list a message most likely asks for: linear scores, chances, and how sure.

1. Each word, pair of words and run of letters speaks for every entry with a weight: of a ridge
   regression and of naive Bayes, added (tests/support/entry_training.py).
2. Other readers' votes are added, and a softmax makes chances of the sums.
3. Sure: answer. Half sure: answer and offer the next two. Unsure: offer three.

A model is trained by `python tests/train/train_entries.py`; a test refuses a stale one.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from enum import StrEnum
from functools import cache
from importlib.resources import files
from typing import Any

import numpy as np

from knowledge.dataclass import dataclass
from knowledge.reading.entry_features import LENGTHS, Told, told
from knowledge.reading.feature_table import Numbers
from knowledge.reading.linear_model import LinearModel, places_of, unpacked
from knowledge.reading.stored import Source

NONE = "none"
"""Stands for what no entry answers."""

SHOWN = 3
"""Entries that a user sees: the answer and two offers, or three offers."""

REASONS_AT_MOST = 4
_REASON_SHARE = 0.2  # of the strongest word's vote; weaker words explain nothing


class Kind(StrEnum):
    """Whose entries are looked for; the name of the model's file."""

    RULES = "rules"
    SYMPTOMS = "symptoms"
    WEATHER = "weather"


class Band(StrEnum):
    """What to do with a guess: answer; answer and offer the next two; offer three."""

    SURE = "sure"
    HALF_SURE = "half sure"
    UNSURE = "unsure"


@dataclass(frozen=True, slots=True, kw_only=True)
class Bands:
    """Chances from which an answer is given, alone or beside others, and from which none is.

    `sharpness` scales the sums before the softmax. All are chosen by writers left out.
    """

    sharpness: float
    sure_from: float
    half_sure_from: float
    none_from: float

    def of(self, chance: float) -> Band:
        if chance >= self.sure_from:
            return Band.SURE
        return Band.HALF_SURE if chance >= self.half_sure_from else Band.UNSURE


@dataclass(frozen=True, slots=True, kw_only=True)
class Likely:
    """Entries with their chances, the likeliest first; `is_none`: very likely it is none."""

    ranked: tuple[tuple[str, float], ...]
    is_none: bool
    band: Band

    @property
    def ids(self) -> tuple[str, ...]:
        """The entries shown, the likeliest first."""
        return tuple(id for id, _ in self.ranked[:SHOWN])


@dataclass(frozen=True, slots=True, kw_only=True)
class EntryModel:
    """A column of weights for each id, NONE among them."""

    ids: tuple[str, ...]
    linear: LinearModel
    bands: Bands
    recipe: Mapping[str, Any]

    def likely(self, text: str, votes: Mapping[str, float] | None = None) -> Likely | None:
        """What the message is likely to ask for; None where it holds nothing that was ever read.

        `votes` are nats that other readers give to entries.
        """
        said = told(text)
        vector = self.linear.table.vector(said)
        if not len(vector.rows):
            return None
        scores = self.linear.scores(vector) + self._of(votes or {})
        chances = chances_of(scores, self.bands.sharpness)
        order = np.argsort(-scores, kind="stable")
        ranked = [(self.ids[at], float(chances[at])) for at in order if self.ids[at] != NONE]
        none = float(chances[self.ids.index(NONE)])
        return Likely(
            ranked=tuple(ranked),
            is_none=none >= self.bands.none_from,
            band=self.bands.of(ranked[0][1]),
        )

    def why(self, text: str, winner: str, other: str) -> tuple[str, ...]:
        """The words that spoke most for one entry against another."""
        said = told(text)
        vector = self.linear.table.vector(said)
        places = places_of(said)[vector.known]
        votes = self.linear.votes(
            vector, places, winner=self.ids.index(winner), other=self.ids.index(other)
        )
        return _strongest(said, votes)

    def _of(self, votes: Mapping[str, float]) -> Numbers:
        return np.array([votes.get(id, 0.0) for id in self.ids], dtype=np.float32)


def _strongest(said: Told, votes: Sequence[float] | Numbers) -> tuple[str, ...]:
    least = _REASON_SHARE * max(votes, default=0.0)
    told_for = [pair for pair in zip(votes, said.words, strict=False) if pair[0] > max(0.0, least)]
    told_for.sort(key=lambda pair: -pair[0])
    return tuple(dict.fromkeys(word for _, word in told_for))[:REASONS_AT_MOST]


def chances_of(scores: Numbers, sharpness: float) -> Numbers:
    """A softmax of the scores."""
    powers = np.exp((scores - scores.max()) * sharpness)
    chances: Numbers = powers / powers.sum()
    return chances


@cache
def entry_model(kind: Kind) -> EntryModel:
    """The model shipped for a kind of entries."""
    return read_model(files("knowledge.reading").joinpath(f"{kind}.npz"))


def read_model(source: Source) -> EntryModel:
    """The model of a packed file."""
    linear, recipe, _ = unpacked(source, LENGTHS)
    return EntryModel(
        ids=tuple(recipe["ids"]), linear=linear, bands=Bands(**recipe["bands"]), recipe=recipe
    )


def packed_model(model: EntryModel) -> bytes:
    """The bytes of a file that `read_model` reads."""
    return model.linear.packed(model.recipe)
