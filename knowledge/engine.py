"""The ranking: one currency for rules of thumb, notes and computed facts.

x[o] is our chance to win the rally, given that the situation has arisen, that we follow option
o until the situation changes, and that everything else goes on as usual. Effects are declared
in rally points, added on the log-odds scale (LOGIT_PER_POINT), and shown in points of the
actual chance. The gain of a plan is, to first order, the sum of share times points: the
performance-difference lemma (Kakade and Langford 2002, from memory).
"""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace

from knowledge.advice import Confidence
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
from knowledge.evidence import TraitEstimate
from knowledge.normal import chances_of_being_best, logistic, logit
from knowledge.situation import Situation
from knowledge.sources import SourceKind
from knowledge.vocabulary import EvidenceId, RallyChance, RallyPoints

__all__ = [
    "ALWAYS",
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
    "rank",
    "trait_fact",
]

LOGIT_PER_POINT = 0.04
"""Log-odds of one rally point: d(logit x) = dx / (x (1 - x)) = 0.01 / 0.25 at an even rally."""

RULE_OF_THUMB_CLIP_POINTS = 15.0
"""The sum of rules of thumb on one option never moves further than this."""

FLOOR_SD_POINTS = 2.0
"""Doubt that every option keeps: rules are never exact."""

REST_OF_GROUP = 0.25
"""In a mechanism group the largest counts in full and the rest this much."""

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
    p_best: float

    @property
    def points(self) -> RallyPoints:
        """Points of actual chance away from the neutral rally: the parts and the clip, added."""
        return RallyPoints(sum(part.points for part in self.parts) + self.clipped_points)


@dataclass(frozen=True, slots=True, kw_only=True)
class Unknown:
    """An unknown fact: what knowing it is worth in points, and the top option per answer.

    A little-known trait is one too: "yes" is one standard deviation above its level, "no" one
    below (two points that keep its mean and variance).
    """

    fact: FactId
    worth: RallyPoints
    if_yes: OptionId
    if_no: OptionId
    condition: Condition


@dataclass(frozen=True, slots=True, kw_only=True)
class Ranking:
    """All options, best first, with the confidence and the most useful unknowns."""

    ranked: tuple[Ranked, ...]
    confidence: Confidence
    unknowns: tuple[Unknown, ...]
    share: float

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


@dataclass(frozen=True, slots=True, kw_only=True)
class _Belief:
    """An effect as believed now: whether it applies, and its points with that doubt in."""

    effect: Effect
    truth: Truth
    mean: float
    variance: float


def rank(decision: Decision, situation: Situation) -> Ranking:
    """Order the options by our chance to win the rally.

    Effects that hold for every option alike would move the level, not the order; declare
    them on `neutral` instead.
    """
    beliefs = _beliefs(decision.effects, situation)
    ranked = _ranked(decision, beliefs)
    return Ranking(
        ranked=ranked,
        confidence=_confidence(ranked),
        unknowns=_unknowns(decision, beliefs),
        share=decision.share,
    )


def _beliefs(effects: Iterable[Effect], situation: Situation) -> list[_Belief]:
    return _not_replaced([_believe(effect, effect.when.test(situation)) for effect in effects])


def _not_replaced(beliefs: Sequence[_Belief]) -> list[_Belief]:
    """Where a computed effect states the same as a rule of thumb, the computed one stands."""
    computed = {
        one.effect.states
        for one in beliefs
        if one.effect.states
        and one.effect.source.kind is SourceKind.COMPUTED
        and one.truth is not Truth.NO
    }
    return [
        one
        for one in beliefs
        if not (one.effect.is_rule_of_thumb and one.effect.states in computed)
    ]


