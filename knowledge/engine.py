"""The ranking: one currency for rules of thumb, notes and computed facts.

x[o] is our chance to win the rally, given that the situation has arisen, that we follow option
o until the situation changes, and that everything else goes on as usual. Effects are declared
in rally points, added on the log-odds scale (LOGIT_PER_POINT), and shown in points of the
actual chance. The gain of a plan is, to first order, the sum of share times points: the
performance-difference lemma (Kakade and Langford 2002, from memory).
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import field
from typing import NamedTuple

from knowledge.advice import Confidence
from knowledge.asking import Unknown, unknowns_of
from knowledge.beliefs import (
    FLOOR_SD_POINTS,
    REST_OF_GROUP,
    RULE_OF_THUMB_CLIP_POINTS,
    Belief,
    acting_on,
    beliefs_of,
    mechanism_weights,
    total_points,
)
from knowledge.dataclass import dataclass
from knowledge.effects import (
    ALWAYS,
    Condition,
    Decision,
    Effect,
    EffectId,
    FactId,
    Mechanism,
    Option,
    OptionId,
    Points,
    TraitScale,
    Truth,
    trait_fact,
)
from knowledge.normal import chances_of_being_best, logistic, logit
from knowledge.situation import Situation
from knowledge.sources import Source
from knowledge.vocabulary import LOGIT_PER_POINT, EvidenceId, RallyChance, RallyPoints

__all__ = [
    "ALWAYS",
    "FLOOR_SD_POINTS",
    "LOGIT_PER_POINT",
    "REST_OF_GROUP",
    "RULE_OF_THUMB_CLIP_POINTS",
    "Condition",
    "Decision",
    "Effect",
    "EffectId",
    "FactId",
    "Mechanism",
    "Option",
    "OptionId",
    "Part",
    "Points",
    "Ranked",
    "Ranking",
    "TraitScale",
    "Truth",
    "Unknown",
    "confidence_of",
    "rank",
    "trait_fact",
]

CLEAR_CHANCE = 0.80
LEAN_CHANCE = 0.60
"""Words for the chance that the best option is best."""

ASK_POINTS = 0.5
"""An unknown is asked for when knowing it is worth at least this."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """What one effect contributes to one option, in points of the actual chance."""

    effect: Effect
    points: RallyPoints
    truth: Truth

    @property
    def evidence(self) -> tuple[EvidenceId, ...]:
        """The notes and rallies behind it."""
        return self.effect.scale.estimate.evidence if self.effect.scale else ()

    @property
    def source(self) -> Source:
        """Those as a reply names them; the effect's own source without any."""
        scale = self.effect.scale
        return self.effect.source if scale is None else scale.estimate.source


@dataclass(frozen=True, slots=True, kw_only=True)
class Ranked:
    """An option with its estimate: chance and its sd, and what each effect contributes."""

    option: Option
    chance: RallyChance
    sd: float
    logit: float
    logit_variance: float
    parts: tuple[Part, ...]
    clipped_points: RallyPoints
    others: tuple[tuple[float, float], ...] = field(default=(), repr=False)
    """Log-odds and variance of the options it was ranked with."""

    @property
    def p_best(self) -> float:
        """The chance that it is really the best of them; worked out when asked for."""
        every = ((self.logit, self.logit_variance), *self.others)
        return chances_of_being_best(
            [mean for mean, _ in every], [variance for _, variance in every]
        )[0]

    @property
    def points(self) -> RallyPoints:
        """Points of actual chance away from the neutral rally: the parts and the clip, added."""
        return RallyPoints(sum(part.points for part in self.parts) + self.clipped_points)


