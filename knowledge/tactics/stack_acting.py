"""What acts on one formation, before it is written down as an effect."""

from __future__ import annotations

from knowledge.dataclass import dataclass
from knowledge.effects import Condition, Effect, EffectId, Mechanism, OptionId, Points, TraitScale
from knowledge.engine import ALWAYS
from knowledge.situation import OnCourt
from knowledge.sources import COMMON_PRACTICE, Source
from knowledge.tactics.stack_formations import Plan
from knowledge.vocabulary import Trait

HALF = 0.5
"""Rallies in which we serve, of all; in the others we receive."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Acting:
    """One effect on one plan, before it is written down."""

    name: str
    because: str
    points: Points
    mechanism: Mechanism
    when: Condition = ALWAYS
    source: Source = COMMON_PRACTICE
    scale: TraitScale | None = None


def written(plan: Plan, one: Acting) -> Effect:
    return Effect(
        id=EffectId(f"{one.name}:{plan.id}"),
        on=frozenset({OptionId(plan.id)}),
        points=one.points,
        mechanism=one.mechanism,
        because=one.because,
        source=one.source,
        when=one.when,
        scale=one.scale,
    )


def turned(share: float) -> float:
    """From a share of the rallies to -1 (never) up to 1 (always); half is 0, as by the score."""
    return 2 * share - 1


def scale_of(one: OnCourt, trait: Trait, *, up: bool, habit: bool = False) -> TraitScale:
    profile = one.profile
    return TraitScale(
        estimate=profile.habit(trait) if habit else profile.skill(trait),
        towards=1 if up else -1,
        player=one.player,
        trait=trait,
        habit=habit,
    )
