"""What is believed of each effect now, and how beliefs add up to points for an option."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from knowledge.dataclass import dataclass
from knowledge.effects import Effect, EffectId, Mechanism, OptionId, TraitScale, Truth
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


def believe(effect: Effect, truth: Truth, *, scale: TraitScale | None = None) -> Belief:
    """The effect's points given what is known: scaled by its trait, then by its condition.

    Scale (another than the effect's own, where one is given): level l with variance v,
    s = max(0, +-l), or s = +-l both ways: mean s m, variance s^2 sd^2 + v (m^2 + sd^2).
    Unknown condition with prevalence pi: mean pi m, variance pi sd^2 + pi (1 - pi) m^2.
    """
    mean, variance = effect.points.mean, effect.points.sd**2
    scale = scale or effect.scale
    if scale is not None:
        level = scale.level
        doubt = scale.estimate.variance
        mean, variance = (
            level * mean,
            level**2 * variance + doubt * (mean**2 + variance),
        )
    if truth is Truth.UNKNOWN:
        holds = effect.when.prevalence
        mean, variance = holds * mean, holds * variance + holds * (1 - holds) * mean**2
    return Belief(effect=effect, truth=truth, mean=mean, variance=variance)


def acting_on(option: OptionId, beliefs: Sequence[Belief]) -> list[Belief]:
    """What acts on the option, as far as it may hold."""
    return [beliefs[at] for at in places_on(option, beliefs) if beliefs[at].truth is not Truth.NO]


def places_on(option: OptionId, beliefs: Sequence[Belief]) -> list[int]:
    """Where among the beliefs those about the option stand."""
    return [at for at, one in enumerate(beliefs) if option in one.effect.on]


def mechanism_weights(beliefs: Sequence[Belief]) -> dict[EffectId, float]:
    """1 for the largest effect of each mechanism and sign, REST_OF_GROUP for the others.

    Of those that are as large, the most certain, so that nothing hangs on how they are named.
    """
    largest: dict[tuple[Mechanism, bool], tuple[float, float, EffectId]] = {}
    weights: dict[EffectId, float] = {}
    for one in beliefs:
        effect, mean = one.effect, one.mean
        group = effect.mechanism, mean < 0
        place = -abs(mean), one.variance, effect.id
        weights[effect.id] = REST_OF_GROUP
        if group not in largest or place < largest[group]:
            largest[group] = place
    for *_, effect_id in largest.values():
        weights[effect_id] = 1.0
    return weights


def total_points(
    acting: Sequence[Belief], weights: Mapping[EffectId, float]
) -> tuple[float, float]:
    """Declared points in all, after the clip of the rules of thumb, and the clip itself."""
    total = rules = 0.0
    for one in acting:
        points = weights[one.effect.id] * one.mean
        total += points
        if one.effect.is_rule_of_thumb:
            rules += points
    clip = _clip(rules) - rules
    return total + clip, clip


def _clip(points: float) -> float:
    return max(-RULE_OF_THUMB_CLIP_POINTS, min(RULE_OF_THUMB_CLIP_POINTS, points))


def chance_of(neutral: RallyChance, acting: Sequence[Belief]) -> float:
    """Our chance with an option on which these act."""
    mean, _ = total_points(acting, mechanism_weights(acting))
    return logistic(logit(neutral) + LOGIT_PER_POINT * mean)
