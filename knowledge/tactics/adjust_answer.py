"""Which one change to make: each by the chance that its leak is the one, times what it is worth.

A leak's chance starts from the trade's share of it, is raised by our own weaknesses in the book,
and moves with the lost rallies of this match that are tagged with how they ended:

    P(leak) = (K p + n) / (K + N),   p ~ prior (1 + weakness),   N tagged among the leaks weighed,

the mean of a Dirichlet belief that weighs like K lost rallies; a few count for
nothing. gain = P(leak) points share / 100, in rallies of 100. So the log breaks ties first and
decides only when it is long.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence, Set
from typing import Final

from knowledge.advice import Confidence
from knowledge.dataclass import dataclass
from knowledge.engine import confidence_of
from knowledge.evidence import TraitEstimate
from knowledge.normal import chances_of_being_best
from knowledge.planning.weighing import is_weak
from knowledge.situation import OnCourt, Situation
from knowledge.tactics.changes import (
    Change,
    Trouble,
    changes,
    leak_phrases,
    trouble_phrases,
    troubles,
)
from knowledge.tactics.symptoms import find_symptoms, told_in
from knowledge.vocabulary import TRAITS, Trait, TraitKind

PRIOR_RALLIES: Final = 100.0
"""Lost rallies that the trade's shares of leaks weigh like: so many that three of one kind turn
nothing round, and a dozen do. Our own choice: advice that flips after three rallies is noise."""

FEWEST_TAGGED: Final = 8
"""Tagged lost rallies below which the log moves nothing: a bad spell is no leak. Our own choice."""

NAMED_SHARE: Final = 0.85
"""Chance that a leak named in words is the one; players know what they miss. Our own choice."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Culprit:
    """Whoever of us is noted to be weak where the leak is."""

    player: OnCourt
    trait: Trait
    estimate: TraitEstimate


@dataclass(frozen=True, slots=True, kw_only=True)
class Weighed:
    """A change with the chance that its leak is the one and what it gains, in rallies of 100."""

    change: Change
    chance: float
    gain: float
    sd: float
    ended: int
    culprit: Culprit | None

    @property
    def variance(self) -> float:
        return self.sd**2


@dataclass(frozen=True, slots=True, kw_only=True)
class Adjustment:
    """All changes that come into question, best first, and what they were weighed by.

    `trouble` is None where nothing was named. `tagged` rallies were lost in a way that one of
    the leaks explains, of `lost` in all.
    """

    ranked: tuple[Weighed, ...]
    trouble: Trouble | None
    tagged: int
    lost: int

    @property
    def best(self) -> Weighed:
        return self.ranked[0]

    @property
    def p_best(self) -> float:
        """Chance that the best one really gains most."""
        means = [one.gain for one in self.ranked]
        return chances_of_being_best(means, [one.variance for one in self.ranked])[0]

    @property
    def confidence(self) -> Confidence:
        """The same in words."""
        return confidence_of(self.p_best)


