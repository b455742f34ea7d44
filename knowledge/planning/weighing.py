"""The small decisions behind a plan's lines: effects from traits, and the best one's driver."""

from __future__ import annotations

from collections.abc import Iterable

from knowledge.dataclass import dataclass
from knowledge.engine import (
    ALWAYS,
    Condition,
    Decision,
    Effect,
    EffectId,
    Mechanism,
    Option,
    OptionId,
    Part,
    Points,
    Ranking,
    TraitScale,
    Truth,
    rank,
    trait_fact,
)
from knowledge.evidence import TraitEstimate
from knowledge.planning.phrases import fact_words, trait_words
from knowledge.situation import OnCourt, Situation
from knowledge.sources import COMMON_PRACTICE, Source
from knowledge.vocabulary import EvidenceId, RallyPoints, Trait, Value


def option(id: str, label: str) -> Option:
    return Option(id=OptionId(id), label=label)


def from_trait(
    one: OnCourt,
    trait: Trait,
    size: Points,
    mechanism: Mechanism,
    *,
    on: tuple[str, ...],
    up: bool,
    habit: bool = False,
    part: float = 1.0,
) -> Effect:
    """An effect that grows with a skill or habit; `up` if with strength or often.

    `part` scales it where only some of the balls are this player's.
    """
    profile = one.profile
    return Effect(
        id=EffectId(f"{'/'.join(on)}:{one.player}:{trait}:{'up' if up else 'down'}"),
        on=frozenset(OptionId(each) for each in on),
        points=Points(mean=part * size.mean, sd=part * size.sd),
        mechanism=mechanism,
        because=trait_words(trait, habit=habit, up=up),
        source=COMMON_PRACTICE,
        scale=TraitScale(
            estimate=profile.habit(trait) if habit else profile.skill(trait),
            towards=1 if up else -1,
            player=one.player,
            trait=trait,
            habit=habit,
        ),
    )


def from_fact(
    one: OnCourt,
    trait: Trait,
    value: Value,
    size: Points,
    mechanism: Mechanism,
    *,
    on: tuple[str, ...],
    prevalence: float,
) -> Effect:
    """An effect that holds if a fact about a player has this value."""
    return Effect(
        id=EffectId(f"{'/'.join(on)}:{one.player}:{trait}:{value}"),
        on=frozenset(OptionId(each) for each in on),
        points=size,
        mechanism=mechanism,
        because=fact_words(trait, value),
        source=COMMON_PRACTICE,
        when=fact_is(one, trait, value, prevalence=prevalence),
        scale=_sureness(one, trait),
    )


def always(
    id: str, because: str, size: Points, mechanism: Mechanism, *, on: tuple[str, ...]
) -> Effect:
    """An effect without a condition."""
    return Effect(
        id=EffectId(id),
        on=frozenset(OptionId(each) for each in on),
        points=size,
        mechanism=mechanism,
        because=because,
        source=COMMON_PRACTICE,
        when=ALWAYS,
    )


def fact_is(one: OnCourt, trait: Trait, value: Value, *, prevalence: float) -> Condition:
    """Whether a fact about a player has this value; `prevalence` where nobody noted it."""
    known = one.profile.fact(trait)
    return Condition(
        name=f"{one.player} {trait} {value}",
        fact=trait_fact(one.player, trait),
        prevalence=prevalence,
        test=lambda _situation: Truth.of(None if known is None else known is value),
    )


def _sureness(one: OnCourt, trait: Trait) -> TraitScale | None:
    """A known fact as a scale, so that its doubt and its notes go with the effect."""
    fact = one.profile.facts.get(trait)
    if fact is None or fact.known is None:
        return None
    return TraitScale(
        estimate=TraitEstimate(
            level=fact.chance,
            variance=fact.chance * (1 - fact.chance),
            evidence=fact.evidence,
            says_yes=len(fact.evidence) - fact.disagreeing,
            says_no=fact.disagreeing,
            newest_day=fact.newest_day,
        ),
        towards=1,
        player=one.player,
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Weighed:
    """A small decision's outcome: the best option, its gain over the plain one, and its driver."""

    ranking: Ranking
    gain: RallyPoints
    driver: Part | None

    @property
    def best(self) -> str:
        return self.ranking.best.option.id

    @property
    def because(self) -> str:
        return self.driver.effect.because if self.driver else ""

    @property
    def evidence(self) -> tuple[EvidenceId, ...]:
        return self.driver.evidence if self.driver else ()

    @property
    def source(self) -> Source:
        """What stands behind the driver, as a reply names it."""
        return self.driver.source if self.driver else COMMON_PRACTICE


def weigh(decision: Decision, situation: Situation, *, plain: str) -> Weighed:
    """Rank the options and say what the best gains over the plain one.

    The driver is the largest helping effect of the best option that notes on them settle.
    """
    ranking = rank(decision, situation)
    driver = driver_of(ranking.best.parts, situation.theirs)
    return Weighed(ranking=ranking, gain=ranking.gain(OptionId(plain)), driver=driver)


def driver_of(parts: Iterable[Part], players: Iterable[OnCourt]) -> Part | None:
    """The first helping part that notes on one of these players stand behind and settle."""
    ids = {one.player for one in players}
    return next(
        (
            part
            for part in parts
            if part.points > 0
            and part.evidence
            and part.effect.scale is not None
            and part.effect.scale.player in ids
            and not is_open(part)
        ),
        None,
    )


def is_open(part: Part) -> bool:
    """Whether the notes behind it contradict each other so much that they settle nothing."""
    return part.effect.scale is not None and part.effect.scale.estimate.is_open


def said_of(effect: Effect) -> str:
    """What the notes behind an effect say of the player: "weak third shot"."""
    scale = effect.scale
    if scale is None or scale.trait is None:
        return effect.because
    return trait_words(scale.trait, habit=scale.habit, up=scale.estimate.level > 0)


def is_weak(one: OnCourt | None, trait: Trait) -> bool:
    """Whether our own profile marks a shot as a weakness: notes say weak, or rallies."""
    return one is not None and one.profile.skill(trait).is_weak
