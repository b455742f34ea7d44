"""What we believe about one player: every trait, fact and rate that something speaks of."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable, Hashable, Iterable, Mapping
from dataclasses import field
from types import MappingProxyType
from typing import Protocol, TypeVar

from knowledge.dataclass import dataclass
from knowledge.evidence.estimates import NOTHING_KNOWN, FactEstimate, TraitEstimate
from knowledge.evidence.facts import estimate_fact
from knowledge.evidence.notes import estimate_trait
from knowledge.evidence.observation import Observation
from knowledge.evidence.peers import Rings
from knowledge.evidence.rates import (
    FEWEST_RALLIES,
    RATE_TRAIT,
    RateEstimate,
    RateTally,
    estimate_rate,
)
from knowledge.vocabulary import TRAITS, PlayerId, Rate, Trait, TraitKind, Value

Found = TypeVar("Found")

TraitKey = tuple[Trait, bool]
"""A trait, and whether the habit is meant, not the skill."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Profile:
    """What we believe about one player.

    `skills`, `facts` and `settled` are what advice rests on: of rallies, those of games that are
    over. `rates` count every rally so far. `others` are the rings around the player, by rate.
    """

    player: PlayerId
    name: str
    skills: Mapping[TraitKey, TraitEstimate] = field(default_factory=lambda: MappingProxyType({}))
    facts: Mapping[Trait, FactEstimate] = field(default_factory=lambda: MappingProxyType({}))
    rates: Mapping[Rate, RateEstimate] = field(default_factory=lambda: MappingProxyType({}))
    settled: Mapping[Rate, RateEstimate] = field(default_factory=lambda: MappingProxyType({}))
    others: Rings = field(default_factory=lambda: MappingProxyType({}))

    def skill(self, trait: Trait) -> TraitEstimate:
        """Level of a skill; NOTHING_KNOWN without notes and rallies."""
        return self.skills.get((trait, False), NOTHING_KNOWN)

    def habit(self, trait: Trait) -> TraitEstimate:
        """How often they do it; NOTHING_KNOWN without notes."""
        return self.skills.get((trait, True), NOTHING_KNOWN)

    def fact(self, trait: Trait) -> Value | None:
        """Value of a fact, None when not known or too much in doubt."""
        estimate = self.facts.get(trait)
        return None if estimate is None else estimate.known

    @property
    def is_known(self) -> bool:
        """Whether anything that advice may rest on speaks of them."""
        return bool(self.skills or self.facts or self.settled)

    @property
    def notes(self) -> int:
        """Observations behind the whole profile; each stands behind one estimate."""
        skills = sum(estimate.notes for estimate in self.skills.values())
        return skills + sum(len(fact.evidence) for fact in self.facts.values())


_NO_RINGS: Rings = MappingProxyType({})


class Recall(Protocol):
    """What `find` comes to, or what it came to before under this key from equal `inputs`."""

    def __call__(
        self, key: Hashable, inputs: tuple[object, ...], find: Callable[[], Found]
    ) -> Found: ...


def recall_nothing(
    key: Hashable,  # noqa: ARG001
    inputs: tuple[object, ...],  # noqa: ARG001
    find: Callable[[], Found],
) -> Found:
    """Everything is worked out anew."""
    return find()


def profile(
    player: PlayerId,
    name: str,
    observations: Iterable[Observation],
    *,
    today: int,
    tallies: Iterable[RateTally] = (),
    others: Rings = _NO_RINGS,
    recall: Recall = recall_nothing,
) -> Profile:
    """Everything believed about one player from the observations and rallies that speak of them.

    `others` are the rings around the player: where their rates begin. With `recall` only what
    new evidence speaks of is estimated anew.
    """
    told = tuple(observations)
    skills, facts = recall("groups", (told,), lambda: _grouped(player, told))
    by_rate: dict[Rate, list[RateTally]] = defaultdict(list)
    for tally in tallies:
        if tally.player == player:
            by_rate[tally.rate].append(tally)

    def rate_of(rate: Rate, group: tuple[RateTally, ...], which: str) -> RateEstimate:
        rings = tuple(one.count for one in others.get(rate, ()))
        return recall(
            (which, rate),
            (group, today, rings),
            lambda: estimate_rate(rate, group, today=today, others=rings),
        )

    settled = {
        rate: found
        for rate, group in by_rate.items()
        if (found := rate_of(rate, _settled(group), "settled")).of
    }
    rated = {
        RATE_TRAIT[rate]: found
        for rate, found in settled.items()
        if rate in RATE_TRAIT and found.of >= FEWEST_RALLIES
    }
    keys = [*skills, *((trait, False) for trait in rated if (trait, False) not in skills)]
    return Profile(
        player=player,
        name=name,
        skills=MappingProxyType(
            {
                key: _skill(
                    key, skills.get(key, ()), today=today, rate=_rate_of(key, rated), recall=recall
                )
                for key in keys
            }
        ),
        facts=MappingProxyType(
            {
                trait: fact
                for trait, group in facts.items()
                if (fact := _fact(trait, group, today=today, recall=recall)) is not None
            }
        ),
        rates=MappingProxyType(
            {
                rate: settled[rate]
                if rate in settled and all(one.is_settled for one in group)
                else rate_of(rate, tuple(group), "all")
                for rate, group in by_rate.items()
            }
        ),
        settled=MappingProxyType(settled),
        others=others,
    )


_Skills = dict[TraitKey, tuple[Observation, ...]]
_Facts = dict[Trait, tuple[Observation, ...]]
_Rates = Mapping[Trait, RateEstimate]


def _grouped(player: PlayerId, observations: Iterable[Observation]) -> tuple[_Skills, _Facts]:
    skills: dict[TraitKey, list[Observation]] = defaultdict(list)
    facts: dict[Trait, list[Observation]] = defaultdict(list)
    for one in observations:
        if one.player != player:
            continue
        if TRAITS[one.trait].kind is TraitKind.FACT:
            facts[one.trait].append(one)
        else:
            skills[one.trait, one.is_habit].append(one)
    return (
        {key: tuple(group) for key, group in skills.items()},
        {trait: tuple(group) for trait, group in facts.items()},
    )


def _skill(
    key: TraitKey,
    group: tuple[Observation, ...],
    *,
    today: int,
    rate: RateEstimate | None,
    recall: Recall,
) -> TraitEstimate:
    inputs = (group, today, rate)
    return recall(key, inputs, lambda: estimate_trait(group, today=today, rate=rate))


def _fact(
    trait: Trait, group: tuple[Observation, ...], *, today: int, recall: Recall
) -> FactEstimate | None:
    return recall(trait, (group, today), lambda: estimate_fact(group, today=today))


def _settled(tallies: Iterable[RateTally]) -> tuple[RateTally, ...]:
    return tuple(one for one in tallies if one.is_settled)


def _rate_of(key: TraitKey, settled: _Rates) -> RateEstimate | None:
    trait, is_habit = key
    return None if is_habit else settled.get(trait)
