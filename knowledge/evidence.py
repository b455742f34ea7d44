"""From observations to estimates: what the notes on a player are worth, in closed form.

A trait's estimate is a beta belief whose counts are weighted observations. The form is
conjugate, so the order of the notes does not matter, and no notes give the prior.
"""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from types import MappingProxyType

from knowledge.vocabulary import (
    TRAITS,
    EvidenceId,
    PlayerId,
    Seen,
    Tag,
    Trait,
    TraitKind,
    Value,
)

HALF_LIFE_DAYS = 180.0
"""Age at which a note counts half. Common practice, no source: about two seasons' halves."""

HEARSAY_WEIGHT = 0.45
"""What a friend's word counts beside our own eyes. Common practice, no source."""

HAND_LOG_ODDS_LIVE = math.log(20.0)
"""One look at a player's hand is right about 20 times in 21. Common practice, no source."""

HAND_LOG_ODDS_HEARSAY = math.log(5.0)

LASTING_FACTS = frozenset({Trait.HAND, Trait.HEIGHT, Trait.TWO_HANDED_BACKHAND})
"""Facts that do not fade: a lefty of last year is a lefty. The other facts age like notes."""

AMBIDEXTROUS_LOG_ODDS = math.log(0.02)
"""Two forehands are rare, about one player in fifty of either hand. Common practice, no source."""

TAKEN_BACK_WEIGHT = 0.2
"""What is left of a claim once its own author says the opposite later. Common practice."""

OPEN_LEVEL = 0.15
"""Notes for and against that leave a level below this settle nothing. Our own guess."""

FACT_KNOWN_CHANCE = 0.75
"""Below this chance the best-supported value of a fact counts as not known."""

_FOR = frozenset({Value.STRENGTH, Value.OFTEN})


@dataclass(frozen=True, slots=True, kw_only=True)
class Observation:
    """One claim about one trait, with where it came from.

    `weight` carries intensity (0.5, 1 or 1.5) and hedging (0.45); hearsay and age are applied
    here. `day` is the ordinal of the date it was seen (`date.toordinal`). `denied` marks a claim
    that only denies its value ("not weak"): it counts against the value, at half weight.
    """

    evidence: EvidenceId
    player: PlayerId
    trait: Trait
    value: Value
    weight: float
    seen: Seen
    author: str
    day: int
    words: str
    tag: Tag | None = None
    denied: bool = False

    def __post_init__(self) -> None:
        if self.value not in TRAITS[self.trait].values:
            raise ValueError(f"{self.trait} takes {TRAITS[self.trait].values}, not {self.value}")
        if not self.weight > 0:
            raise ValueError(f"weight must be above 0, got {self.weight}")


@dataclass(frozen=True, slots=True, kw_only=True)
class TraitEstimate:
    """A skill or habit: level in (-1, 1), clear weakness or rarely to clear strength or often."""

    level: float
    variance: float
    evidence: tuple[EvidenceId, ...] = ()
    says_yes: int = 0
    says_no: int = 0
    newest_day: int | None = None

    @property
    def notes(self) -> int:
        """How many observations stand behind it, after repeats of one day are taken out."""
        return self.says_yes + self.says_no

    @property
    def agreeing(self) -> int:
        """How many of them say what the level says."""
        return self.says_no if self.level < 0 else self.says_yes

    @property
    def disagreeing(self) -> int:
        return self.notes - self.agreeing

    @property
    def is_open(self) -> bool:
        """Whether the notes contradict each other so much that nothing should rest on them."""
        return self.disagreeing > 0 and abs(self.level) < OPEN_LEVEL


@dataclass(frozen=True, slots=True, kw_only=True)
class FactEstimate:
    """A fact such as the hand: the best-supported value and the chance that it is right."""

    value: Value
    chance: float
    evidence: tuple[EvidenceId, ...]
    contradicted: bool
    newest_day: int
    disagreeing: int = 0

    @property
    def known(self) -> Value | None:
        """The value if it is sure enough to act on, else None (not known)."""
        return self.value if self.chance >= FACT_KNOWN_CHANCE else None


NOTHING_KNOWN = TraitEstimate(level=0.0, variance=1 / 3)
"""The prior, beta(1, 1) stretched to (-1, 1): level 0, variance 1/3."""


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


def estimate_trait(observations: Iterable[Observation], *, today: int) -> TraitEstimate:
    """Level of one skill or habit from its observations, as of day `today` (ordinal).

    Method: 1. keep the weightiest claim per author and day, of those that say what the author
    said last that day; 2. weigh each by hearsay and age, 2^(-age / HALF_LIFE_DAYS), a future day
    counting as today, and by TAKEN_BACK_WEIGHT if its author later said the opposite;
    3. a = 1 + weights for,
    b = 1 + weights against; 4. level = (a - b) / (a + b), variance 4ab / ((a+b)^2 (a+b+1)),
    the beta distribution's moments stretched to (-1, 1).
    """
    kept = _weightiest_per_author_and_day(observations)
    a = b = 1.0
    yes = no = 0
    for one in kept:
        weight = _counted_weight(one, today=today) * _standing(one, kept)
        if _speaks_for(one):
            a, yes = a + weight, yes + 1
        else:
            b, no = b + weight, no + 1
    total = a + b
    return TraitEstimate(
        level=(a - b) / total,
        variance=4 * a * b / (total**2 * (total + 1)),
        evidence=tuple(sorted(one.evidence for one in kept)),
        says_yes=yes,
        says_no=no,
        newest_day=max((one.day for one in kept), default=None),
    )


