"""What we believe about one player: every trait and fact that something speaks of."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from types import MappingProxyType

from knowledge.evidence.estimates import NOTHING_KNOWN, FactEstimate, TraitEstimate
from knowledge.evidence.facts import estimate_fact
from knowledge.evidence.notes import estimate_trait
from knowledge.evidence.observation import Observation
from knowledge.vocabulary import TRAITS, PlayerId, Trait, TraitKind, Value


@dataclass(frozen=True, slots=True, kw_only=True)
class Profile:
    """What we believe about one player."""

    player: PlayerId
    name: str
    skills: Mapping[tuple[Trait, bool], TraitEstimate] = field(
        default_factory=lambda: MappingProxyType({})
    )
    facts: Mapping[Trait, FactEstimate] = field(default_factory=lambda: MappingProxyType({}))

    def skill(self, trait: Trait) -> TraitEstimate:
        """Level of a skill; NOTHING_KNOWN without notes."""
        return self.skills.get((trait, False), NOTHING_KNOWN)

    def habit(self, trait: Trait) -> TraitEstimate:
        """How often they do it; NOTHING_KNOWN without notes."""
        return self.skills.get((trait, True), NOTHING_KNOWN)

    def fact(self, trait: Trait) -> Value | None:
        """Value of a fact, None when not known or too much in doubt."""
        estimate = self.facts.get(trait)
        return None if estimate is None else estimate.known

    @property
    def notes(self) -> int:
        """Distinct observations behind the whole profile."""
        skills = {each for estimate in self.skills.values() for each in estimate.evidence}
        facts = {each for estimate in self.facts.values() for each in estimate.evidence}
        return len(skills | facts)


def profile(
    player: PlayerId, name: str, observations: Iterable[Observation], *, today: int
) -> Profile:
    """Everything believed about one player from the observations that speak of them."""
    grouped: dict[tuple[Trait, bool], list[Observation]] = defaultdict(list)
    for one in observations:
        if one.player == player:
            grouped[one.trait, one.is_habit].append(one)
    skills: dict[tuple[Trait, bool], TraitEstimate] = {}
    facts: dict[Trait, FactEstimate] = {}
    for (trait, habit), group in grouped.items():
        if TRAITS[trait].kind is TraitKind.FACT:
            fact = estimate_fact(group, today=today)
            if fact is not None:
                facts[trait] = fact
        else:
            skills[trait, habit] = estimate_trait(group, today=today)
    return Profile(
        player=player,
        name=name,
        skills=MappingProxyType(skills),
        facts=MappingProxyType(facts),
    )
