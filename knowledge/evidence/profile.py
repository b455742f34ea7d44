"""What we believe about one player: every trait, fact and rate that something speaks of."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from types import MappingProxyType

from knowledge.evidence.estimates import NOTHING_KNOWN, FactEstimate, TraitEstimate
from knowledge.evidence.facts import estimate_fact
from knowledge.evidence.notes import estimate_trait
from knowledge.evidence.observation import Observation
from knowledge.evidence.peers import Rings
from knowledge.evidence.rates import RATE_TRAIT, RateEstimate, RateTally, estimate_rate
from knowledge.vocabulary import TRAITS, PlayerId, Rate, Trait, TraitKind, Value

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


def profile(
    player: PlayerId,
    name: str,
    observations: Iterable[Observation],
    *,
    today: int,
    tallies: Iterable[RateTally] = (),
    others: Rings = _NO_RINGS,
) -> Profile:
    """Everything believed about one player from the observations and rallies that speak of them.

    `others` are the rings around the player: where their rates begin.
    """
    skills, facts = _grouped(one for one in observations if one.player == player)
    by_rate: dict[Rate, list[RateTally]] = defaultdict(list)
    for tally in tallies:
        if tally.player == player:
            by_rate[tally.rate].append(tally)
    rings = {rate: [one.count for one in others.get(rate, ())] for rate in by_rate}
    settled = {
        rate: found
        for rate, group in by_rate.items()
        if (found := estimate_rate(rate, _settled(group), today=today, others=rings[rate])).of
    }
    rated = {RATE_TRAIT[rate]: found for rate, found in settled.items() if rate in RATE_TRAIT}
    keys = [*skills, *((trait, False) for trait in rated if (trait, False) not in skills)]
    return Profile(
        player=player,
        name=name,
        skills=MappingProxyType(
            {
                key: estimate_trait(skills.get(key, ()), today=today, rate=_rate_of(key, rated))
                for key in keys
            }
        ),
        facts=MappingProxyType(
            {
                trait: fact
                for trait, group in facts.items()
                if (fact := estimate_fact(group, today=today)) is not None
            }
        ),
        rates=MappingProxyType(
            {
                rate: estimate_rate(rate, group, today=today, others=rings[rate])
                for rate, group in by_rate.items()
            }
        ),
        settled=MappingProxyType(settled),
        others=others,
    )


_Skills = dict[TraitKey, list[Observation]]
_Rates = Mapping[Trait, RateEstimate]


def _grouped(
    observations: Iterable[Observation],
) -> tuple[_Skills, dict[Trait, list[Observation]]]:
    skills: _Skills = defaultdict(list)
    facts: dict[Trait, list[Observation]] = defaultdict(list)
    for one in observations:
        if TRAITS[one.trait].kind is TraitKind.FACT:
            facts[one.trait].append(one)
        else:
            skills[one.trait, one.is_habit].append(one)
    return dict(skills), facts


def _settled(tallies: Iterable[RateTally]) -> list[RateTally]:
    return [one for one in tallies if one.is_settled]


def _rate_of(key: TraitKey, settled: _Rates) -> RateEstimate | None:
    trait, is_habit = key
    return None if is_habit else settled.get(trait)