@dataclass(frozen=True, slots=True, kw_only=True)
class Ranking:
    """All options, best first, with the confidence and the most useful unknowns."""

    ranked: tuple[Ranked, ...]
    share: float
    decision: Decision = field(repr=False)
    beliefs: tuple[Belief, ...] = field(repr=False)

    @property
    def unknowns(self) -> tuple[Unknown, ...]:
        """What is not known, most worth knowing first; worked out when asked for."""
        return unknowns_of(self.decision, self.beliefs)

    @property
    def confidence(self) -> Confidence:
        """How sure the best one is, in words."""
        return confidence_of(self.best.p_best)

    @property
    def best(self) -> Ranked:
        return self.ranked[0]

    def of(self, option: OptionId) -> Ranked:
        """The estimate of one option; KeyError for one that was not ranked."""
        for one in self.ranked:
            if one.option.id == option:
                return one
        raise KeyError(option)

    def gain(self, over: OptionId | None = None) -> RallyPoints:
        """Points of actual chance that the best option gains over another (default: second)."""
        if len(self.ranked) == 1:
            return RallyPoints(0.0)
        other = self.ranked[1] if over is None else self.of(over)
        return RallyPoints(100 * (self.best.chance - other.chance))

    def ask(self) -> Unknown | None:
        """The unknown most worth asking for, if it is worth ASK_POINTS."""
        first = next(iter(self.unknowns), None)
        return first if first and first.worth >= ASK_POINTS else None


def rank(decision: Decision, situation: Situation) -> Ranking:
    """Order the options by our chance to win the rally.

    Effects that hold for every option alike would move the level, not the order; declare
    them on `neutral` instead.
    """
    beliefs = beliefs_of(decision.effects, situation)
    return Ranking(
        ranked=_ranked(decision, beliefs),
        share=decision.share,
        decision=decision,
        beliefs=tuple(beliefs),
    )


class _Weighed(NamedTuple):
    """An option with what acts on it, added up."""

    option: Option
    acting: Sequence[Belief]
    weights: Mapping[EffectId, float]
    clip: float
    logit: float
    variance: float

    @property
    def logit_variance(self) -> float:
        return LOGIT_PER_POINT**2 * self.variance


def _ranked(decision: Decision, beliefs: Sequence[Belief]) -> tuple[Ranked, ...]:
    weighed = [
        _weigh(option, decision.neutral, acting_on(option.id, beliefs))
        for option in decision.options
    ]
    weighed.sort(key=lambda one: (-one.logit, one.option.id))
    levels = [(one.logit, one.logit_variance) for one in weighed]
    return tuple(
        _explained(one, decision.neutral, others=(*levels[:place], *levels[place + 1 :]))
        for place, one in enumerate(weighed)
    )


def _weigh(option: Option, neutral: RallyChance, acting: Sequence[Belief]) -> _Weighed:
    weights = mechanism_weights(acting)
    mean, clip = total_points(acting, weights)
    variance = FLOOR_SD_POINTS**2 + sum(
        [weights[one.effect.id] ** 2 * one.variance for one in acting]
    )
    return _Weighed(
        option=option,
        acting=acting,
        weights=weights,
        clip=clip,
        logit=logit(neutral) + LOGIT_PER_POINT * mean,
        variance=variance,
    )


def _explained(
    weighed: _Weighed, neutral: RallyChance, *, others: tuple[tuple[float, float], ...]
) -> Ranked:
    """The option's chance, and what each effect contributes to it."""
    chance = logistic(weighed.logit)
    shown = _secant(logit(neutral), weighed.logit)
    counted = [(weighed.weights[one.effect.id] * one.mean, one) for one in weighed.acting]
    counted.sort(key=lambda each: -abs(each[0]))
    return Ranked(
        option=weighed.option,
        chance=RallyChance(chance),
        sd=chance * (1 - chance) * LOGIT_PER_POINT * math.sqrt(weighed.variance),
        logit=weighed.logit,
        logit_variance=weighed.logit_variance,
        parts=tuple(
            [
                Part(effect=one.effect, points=RallyPoints(shown * points), truth=one.truth)
                for points, one in counted
            ]
        ),
        clipped_points=RallyPoints(shown * weighed.clip),
        others=others,
    )


def _secant(base: float, position: float) -> float:
    """Points of actual chance per declared point, so that the parts add up to the difference."""
    if math.isclose(base, position, rel_tol=0.0, abs_tol=1e-9):
        chance = logistic(base)
        return 100 * LOGIT_PER_POINT * chance * (1 - chance)
    return 100 * LOGIT_PER_POINT * (logistic(position) - logistic(base)) / (position - base)


def confidence_of(p_best: float) -> Confidence:
    """How sure the best option is, in words."""
    if p_best >= CLEAR_CHANCE:
        return Confidence.CLEAR
    return Confidence.LEAN if p_best >= LEAN_CHANCE else Confidence.TOSS_UP
