"""The choice in one phase, A or B or both alike, out of what is said of either opponent.

Whatever makes a ball at A good makes one at B bad as soon as one is chosen over the other, so
every effect of the shot stands on both options with opposite signs, and an even split is the plain
choice. Rules of the shot alone (lanes, hips) say where, not who, and stay out. What comes of the
partner, cover and cold, stands on the one option alone: a covered player is worth less, which
makes the partner no better a target.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace

from knowledge.effects import (
    Condition,
    Decision,
    Effect,
    EffectId,
    Mechanism,
    Option,
    OptionId,
    Points,
    Truth,
    trait_fact,
)
from knowledge.engine import rank
from knowledge.planning import sizes
from knowledge.planning.weighing import from_trait
from knowledge.situation import OnCourt, Situation
from knowledge.sources import COMMON_PRACTICE
from knowledge.tactics.target_phases import PHASES, AtOne, TargetPhase
from knowledge.tactics.target_sizes import COVERED_KEEPS, COVERED_SD, FREEZE, MIXED_SHADES
from knowledge.vocabulary import Trait

EVEN = OptionId("even")

COVERS = (Trait.SQUEEZES_MIDDLE, Trait.POACHING)
"""Habits of a partner who helps out."""


def at(one: OnCourt) -> OptionId:
    return OptionId(f"at:{one.player}")


def target_decision(
    situation: Situation,
    phase: TargetPhase,
    pair: tuple[OnCourt, OnCourt],
    found: tuple[AtOne, AtOne],
    *,
    mixed: bool,
) -> Decision:
    """At whom to play most balls of a phase."""
    first, second = pair
    said = (_of_them(found[0].effects, pair), _of_them(found[1].effects, pair))
    effects: list[Effect] = []
    for target, other, acting in ((first, second, said[0]), (second, first, said[1])):
        effects += [each for one in acting for each in _both_ways(one, target, other)]
        effects += _for(situation, phase, target, other, acting, mixed=mixed)
    return Decision(
        options=(
            Option(id=at(first), label=first.name),
            Option(id=at(second), label=second.name),
            Option(id=EVEN, label="both alike"),
        ),
        effects=tuple(effects),
        neutral=sizes.EVEN_CHANCE,
        share=PHASES[phase].share,
    )


def _for(
    situation: Situation,
    phase: TargetPhase,
    target: OnCourt,
    other: OnCourt,
    acting: tuple[Effect, ...],
    *,
    mixed: bool,
) -> Iterator[Effect]:
    """What the pair adds to what the shot says of the target.

    A computed effect on whose paddle rallies ended (`ended_on_effect`, from rates of logged
    rallies in the profile) has its place here, as one more effect about the target.
    """
    if phase is TargetPhase.DINKS:
        yield _freezes(target, other)
    if not PHASES[phase].priced:
        yield from _covered(situation, target, other, acting, mixed=mixed)


def _freezes(target: OnCourt, other: OnCourt) -> Effect:
    """The partner who attacks well gets no rhythm while the balls go to the target."""
    return from_trait(other, Trait.SPEED_UP, FREEZE, Mechanism.TIME, on=(at(target),), up=True)


def _covered(
    situation: Situation,
    target: OnCourt,
    other: OnCourt,
    acting: tuple[Effect, ...],
    *,
    mixed: bool,
) -> Iterator[Effect]:
    """Row 25: what is gained at a weak player is worth half where the partner covers."""
    lost = (1 - COVERED_KEEPS) * max(0.0, _gained(situation, target, acting))
    points = Points(mean=-lost, sd=COVERED_SD if lost else 0.0)
    for trait in COVERS:
        yield from_trait(
            other, trait, points, Mechanism.COVER, on=(at(target),), up=True, habit=True
        )
    if mixed and not any(other.profile.habit(trait).notes for trait in COVERS):
        yield Effect(
            id=EffectId(f"shaded:{at(target)}"),
            on=frozenset({at(target)}),
            points=points,
            mechanism=Mechanism.COVER,
            because="in mixed they expect it",
            source=COMMON_PRACTICE,
            when=_shades(other),
        )


def _shades(other: OnCourt) -> Condition:
    return Condition(
        name=f"{other.player} shades over",
        fact=trait_fact(other.player, Trait.SQUEEZES_MIDDLE),
        prevalence=MIXED_SHADES,
        test=lambda _situation: Truth.UNKNOWN,
    )


def _gained(situation: Situation, target: OnCourt, acting: tuple[Effect, ...]) -> float:
    """Points that the shot's own page gives to this target."""
    if not acting:
        return 0.0
    only = Decision(
        options=(Option(id=at(target), label=target.name),),
        effects=tuple(replace(one, on=frozenset({at(target)})) for one in acting),
        neutral=sizes.EVEN_CHANCE,
        share=0.0,
    )
    return float(rank(only, situation).best.points)


def _both_ways(effect: Effect, target: OnCourt, other: OnCourt) -> Iterator[Effect]:
    for option, points in ((at(target), effect.points), (at(other), -effect.points)):
        yield replace(
            effect,
            id=EffectId(f"{effect.id}|of {target.player}|{option}"),
            on=frozenset({option}),
            points=points,
        )


def _of_them(effects: Iterable[Effect], pair: tuple[OnCourt, OnCourt]) -> tuple[Effect, ...]:
    """What notes on these two may say; lanes and our own touch are as good at either."""
    players = {one.player for one in pair}
    return tuple(one for one in effects if one.scale is not None and one.scale.player in players)
