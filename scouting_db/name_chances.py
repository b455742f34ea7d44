"""How likely each of some players is meant by words that are nobody's name as they stand.

A logistic regression over what the words and each name have in common, trained by
tests/train/train_names.py on what people typed who had not read our rules. The weights lie in
data/name_weights.json, one a line and by name, so that they can be read.
"""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from functools import lru_cache
from importlib.resources import files
from math import exp, log
from typing import Any

from knowledge.dataclass import dataclass
from scouting_db.name_pairing import Pairing, features, glance, pairing

COMPARED = 4
"""Players whose name is looked at closely; any other is too far off beside them."""

LEARNED_FROM = 10
"""Names of a roster that the model learned from. On a longer one some name comes as near by chance
more often, in proportion."""

_WORTH_A_LOOK = 0.4
"""How much alike words and a name must be at a glance for them to be compared closely."""

_CLEARLY = 0.3
_WORDS, _NAMES = 3, 10


@dataclass(frozen=True, slots=True, kw_only=True)
class NameWeights:
    """What each feature speaks for a player being meant, in log odds."""

    bias: float
    weights: Mapping[str, float]
    recipe: Mapping[str, Any]

    def log_odds(self, found: Mapping[str, float]) -> float:
        return self.bias + sum(self.weights.get(name, 0.0) * value for name, value in found.items())


@lru_cache(maxsize=1)
def name_weights() -> NameWeights:
    text = files("scouting_db").joinpath("data", "name_weights.json").read_text(encoding="utf-8")
    stored = json.loads(text)
    return NameWeights(bias=stored["bias"], weights=stored["weights"], recipe=stored["recipe"])


Name = tuple[str, tuple[str, ...]]
"""A name as the roster writes it, and its aliases."""


def chances(words: Sequence[str], names: Sequence[Name], *, of: int) -> list[float]:
    """For each name the chance that the folded words mean it, on a roster of so many names.

    They need not add up to 1: brothers may both be meant, or nobody is.
    """
    model, more = name_weights(), log(max(1.0, of / LEARNED_FROM))
    seen = features_of(words, names)
    return [0.0 if one is None else _chance(model.log_odds(one) - more) for one in seen]


def features_of(words: Sequence[str], names: Sequence[Name]) -> list[dict[str, float] | None]:
    """What speaks for each name and against it; None where it is not near, or others are nearer."""
    glances = [glance(words, *name) if words else 0.0 for name in names]
    ranked = sorted(range(len(names)), key=lambda each: -glances[each])
    near = sorted(each for each in ranked[:COMPARED] if glances[each] >= _WORTH_A_LOOK)
    pairs = [pairing(words, *names[each]) for each in near]
    found: list[dict[str, float] | None] = [None] * len(names)
    for at, each in enumerate(near):
        found[each] = _beside(pairs, at, words=len(words), names=len(names))
    return found


def _beside(pairs: Sequence[Pairing], at: int, *, words: int, names: int) -> dict[str, float]:
    """The pairing's features, and how the others' names fit."""
    pair = pairs[at]
    others = max((one.whole for place, one in enumerate(pairs) if place != at), default=0.0)
    return features(pair, of_words=words) | {
        "behind": max(0.0, others - pair.whole),
        "nearest": float(pair.whole >= others),
        "ahead": min(_CLEARLY, max(0.0, pair.whole - others)),
        "others' whole": others if pair.whole < others else 0.0,
        "words": words / _WORDS,
        "names": min(names, _NAMES) / _NAMES,
    }


def _chance(log_odds: float) -> float:
    return 1.0 / (1.0 + exp(-log_odds)) if log_odds > -50 else 0.0
