"""What is believed of each effect now, and how beliefs add up to points for an option."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from knowledge.effects import Effect, EffectId, Mechanism, OptionId, Truth
from knowledge.normal import logistic, logit
from knowledge.situation import Situation
from knowledge.sources import SourceKind
from knowledge.vocabulary import LOGIT_PER_POINT, RallyChance

RULE_OF_THUMB_CLIP_POINTS = 15.0
"""The sum of rules of thumb on one option never moves further than this."""

FLOOR_SD_POINTS = 2.0
"""Doubt that every option keeps: rules are never exact."""

REST_OF_GROUP = 0.25
"""In a mechanism group the largest counts in full and the rest this much."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Belief:
    """An effect as believed now: whether it applies, and its points with that doubt in."""

    effect: Effect
    truth: Truth
    mean: float
    variance: float


def beliefs_of(effects: Iterable[Effect], situation: Situation) -> list[Belief]:
    return _not_replaced([believe(effect, effect.when.test(situation)) for effect in effects])


def _not_replaced(beliefs: Sequence[Belief]) -> list[Belief]:
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


def believe(effect: Effect, truth: Truth) -> Belief:
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
    return Belief(effect=effect, truth=truth, mean=mean, variance=variance)


def acting_on(option: OptionId, beliefs: Iterable[Belief]) -> list[Belief]:
    return [one for one in beliefs if option in one.effect.on and one.truth is not Truth.NO]


def mechanism_weights(beliefs: Iterable[Belief]) -> dict[EffectId, float]:
    """1 for the largest effect of each mechanism and sign, REST_OF_GROUP for the others."""
    groups: dict[tuple[Mechanism, bool], list[tuple[float, EffectId]]] = defaultdict(list)
    for one in beliefs:
        groups[one.effect.mechanism, one.mean < 0].append((-abs(one.mean), one.effect.id))
    weights: dict[EffectId, float] = {}
    for group in groups.values():
        for place, (_, effect_id) in enumerate(sorted(group)):
            weights[effect_id] = 1.0 if place == 0 else REST_OF_GROUP
    return weights


def total_points(
    acting: Sequence[Belief], weights: Mapping[EffectId, float]
) -> tuple[float, float]:
    """Declared points in all, after the clip of the rules of thumb, and the clip itself."""
    total = sum(weights[one.effect.id] * one.mean for one in acting)
    rules = sum(weights[one.effect.id] * one.mean for one in acting if one.effect.is_rule_of_thumb)
    clip = _clip(rules) - rules
    return total + clip, clip


def _clip(points: float) -> float:
    return max(-RULE_OF_THUMB_CLIP_POINTS, min(RULE_OF_THUMB_CLIP_POINTS, points))


def chance_of(neutral: RallyChance, acting: Sequence[Belief]) -> float:
    """Our chance with an option on which these act."""
    mean, _ = total_points(acting, mechanism_weights(acting))
    return logistic(logit(neutral) + LOGIT_PER_POINT * mean)
