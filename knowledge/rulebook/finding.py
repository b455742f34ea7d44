"""Which rule a question asks for: two ways of weighing its words, sure only where they agree.

1. Every way of asking for a rule is a set of ideas (words.py); an idea weighs the more the fewer
   rules it belongs to (inverse document frequency, Spärck Jones 1972).
2. Likeness of a question to one way of asking: what both say, against what either says alone
   (the ratio model of Tversky 1977); missing ideas count more than additional ones.
3. Odds that a question of these ideas is one of a rule's (naive Bayes on the ways of asking).
4. The likest rule is taken; where the odds prefer another, that one is the other reading.
"""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from functools import cache, cached_property

from knowledge.rulebook.entry import Rule, rules
from knowledge.rulebook.words import Vocabulary, read_vocabulary, words_table

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

WITHOUT_SUBJECT = 0.6
"""A rule whose subject is not said keeps so much of its likeness (likewise)."""

ODDS_WITHOUT_SUBJECT = 3.0
"""And loses so much of its log odds (likewise)."""

SMOOTHING = 1.2
"""Forms' worth of what all rules say, mixed into what one rule's forms say (likewise)."""

RARELY = 0.01
"""Floor of a share, so that no idea alone decides."""

LIKE_ENOUGH = 0.42
"""Likeness below which no rule fits well enough: then the referee or the desk is asked."""

NEAR_ENOUGH = 0.25
"""Likeness from which a rule that does not fit is still offered as a button."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Found:
    """The rule meant, if one fits, and others that may be; `others` are the likest first."""

    rule: Rule | None
    others: tuple[Rule, ...] = ()

    @property
    def is_sure(self) -> bool:
        return self.rule is not None and not self.others


@dataclass(frozen=True)
class Finder:
    """Rules with the ideas of their ways of asking, weighed once."""

    rules: tuple[Rule, ...]
    vocabulary: Vocabulary
    forms: tuple[tuple[frozenset[str], ...], ...] = field(init=False)

    def __post_init__(self) -> None:
        read = tuple(tuple(map(self.vocabulary.ideas, rule.asked)) for rule in self.rules)
        object.__setattr__(self, "forms", read)

    @cached_property
    def weights(self) -> Mapping[str, float]:
        """How much an idea tells, in nats: log of all rules over those that have it."""
        owners = Counter(idea for forms in self.forms for idea in frozenset().union(*forms))
        return {idea: math.log((len(self.rules) + 1) / (n + 0.5)) for idea, n in owners.items()}

    @cached_property
    def shares(self) -> tuple[Mapping[str, float], ...]:
        """Of each rule's forms, the share that has an idea."""
        return tuple(_shares(forms) for forms in self.forms)

    @cached_property
    def everywhere(self) -> Mapping[str, float]:
        """Of all forms, the share that has an idea."""
        return _shares([form for forms in self.forms for form in forms])

    def find(self, said: str) -> Found:
        """The rule that a text asks for, and what else it may mean."""
        ideas = self.vocabulary.ideas(said) & self.weights.keys()
        likeness = [self._likeness(n, ideas) for n in range(len(self.rules))]
        likest = sorted(range(len(self.rules)), key=lambda n: -likeness[n])
        if likeness[likest[0]] < LIKE_ENOUGH:
            near = [self.rules[n] for n in likest[:2] if likeness[n] >= NEAR_ENOUGH]
            return Found(rule=None, others=tuple(near))
        probable = max(range(len(self.rules)), key=lambda n: self._log_odds(n, ideas))
        others = () if probable == likest[0] else (self.rules[probable],)
        return Found(rule=self.rules[likest[0]], others=others)

    def leans(self, said: str) -> bool:
        """Whether a text speaks of nothing by itself: "and with a ref, who calls it then?"."""
        return self.vocabulary.ideas(said) & self.weights.keys() <= self.vocabulary.leaning

    def _weight(self, ideas: frozenset[str] | set[str]) -> float:
        return sum(self.weights[idea] for idea in ideas)

    def _likeness(self, n: int, ideas: frozenset[str]) -> float:
        """0 to 1: how alike the question and the rule's two likest forms are."""
        alike = sorted((self._ratio(form, ideas), at) for at, form in enumerate(self.forms[n]))
        (second, _), (first, at) = alike[-2:]
        whole = (first + SECOND_COUNTS * second) / (1 + SECOND_COUNTS)
        core = {idea for idea, share in self.shares[n].items() if share >= CORE_SHARE}
        said = self._weight(core & ideas) / self._weight(core) if core else 1.0
        whole *= 1 - CORE_COUNTS + CORE_COUNTS * said
        if len(ideas) == 1 and first < 1:
            return (
                0.0  # "what shoes are allowed": one word of a longer way of asking is no question
            )
        is_named = self._names_subject(n, ideas) or not self._names_subject(n, self.forms[n][at])
        return whole if is_named else whole * WITHOUT_SUBJECT

    def _ratio(self, form: frozenset[str], ideas: frozenset[str]) -> float:
        if form.isdisjoint(ideas):
            return 0.0
        common = self._weight(form & ideas)
        missing, added = self._weight(form - ideas), self._weight(ideas - form)
        added = min(added, ADDED_AT_MOST * (common + missing))
        whole = common + MISSING_COUNTS * missing + ADDED_COUNTS * added
        return common / whole

    def _log_odds(self, n: int, ideas: frozenset[str]) -> float:
        """In nats, against a question of any rule."""
        forms = len(self.forms[n])
        odds = 0.0 if self._names_subject(n, ideas) else -ODDS_WITHOUT_SUBJECT
        for idea in ideas:
            usual, here = self.everywhere[idea], self.shares[n].get(idea, 0.0)
            mixed = (here * forms + SMOOTHING * usual) / (forms + SMOOTHING)
            odds += math.log((mixed + RARELY) / (usual + RARELY))
        return odds - sum(
            share * self.weights[idea] / 4
            for idea, share in self.shares[n].items()
            if share >= CORE_SHARE and idea not in ideas
        )

    def _names_subject(self, n: int, ideas: frozenset[str]) -> bool:
        subject = self.rules[n].subject
        return not subject or bool(subject & ideas)


def _shares(forms: Sequence[frozenset[str]]) -> Mapping[str, float]:
    said = Counter(idea for form in forms for idea in form)
    return {idea: count / len(forms) for idea, count in said.items()}


@cache
def _finder() -> Finder:
    forms = [form for rule in rules() for form in rule.asked]
    return Finder(rules=rules(), vocabulary=read_vocabulary(words_table(), forms))


def find_rule(words: str, *, before: str = "") -> Found:
    """The rule that the words ask for; `before` is the question that they go on from.

    A question that stands by itself is read alone, one that leans together with the one before;
    where that stays unsure ("and with a referee?"), the one before is still meant.
    """
    finder = _finder()
    alone = finder.find(words)
    if not before or (alone.is_sure and not finder.leans(words)):
        return alone
    both, earlier = finder.find(f"{before} {words}"), finder.find(before)
    if both.is_sure or earlier.rule is None:
        return both if both.rule is not None else alone
    return earlier if finder.leans(words) else both
