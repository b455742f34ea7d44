"""Which entry a message is likest to, by its words, pairs of words and pieces of words.

1. A way of telling is a bag of features: stems, pairs of stems, and runs of letters of each word,
   so that a slip of the finger or another ending still has most of them.
2. A feature weighs the more the fewer entries have it (inverse document frequency, Spärck Jones
   1972), a run of letters less than a word.
3. Likeness of two bags is the cosine of their weights; an entry is as like as its likest ways of
   telling and all of them together (Rocchio's centroid).
4. Where none is like enough, or two are as like, none is meant.
"""

from __future__ import annotations

import itertools
import math
from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field

from knowledge.rulebook.words import stem
from knowledge.said_phrases import ARTICLES, fold

LETTERS = 4
"""Length of a run of letters."""

PIECE_COUNTS = 0.35
PAIR_COUNTS = 0.4
IDEA_COUNTS = 1.5
"""Weight of a run of letters, of a pair and of an idea beside a word (ours, by leaving
one form out)."""

NEAREST = 3
NEAREST_COUNTS = 0.2
"""How many ways of telling speak for an entry, and how much beside its centroid (likewise)."""

LIKE_ENOUGH = 0.2
LEAD_ENOUGH = 0.04
"""Likeness from which an entry counts as meant, and its lead over the next (ours): by leaving one
form out, such guesses are right in more than half."""

Bag = Mapping[str, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class Near:
    """An entry and how like it is, 0 to 1; `lead` is how far before the next."""

    id: str
    likeness: float
    lead: float


@dataclass(frozen=True, slots=True, eq=False)
class NearestForm:
    """Entries by their ways of telling; `untelling` words tell nothing by themselves.

    `ideas` are words and phrases that mean the same: a message with one has the idea.
    """

    forms: Mapping[str, Sequence[str]]
    untelling: frozenset[str] = frozenset()
    ideas: Mapping[str, Sequence[str]] = field(default_factory=dict)
    _rarity: Mapping[str, float] = field(init=False, default_factory=dict)
    _bags: Mapping[str, Sequence[Bag]] = field(init=False, default_factory=dict)
    _centroids: Mapping[str, Bag] = field(init=False, default_factory=dict)

    def __post_init__(self) -> None:
        raw = {id: [self._features(form) for form in forms] for id, forms in self.forms.items()}
        owners = Counter(one for bags in raw.values() for one in set().union(*bags))
        rarity = {one: math.log((len(raw) + 1) / n) for one, n in owners.items()}
        object.__setattr__(self, "_rarity", rarity)
        bags = {id: [self._weighed(bag) for bag in many] for id, many in raw.items()}
        object.__setattr__(self, "_bags", bags)
        object.__setattr__(self, "_centroids", {id: _mean(many) for id, many in bags.items()})

    def nearest(self, said: str) -> Near | None:
        """The likest entry; None where no feature is shared."""
        bag = self._weighed(self._features(said))
        likeness = {id: self._likeness(id, bag) for id in self.forms}
        first, second = sorted(likeness, key=lambda id: -likeness[id])[:2]
        if not likeness[first]:
            return None
        lead = likeness[first] - likeness[second]
        return Near(id=first, likeness=likeness[first], lead=lead)

    def meant(self, said: str) -> str | None:
        """The likest entry where it is like enough and no other is as like."""
        near = self.nearest(said)
        if near is None or near.likeness < LIKE_ENOUGH or near.lead < LEAD_ENOUGH:
            return None
        return near.id

    def _likeness(self, id: str, bag: Bag) -> float:
        alike = sorted((_cosine(bag, form) for form in self._bags[id]), reverse=True)[:NEAREST]
        near = sum(alike) / NEAREST
        return NEAREST_COUNTS * near + (1 - NEAREST_COUNTS) * _cosine(bag, self._centroids[id])

    def _features(self, said: str) -> Counter[str]:
        words = [word for word in fold(said).split() if word not in ARTICLES and word.isalnum()]
        stems = [stem(word) for word in words]
        pairs = [f"{one} {two}" for one, two in itertools.pairwise(stems)]
        telling = [word for word in words if word not in self.untelling]
        pieces = [f"#{piece}" for word in telling for piece in _pieces(word)]
        text = f" {' '.join(words)} "
        ideas = [
            f"={idea}"
            for idea, said in self.ideas.items()
            if any(f" {one} " in text for one in said)
        ]
        return Counter([*(stem(word) for word in telling), *pairs, *pieces, *ideas])

    def _weighed(self, features: Mapping[str, int]) -> Bag:
        """Weights of a bag, of length 1; what no form has counts for nothing."""
        weights = {
            one: self._rarity[one] * _kind_counts(one) for one in features if one in self._rarity
        }
        size = math.sqrt(sum(weight**2 for weight in weights.values()))
        return {one: weight / size for one, weight in weights.items()} if size else {}


def _kind_counts(feature: str) -> float:
    if feature.startswith("#"):
        return PIECE_COUNTS
    if feature.startswith("="):
        return IDEA_COUNTS
    return PAIR_COUNTS if " " in feature else 1.0


def _pieces(word: str) -> Iterable[str]:
    padded = f"<{word}>"
    return dict.fromkeys(padded[n : n + LETTERS] for n in range(max(1, len(padded) - LETTERS + 1)))


def _mean(bags: Sequence[Bag]) -> Bag:
    total: dict[str, float] = {}
    for bag in bags:
        for one, weight in bag.items():
            total[one] = total.get(one, 0.0) + weight
    size = math.sqrt(sum(weight**2 for weight in total.values()))
    return {one: weight / size for one, weight in total.items()} if size else {}


def _cosine(one: Bag, other: Bag) -> float:
    small, large = sorted((one, other), key=len)
    return sum(weight * large[word] for word, weight in small.items() if word in large)