def _believe(effect: Effect, truth: Truth) -> _Belief:
    """The effect's points given what is known: scaled by its trait, then by its condition.

    Scale: level l with variance v, s = max(0, +-l), or s = +-l both ways: mean s m, variance
    s^2 sd^2 + v (m^2 + sd^2).
    Unknown condition with prevalence pi: mean pi m, variance pi sd^2 + pi (1 - pi) m^2.
    """
    mean, variance = effect.points.mean, effect.points.sd**2
    if effect.scale is not None:
        level = effect.scale.level
        doubt = effect.scale.estimate.variance
        mean, variance = (
            level * mean,
            level**2 * variance + doubt * (mean**2 + variance),
        )
    if truth is Truth.UNKNOWN:
        holds = effect.when.prevalence
        mean, variance = holds * mean, holds * variance + holds * (1 - holds) * mean**2
    return _Belief(effect=effect, truth=truth, mean=mean, variance=variance)


def _acting(option: OptionId, beliefs: Iterable[_Belief]) -> list[_Belief]:
    return [one for one in beliefs if option in one.effect.on and one.truth is not Truth.NO]


def _ranked(decision: Decision, beliefs: Sequence[_Belief]) -> tuple[Ranked, ...]:
    options = [
        _weigh(option, decision.neutral, _acting(option.id, beliefs)) for option in decision.options
    ]
    options.sort(key=lambda one: (-one.logit, one.option.id))
    best_chances = chances_of_being_best(
        [one.logit for one in options], [one.logit_variance for one in options]
    )
    return tuple(replace(one, p_best=p) for one, p in zip(options, best_chances, strict=True))


def _weigh(option: Option, neutral: RallyChance, acting: Sequence[_Belief]) -> Ranked:
    weights = _mechanism_weights(acting)
    mean, clip = _total(acting, weights)
    variance = FLOOR_SD_POINTS**2 + sum(
        weights[one.effect.id] ** 2 * one.variance for one in acting
    )
    base = logit(neutral)
    position = base + LOGIT_PER_POINT * mean
    chance = logistic(position)
    shown = _secant(base, position)
    return Ranked(
        option=option,
        chance=RallyChance(chance),
        sd=chance * (1 - chance) * LOGIT_PER_POINT * math.sqrt(variance),
        logit=position,
        logit_variance=LOGIT_PER_POINT**2 * variance,
        parts=tuple(
            Part(
                effect=one.effect,
                points=RallyPoints(shown * weights[one.effect.id] * one.mean),
                truth=one.truth,
            )
            for one in sorted(acting, key=lambda each: -abs(weights[each.effect.id] * each.mean))
        ),
        clipped_points=RallyPoints(shown * clip),
        p_best=0.0,
    )


def _total(acting: Sequence[_Belief], weights: Mapping[EffectId, float]) -> tuple[float, float]:
    """Declared points in all, after the clip of the rules of thumb, and the clip itself."""
    total = sum(weights[one.effect.id] * one.mean for one in acting)
    rules = sum(weights[one.effect.id] * one.mean for one in acting if one.effect.is_rule_of_thumb)
    clip = _clip(rules) - rules
    return total + clip, clip


def _clip(points: float) -> float:
    return max(-RULE_OF_THUMB_CLIP_POINTS, min(RULE_OF_THUMB_CLIP_POINTS, points))


def _secant(base: float, position: float) -> float:
    """Points of actual chance per declared point, so that the parts add up to the difference."""
    if math.isclose(base, position, rel_tol=0.0, abs_tol=1e-9):
        chance = logistic(base)
        return 100 * LOGIT_PER_POINT * chance * (1 - chance)
    return 100 * LOGIT_PER_POINT * (logistic(position) - logistic(base)) / (position - base)


def _mechanism_weights(beliefs: Iterable[_Belief]) -> dict[EffectId, float]:
    """1 for the largest effect of each mechanism and sign, REST_OF_GROUP for the others."""
    groups: dict[tuple[Mechanism, bool], list[tuple[float, EffectId]]] = defaultdict(list)
    for one in beliefs:
        groups[one.effect.mechanism, one.mean < 0].append((-abs(one.mean), one.effect.id))
    weights: dict[EffectId, float] = {}
    for group in groups.values():
        for place, (_, effect_id) in enumerate(sorted(group)):
            weights[effect_id] = 1.0 if place == 0 else REST_OF_GROUP
    return weights