def adjustment_of(situation: Situation) -> Adjustment:
    """Every change that our shots allow, weighed for what is said, noted and logged."""
    trouble = trouble_said(situation)
    named = _leaks_said(situation, trouble)
    usable = [one for one in _in_question(trouble) if not _is_beyond(one, situation)]
    log = _Log.of(situation, usable)
    chances = _chances(usable, named, log, situation)
    ranked = [_weighed(one, chances[one.id], log, situation) for one in usable]
    ranked.sort(key=lambda one: (-one.gain, one.change.id))
    return Adjustment(
        ranked=tuple(ranked), trouble=trouble, tagged=sum(log.ends.values()), lost=log.lost
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Log:
    """The lost rallies of this match: how many in all, and by the tags that a leak explains."""

    lost: int
    ends: Counter[str]
    leaks: Counter[str]

    @classmethod
    def of(cls, situation: Situation, usable: Sequence[Change]) -> _Log:
        lost = [rally.tags for rally in situation.played if not rally.won_by_us]
        leaks = Counter(tag for one in usable for tag in one.ends)
        ends = Counter(tag for tags in lost for tag in tags if tag in leaks)
        return cls(lost=len(lost), ends=ends, leaks=leaks)

    @property
    def counts(self) -> int:
        """Tagged rallies that move the chances: none of a few."""
        tagged = sum(self.ends.values())
        return tagged if tagged >= FEWEST_TAGGED else 0

    def of_leak(self, change: Change) -> float:
        """Those that this leak lost; one that several explain is split between them."""
        return sum(self.ends[tag] / self.leaks[tag] for tag in change.ends) if self.counts else 0.0

    def ended(self, change: Change) -> int:
        """The same as counted."""
        return sum(self.ends[tag] for tag in change.ends)


def trouble_said(situation: Situation) -> Trouble | None:
    """The first trouble that the words name, by itself, by a leak or by a symptom of theirs."""
    by_id = {one.id: one for one in troubles()}
    for hit in told_in(situation, trouble_phrases()):
        return by_id[hit.id]
    seen = {one.id for one in find_symptoms(situation)}
    return next((one for one in troubles() if one.patterns & seen), None)


def _leaks_said(situation: Situation, trouble: Trouble | None) -> frozenset[str]:
    """The leaks that the words name, of the trouble they name; none without one."""
    if trouble is None:
        return frozenset()
    told = {hit.id for hit in told_in(situation, leak_phrases())}
    return frozenset(one.id for one in changes() if one.id in told and one.trouble == trouble.id)


def _in_question(trouble: Trouble | None) -> Sequence[Change]:
    return [one for one in changes() if trouble is None or one.trouble == trouble.id]


def _is_beyond(change: Change, situation: Situation) -> bool:
    """Whether it takes a shot that nobody of us owns, by our own notes."""
    ours = situation.ours
    return bool(ours) and any(
        all(is_weak(player, trait) for player in ours) for trait in change.needs
    )


def _chances(
    usable: Sequence[Change],
    named: frozenset[str],
    log: _Log,
    situation: Situation,
) -> dict[str, float]:
    """P(leak) of each, adding up to 1."""
    of_trouble = {one.id: one.prior for one in troubles()}
    raw = {
        one.id: one.prior * of_trouble[one.trouble] * (1 + _weakness(one, situation))
        for one in usable
    }
    prior = _with_named(raw, named & raw.keys())
    return {
        one.id: (PRIOR_RALLIES * prior[one.id] + log.of_leak(one)) / (PRIOR_RALLIES + log.counts)
        for one in usable
    }


def _with_named(raw: Mapping[str, float], named: Set[str]) -> dict[str, float]:
    """Shares of 1: NAMED_SHARE for the leaks named, the rest for the others."""
    inside = sum(raw[id] for id in named)
    outside = sum(raw.values()) - inside
    if not inside or not outside:
        return {id: value / (inside + outside) for id, value in raw.items()}
    return {
        id: NAMED_SHARE * value / inside if id in named else (1 - NAMED_SHARE) * value / outside
        for id, value in raw.items()
    }


def _weakness(change: Change, situation: Situation) -> float:
    """How weak the weaker of us is where the leak is, 0 to 1."""
    found = _culprit(change, situation)
    return 0.0 if found is None else -found.estimate.level


def _culprit(change: Change, situation: Situation) -> Culprit | None:
    noted = [
        Culprit(player=player, trait=trait, estimate=estimate)
        for player in situation.ours
        for trait in change.weak
        if (estimate := _estimate(player, trait)).level < 0 and not estimate.is_open
    ]
    return min(noted, key=lambda one: one.estimate.level, default=None)


def _estimate(player: OnCourt, trait: Trait) -> TraitEstimate:
    is_habit = TRAITS[trait].kind is TraitKind.HABIT
    return player.profile.habit(trait) if is_habit else player.profile.skill(trait)


def _weighed(change: Change, chance: float, log: _Log, situation: Situation) -> Weighed:
    """Var(P x) = P^2 sd^2 + Var(P) x^2, with the variance of a Dirichlet share for P."""
    of_chance = chance * (1 - chance) / (PRIOR_RALLIES + log.counts + 1)
    doubt = change.sd * change.share / 100
    return Weighed(
        change=change,
        chance=chance,
        gain=chance * change.per_100,
        sd=float((chance**2 * doubt**2 + of_chance * change.per_100**2) ** 0.5),
        ended=log.ended(change),
        culprit=_culprit(change, situation),
    )
