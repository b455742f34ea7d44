"""Two weighings of a question's ideas against every rule's ways of asking.

1. An idea weighs the more the fewer rules it belongs to (inverse document frequency, Spärck Jones
   1972).
2. Likeness of a question to one way of asking: what both say, against what either says alone
   (the ratio model of Tversky 1977); missing ideas count more than additional ones.
3. Odds that a question of these ideas is one of a rule's (naive Bayes on the ways of asking).
"""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Mapping, Sequence, Set
from dataclasses import dataclass
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

MISSING_COUNTS = 0.6
"""Weight of an idea of the form that the question lacks (ours, by the tuning voices)."""

ADDED_COUNTS = 0.25
"""Weight of an idea that only the question has: people tell the whole rally (likewise)."""

ADDED_AT_MOST = 2.0
"""Times the form's own weight that added ideas may weigh: a long story is still a question."""

SECOND_COUNTS = 0.4
"""Weight of the second likest form beside the likest: one lucky form is no rule (likewise)."""

CORE_COUNTS = 0.3
"""Share of the likeness that hangs on the ideas which half of a rule's forms have (likewise)."""

CORE_SHARE = 0.5

CORE_MISSED = 0.25
"""Share of its weight that a core idea not said costs in log odds (likewise)."""

WITHOUT_SUBJECT = 0.6
"""A rule whose subject is not said keeps so much of its likeness (likewise)."""

ODDS_WITHOUT_SUBJECT = 3.0
"""And loses so much of its log odds (likewise)."""

SMOOTHING = 1.2
"""Forms' worth of what all rules say, mixed into what one rule's forms say (likewise)."""

RARELY = 0.01
"""Floor of a share, so that no idea alone decides."""

Floats = NDArray[np.float64]

Ideas = Set[str]


@dataclass(frozen=True, kw_only=True)
class IdeaReader:
    """Weights of ideas, the forms (rows) that have them, and for each rule (row) what they tell."""

    at: Mapping[str, int]
    weights: Floats
    forms: Floats
    starts: tuple[int, ...]
    core: Floats
    tells: Floats
    subjects: tuple[frozenset[str], ...]
    subject_forms: NDArray[np.bool_]

    def likeness(self, ideas: Ideas) -> Floats:
        """Of each rule, 0 to 1: how alike the question and the rule's two likest forms are."""
        if not ideas:
            return np.zeros(len(self.subjects))
        where = self._places(ideas)
        ratios = self._ratios(where)
        best = [self._best(n, ratios, len(ideas)) for n in range(len(self.subjects))]
        whole = np.array([likest for likest, _ in best])
        core, is_core = self._core_weight, self.core[:, where] > 0
        said = is_core @ self.weights[where] / np.where(core > 0, core, 1.0)
        whole *= 1 - CORE_COUNTS + CORE_COUNTS * np.where(core > 0, said, 1.0)
        lacks = ~self._named(ideas) & self.subject_forms[[row for _, row in best]]
        return np.where(lacks, whole * WITHOUT_SUBJECT, whole)

    def _places(self, ideas: Ideas) -> list[int]:
        """In one order always: sums of one order round alike, and so do ties."""
        return sorted(self.at[idea] for idea in ideas)

    @cached_property
    def _form_weight(self) -> Floats:
        return self.forms @ self.weights

    @cached_property
    def _core_weight(self) -> Floats:
        return (self.core > 0) @ self.weights

    @cached_property
    def _missed(self) -> Floats:
        """What a rule's odds lose for each of its core ideas that is not said."""
        return self.core * self.weights * CORE_MISSED

    @cached_property
    def _missed_all(self) -> Floats:
        missed: Floats = self._missed.sum(axis=1)
        return missed

    def _ratios(self, where: Sequence[int]) -> Floats:
        common = self.forms[:, where] @ self.weights[where]
        form = self._form_weight
        added = np.minimum(self.weights[where].sum() - common, ADDED_AT_MOST * form)
        ratios: Floats = common / (common + MISSING_COUNTS * (form - common) + ADDED_COUNTS * added)
        return ratios

    def _best(self, n: int, ratios: Floats, ideas: int) -> tuple[float, int]:
        """Likeness of a rule's two likest forms, and the row of the likest."""
        own = ratios[self.starts[n] : self.starts[n + 1]]
        second, first = np.argpartition(own, -2)[-2:]
        row = self.starts[n] + int(first)
        # "what shoes are allowed": one word of a longer way of asking is no question
        if ideas == 1 and own[first] < 1:
            return 0.0, row
        return float((own[first] + SECOND_COUNTS * own[second]) / (1 + SECOND_COUNTS)), row

    def log_odds(self, ideas: Ideas) -> Floats:
        """Of each rule, in nats, against a question of any rule."""
        where = self._places(ideas)
        odds: Floats = (self.tells[:, where] + self._missed[:, where]).sum(
            axis=1
        ) - self._missed_all
        odds[~self._named(ideas)] -= ODDS_WITHOUT_SUBJECT
        return odds

    def _named(self, ideas: Ideas) -> NDArray[np.bool_]:
        return np.array([not said or not said.isdisjoint(ideas) for said in self.subjects])


def read_ideas(
    rules: Sequence[Sequence[frozenset[str]]], subjects: Sequence[frozenset[str]]
) -> IdeaReader:
    """The reader of rules, each given by the ideas of its forms; empty ones are left out."""
    kept = [[form for form in forms if form] for forms in rules]
    owners = Counter(idea for forms in kept for idea in frozenset[str]().union(*forms))
    at = {idea: n for n, idea in enumerate(sorted(owners))}
    rows = [form for forms in kept for form in forms]
    have = np.zeros((len(rows), len(at)))
    for row, form in enumerate(rows):
        have[row, [at[idea] for idea in form]] = 1.0
    starts = np.cumsum([0, *map(len, kept)])
    counts = np.diff(starts)[:, None]
    shares = np.add.reduceat(have, starts[:-1]) / counts
    usual = have.mean(axis=0)
    mixed = (shares * counts + SMOOTHING * usual) / (counts + SMOOTHING)
    names = [
        bool(said & form) or not said
        for said, forms in zip(subjects, kept, strict=True)
        for form in forms
    ]
    weights = np.array([math.log((len(kept) + 1) / (owners[idea] + 0.5)) for idea in at])
    return IdeaReader(
        at=at,
        weights=np.maximum(weights, RARELY),
        forms=have,
        starts=tuple(int(start) for start in starts),
        core=np.where(shares >= CORE_SHARE, shares, 0.0),
        tells=np.log((mixed + RARELY) / (usual + RARELY)),
        subjects=tuple(subjects),
        subject_forms=np.array(names),
    )