def _confidence(ranked: Sequence[Ranked]) -> Confidence:
    p_best = ranked[0].p_best
    if p_best >= CLEAR_CHANCE:
        return Confidence.CLEAR
    return Confidence.LEAN if p_best >= LEAN_CHANCE else Confidence.TOSS_UP


def _unknowns(decision: Decision, beliefs: Sequence[_Belief]) -> tuple[Unknown, ...]:
    """Value of information per unknown fact: E[best if known] - best now, in points."""
    now = {option.id: _chance(option.id, decision.neutral, beliefs) for option in decision.options}
    asked = [*_open_conditions(beliefs), *_doubtful_traits(beliefs)]
    found = [_worth_of_knowing(decision.neutral, beliefs, now, condition) for condition in asked]
    return tuple(sorted(found, key=lambda one: (-one.worth, one.fact)))


def _open_conditions(beliefs: Iterable[_Belief]) -> Iterable[Condition]:
    found: dict[FactId, Condition] = {}
    for one in beliefs:
        if one.truth is Truth.UNKNOWN:
            found.setdefault(one.effect.when.fact, one.effect.when)
    return found.values()


def _doubtful_traits(beliefs: Iterable[_Belief]) -> Iterable[Condition]:
    """Each trait that scales an effect, as a condition: is its level above what we believe?"""
    facts = {one.effect.scale.fact for one in beliefs if one.effect.scale}
    return [
        Condition(
            name=f"{fact} is high", fact=fact, prevalence=0.5, test=lambda _situation: Truth.UNKNOWN
        )
        for fact in sorted(fact for fact in facts if fact is not None)
    ]


def _worth_of_knowing(
    neutral: RallyChance,
    beliefs: Sequence[_Belief],
    now: Mapping[OptionId, float],
    condition: Condition,
) -> Unknown:
    """Only the options that the fact touches change; the others keep their chance of now."""
    touched = {option for one in beliefs if _depends(one, condition) for option in one.effect.on}
    chances = []
    for holds in (True, False):
        settled = [_settled(one, condition, holds=holds) for one in beliefs]
        changed = {option: _chance(option, neutral, settled) for option in touched}
        chances.append({**now, **changed})
    yes, no = chances
    pi = condition.prevalence
    informed = pi * max(yes.values()) + (1 - pi) * max(no.values())
    uninformed = max(pi * yes[option] + (1 - pi) * no[option] for option in now)
    return Unknown(
        fact=condition.fact,
        worth=RallyPoints(100 * (informed - uninformed)),
        if_yes=_top(yes),
        if_no=_top(no),
        condition=condition,
    )


def _top(chances: Mapping[OptionId, float]) -> OptionId:
    return min(chances, key=lambda option: (-chances[option], option))


def _chance(option: OptionId, neutral: RallyChance, beliefs: Sequence[_Belief]) -> float:
    acting = _acting(option, beliefs)
    mean, _ = _total(acting, _mechanism_weights(acting))
    return logistic(logit(neutral) + LOGIT_PER_POINT * mean)


def _depends(one: _Belief, condition: Condition) -> bool:
    if one.effect.scale is not None and one.effect.scale.fact == condition.fact:
        return True
    return one.truth is Truth.UNKNOWN and one.effect.when.fact == condition.fact


def _settled(one: _Belief, condition: Condition, *, holds: bool) -> _Belief:
    """The belief if the fact were known: equal conditions follow, negations flip.

    Two conditions on one fact are the same test if their names are equal; any other condition
    on that fact is its negation. A trait moves one standard deviation up or down.
    """
    if not _depends(one, condition):
        return one
    effect = one.effect
    if effect.scale is not None and effect.scale.fact == condition.fact:
        return _believe(replace(effect, scale=_moved(effect.scale, up=holds)), one.truth)
    same = effect.when.name == condition.name
    return _believe(effect, Truth.of(holds is same))


def _moved(scale: TraitScale, *, up: bool) -> TraitScale:
    estimate = scale.estimate
    step = math.sqrt(estimate.variance)
    level = max(-1.0, min(1.0, estimate.level + (step if up else -step)))
    known = TraitEstimate(level=level, variance=0.0, evidence=estimate.evidence)
    return replace(scale, estimate=known)