def estimate_fact(observations: Iterable[Observation], *, today: int) -> FactEstimate | None:
    """Best-supported value of a fact by adding log-odds per observation; None without any.

    A denial ("not a lefty") counts for the values it leaves open. Beforehand all values are
    equally likely, but for two forehands, which are rare. LASTING_FACTS do not age.
    """
    kept = _weightiest_per_author_and_day(observations)
    if not kept:
        return None
    values = TRAITS[kept[0].trait].values
    support = dict.fromkeys(values, 0.0)
    if Value.AMBIDEXTROUS in support:
        support[Value.AMBIDEXTROUS] = AMBIDEXTROUS_LOG_ODDS
    for one in kept:
        step = _fact_log_odds(one, today=today) * _standing(one, kept)
        support[one.value] += -step if one.denied else step
    best = max(values, key=lambda value: support[value])
    chance = 1 / sum(math.exp(support[value] - support[best]) for value in values)
    return FactEstimate(
        value=best,
        chance=chance,
        evidence=tuple(sorted(one.evidence for one in kept)),
        contradicted=any(not _agrees(one, best) for one in kept),
        newest_day=max(one.day for one in kept),
        disagreeing=sum(not _agrees(one, best) for one in kept),
    )


def _agrees(one: Observation, value: Value) -> bool:
    """Whether a claim fits a fact's value: a denial of another value does."""
    return (one.value is value) is not one.denied


def _fact_log_odds(one: Observation, *, today: int) -> float:
    full = HAND_LOG_ODDS_LIVE if one.seen is Seen.LIVE else HAND_LOG_ODDS_HEARSAY
    age = 1.0 if one.trait in LASTING_FACTS else _age_factor(one.day, today=today)
    return full * min(1.0, one.weight) * age


def profile(
    player: PlayerId, name: str, observations: Iterable[Observation], *, today: int
) -> Profile:
    """Everything believed about one player from the observations that speak of them."""
    grouped: dict[tuple[Trait, bool], list[Observation]] = defaultdict(list)
    for one in observations:
        if one.player == player:
            grouped[one.trait, _is_habit(one)].append(one)
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


def _is_habit(one: Observation) -> bool:
    return one.value in (Value.OFTEN, Value.RARELY)


def _speaks_for(one: Observation) -> bool:
    return (one.value in _FOR) is not one.denied


def _weightiest_per_author_and_day(observations: Iterable[Observation]) -> list[Observation]:
    """One claim per author and day: the weightiest that does not contradict the day's last."""
    by_day: dict[tuple[str, int], list[Observation]] = defaultdict(list)
    for one in sorted(observations, key=_told):
        by_day[one.author, one.day].append(one)
    kept = []
    for day in by_day.values():
        best = day[-1]
        for one in day:
            if not _contradict(one, day[-1]) and _weighs_more(one, best):
                best = one
        kept.append(best)
    return sorted(kept, key=_told)


def _told(one: Observation) -> tuple[int, list[tuple[int, str]]]:
    """The order in which notes were written: by day, then by the numbers in their names."""
    parts = [(int(part), "") if part.isdigit() else (0, part) for part in one.evidence.split(":")]
    return one.day, parts


def _contradict(one: Observation, other: Observation) -> bool:
    if TRAITS[one.trait].kind is not TraitKind.FACT:
        return _speaks_for(one) is not _speaks_for(other)
    if one.denied is other.denied:
        return not one.denied and one.value is not other.value
    return one.value is other.value


def _standing(one: Observation, kept: Iterable[Observation]) -> float:
    """How much of a claim stands: less once its own author has said the opposite on a later day."""
    taken_back = any(
        other.author == one.author and other.day > one.day and _contradict(one, other)
        for other in kept
    )
    return TAKEN_BACK_WEIGHT if taken_back else 1.0


def _weighs_more(one: Observation, other: Observation) -> bool:
    return _undated_weight(one) > _undated_weight(other)


def _undated_weight(one: Observation) -> float:
    heard = HEARSAY_WEIGHT if one.seen is Seen.HEARSAY else 1.0
    return one.weight * heard * (0.5 if one.denied else 1.0)


def _age_factor(day: int, *, today: int) -> float:
    return float(2.0 ** (-max(0, today - day) / HALF_LIFE_DAYS))


def _counted_weight(one: Observation, *, today: int) -> float:
    return _undated_weight(one) * _age_factor(one.day, today=today)
