"""What is most worth asking: the value, in points, of knowing what is not known."""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace

from knowledge.beliefs import Belief, acting_on, believe, chance_of
from knowledge.effects import Condition, Decision, FactId, OptionId, TraitScale, Truth
from knowledge.evidence import TraitEstimate
from knowledge.vocabulary import RallyChance, RallyPoints


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


def unknowns_of(decision: Decision, beliefs: Sequence[Belief]) -> tuple[Unknown, ...]:
    """Value of information per unknown fact, largest first: E[best if known] - best now."""
    acting = {option.id: acting_on(option.id, beliefs) for option in decision.options}
    now = {option: chance_of(decision.neutral, those) for option, those in acting.items()}
    asked = [*_open_conditions(beliefs), *_doubtful_traits(beliefs)]
    found = [_worth_of_knowing(decision.neutral, acting, now, condition) for condition in asked]
    return tuple(sorted(found, key=lambda one: (-one.worth, one.fact)))


def _open_conditions(beliefs: Iterable[Belief]) -> Iterable[Condition]:
    found: dict[FactId, Condition] = {}
    for one in beliefs:
        if one.truth is Truth.UNKNOWN:
            found.setdefault(one.effect.when.fact, one.effect.when)
    return found.values()


def _doubtful_traits(beliefs: Iterable[Belief]) -> Iterable[Condition]:
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
    acting: Mapping[OptionId, Sequence[Belief]],
    now: Mapping[OptionId, float],
    condition: Condition,
) -> Unknown:
    """Only the options that the fact touches change; the others keep their chance of now."""
    touched = {
        option: those
        for option, those in acting.items()
        if any(_depends(one, condition) for one in those)
    }
    yes, no = (
        {option: _chance_if(neutral, those, condition, holds) for option, those in touched.items()}
        for holds in (True, False)
    )
    yes, no = {**now, **yes}, {**now, **no}
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


def _chance_if(
    neutral: RallyChance, those: Sequence[Belief], condition: Condition, holds: bool
) -> float:
    settled = [_settled(one, condition, holds=holds) for one in those]
    return chance_of(neutral, [one for one in settled if one.truth is not Truth.NO])


def _top(chances: Mapping[OptionId, float]) -> OptionId:
    return min(chances, key=lambda option: (-chances[option], option))


def _depends(one: Belief, condition: Condition) -> bool:
    if one.effect.scale is not None and one.effect.scale.fact == condition.fact:
        return True
    return one.truth is Truth.UNKNOWN and one.effect.when.fact == condition.fact


def _settled(one: Belief, condition: Condition, *, holds: bool) -> Belief:
    """The belief if the fact were known: equal conditions follow, negations flip.

    Two conditions on one fact are the same test if their names are equal; any other condition
    on that fact is its negation. A trait moves one standard deviation up or down.
    """
    if not _depends(one, condition):
        return one
    effect = one.effect
    if effect.scale is not None and effect.scale.fact == condition.fact:
        return believe(replace(effect, scale=_moved(effect.scale, up=holds)), one.truth)
    same = effect.when.name == condition.name
    return believe(effect, Truth.of(holds is same))


def _moved(scale: TraitScale, *, up: bool) -> TraitScale:
    estimate = scale.estimate
    step = math.sqrt(estimate.variance)
    level = max(-1.0, min(1.0, estimate.level + (step if up else -step)))
    known = TraitEstimate(level=level, variance=0.0, evidence=estimate.evidence)
    return replace(scale, estimate=known)
