"""The choice in one phase, A or B or both alike, out of what is said of either opponent.

Whatever makes a ball at A good makes one at B bad as soon as one is chosen over the other, so
every effect of the shot stands on both options with opposite signs, and an even split is the plain
choice. Rules of the shot alone (lanes, hips) say where, not who, and stay out. A partner
who goes cold counts for the one option alone.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace

from knowledge.dataclass import dataclass
from knowledge.effects import (
    Decision,
    Effect,
    EffectId,
    Mechanism,
    Option,
    OptionId,
)
from knowledge.planning import sizes
from knowledge.planning.ended_on import ended_on
from knowledge.planning.weighing import from_trait
from knowledge.situation import OnCourt
from knowledge.tactics.target_phases import PHASES, AtOne, TargetPhase
from knowledge.tactics.target_sizes import COVERED_KEEPS, FREEZE, MIXED_SHADES
from knowledge.vocabulary import Trait

EVEN = OptionId("even")

COVERS = (Trait.SQUEEZES_MIDDLE, Trait.POACHING)
"""Habits of a partner who helps out."""


def at(one: OnCourt) -> OptionId:
    return OptionId(f"at:{one.player}")


def target_decision(
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
    tolls = [[] if at_one.toll is None else [at_one.toll] for at_one in found]
    for target, other, acting, toll in (
        (first, second, said[0], tolls[0]),
        (second, first, said[1], tolls[1]),
    ):
        left = _Left(at_target=_left_by(other, mixed=mixed), at_other=_left_by(target, mixed=mixed))
        told = list(acting) if PHASES[phase].priced else left.of(acting)
        told += left.of(_ended_on(phase, target, other))
        told += toll
        for one in told:
            effects += _both_ways(one, target, other)
        effects += _for(phase, target, other)
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


def _for(phase: TargetPhase, target: OnCourt, other: OnCourt) -> Iterator[Effect]:
    """What the pair adds to what the shot says of the target."""
    if phase is TargetPhase.DINKS:
        yield _freezes(target, other)


def _ended_on(phase: TargetPhase, target: OnCourt, other: OnCourt) -> Iterator[Effect]:
    """On whose paddle their lost rallies ended. A lob is a surprise, whoever misses most."""
    if phase is TargetPhase.LOBS:
        return
    ended = ended_on(target, other, on=(at(target),))
    if ended is not None:
        yield ended


def _freezes(target: OnCourt, other: OnCourt) -> Effect:
    """The partner who attacks well gets no rhythm while the balls go to the target."""
    return from_trait(other, Trait.SPEED_UP, FREEZE, Mechanism.TIME, on=(at(target),), up=True)


def cover_of(partner: OnCourt) -> float:
    """How much a partner moves over, 0 to 1, by the notes."""
    return max(0.0, *(partner.profile.habit(trait).level for trait in COVERS))


def _left_by(partner: OnCourt, *, mixed: bool) -> float:
    """Row 25: half is left of a weak player whose partner covers; in mixed they expect it."""
    is_noted = any(partner.profile.habit(trait).notes for trait in COVERS)
    cover = MIXED_SHADES if mixed and not is_noted else cover_of(partner)
    return 1 - (1 - COVERED_KEEPS) * cover


@dataclass(frozen=True, slots=True, kw_only=True)
class _Left:
    """What their partners leave of a ball at the target, and of one at the other."""

    at_target: float
    at_other: float

    def of(self, effects: Iterable[Effect]) -> list[Effect]:
        """Each reason as far as the partner of whom it speaks for leaves it.

        A strength of the target speaks for the other, and is worth as much less there as they
        come over: then the strong one plays that ball all the same.
        """
        return [
            replace(
                one,
                points=one.points.times(self.at_target if one.points.mean > 0 else self.at_other),
            )
            for one in effects
        ]


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
