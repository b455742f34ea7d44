"""A reader of ideas, words and pieces of words, so that a word never seen still says something.

1. A text is its ideas, its words and the runs of three and four letters inside its words.
2. A piece weighs the more the fewer ways of asking have it; each text weighs 1 in all (Salton and
   Buckley 1988, term weighting).
3. How well a text goes with a rule: multinomial naive Bayes over those weights (Rennie et al.
   2003), all rules alike likely before anything is said.
"""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from knowledge.rulebook.words import Reading

RUNS = (3, 4)
"""Letters of a piece; a word's two edges count as letters."""

SMOOTHING = 0.1
"""Weight that each rule lends every piece (ours, by leave-one-writer-out)."""

Floats = NDArray[np.float64]


def pieces(reading: Reading) -> Counter[str]:
    """Ideas, words and runs of letters, each kind marked so that none is taken for another."""
    found = Counter(f"idea {idea}" for idea in sorted(reading.ideas))
    for word in reading.words:
        found[f"word {word}"] += 1
        edged = f" {word} "
        found.update(edged[at : at + n] for n in RUNS for at in range(len(edged) - n + 1))
    return found


@dataclass(frozen=True, slots=True, kw_only=True)
class PieceReader:
    """For each piece its weight and how likely it is in each rule's questions."""

    at: Mapping[str, int]
    rarity: Floats
    log_shares: Floats

    def log_chances(self, reading: Reading) -> Floats:
        """For each rule, the log of its chance."""
        where, weight = weighed(pieces(reading), self.at, self.rarity)
        fit: Floats = weight @ self.log_shares[where]
        fit -= fit.max()
        fit -= np.log(np.exp(fit).sum())
        return fit


def weighed(said: Counter[str], at: Mapping[str, int], rarity: Floats) -> tuple[list[int], Floats]:
    """Places of a text's known pieces, and their weights, of length 1 in all."""
    known = [(at[piece], count) for piece, count in said.items() if piece in at]
    where = [place for place, _ in known]
    weight = rarity[where] * np.array([1 + math.log(count) for _, count in known])
    return where, weight / (np.linalg.norm(weight) or 1.0)


def read_pieces(rules: Sequence[Sequence[Reading]]) -> PieceReader:
    """The reader of rules, each given by its ways of asking."""
    counted = [[pieces(form) for form in forms] for forms in rules]
    owners = Counter(piece for forms in counted for said in forms for piece in said)
    at = {piece: n for n, piece in enumerate(owners)}
    texts = sum(map(len, counted))
    rarity = np.array([1 + math.log((1 + texts) / (1 + owners[piece])) for piece in at])
    mass = np.full((len(at), len(rules)), SMOOTHING)
    for n, forms in enumerate(counted):
        for said in forms:
            where, weight = weighed(said, at, rarity)
            mass[where, n] += weight
    return PieceReader(at=at, rarity=rarity, log_shares=np.log(mass / mass.sum(axis=0)))
