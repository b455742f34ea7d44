"""One claim about one trait, and what it weighs: who said it, when, how surely, seen or heard."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping
from types import MappingProxyType

from knowledge.dataclass import dataclass
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

DENIED_WEIGHT = 0.5
"""What "not weak" counts beside "strong". Common practice, no source."""

TAKEN_BACK_WEIGHT = 0.2
"""What is left of a claim once its own author says the opposite later. Common practice."""

A_DAY_AHEAD = 1
"""Days that a book's own zone may be ahead of the day elsewhere: no date to come yet."""

CONDITION_PART = 0.5
"""What a claim made under a condition ("when pulled wide") counts for the trait in general.
Common practice, no source."""

_SAYS_THE_SAME = MappingProxyType(
    {
        Tag.MOVING_FORWARD: frozenset(
            {Trait.FORWARD_SPEED, Trait.FOOT_SPEED, Trait.TRANSITION, Trait.CRASH}
        ),
        Tag.MOVING_BACK: frozenset({Trait.LOB_DEFENSE, Trait.OVERHEAD, Trait.FOOT_SPEED}),
        Tag.PULLED_WIDE: frozenset({Trait.REACH, Trait.FOOT_SPEED}),
        Tag.LATE: frozenset({Trait.FITNESS}),
        Tag.UNDER_PRESSURE: frozenset({Trait.NERVES, Trait.HANDLES_PACE}),
    }
)
"""Conditions that a trait has in its very meaning: said with it, they narrow nothing."""

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

    @property
    def is_habit(self) -> bool:
        """Whether it says how often, not how well."""
        return self.value in (Value.OFTEN, Value.RARELY)

    @property
    def speaks_for(self) -> bool:
        """Whether it says strength or often, if only by denying the opposite."""
        return (self.value in _FOR) is not self.denied

    @property
    def condition(self) -> Tag | None:
        """Under which condition it was said to hold, where that narrows it."""
        same = self.tag is not None and self.trait in _SAYS_THE_SAME[self.tag]
        return None if same else self.tag

    @property
    def part_in_general(self) -> float:
        """How far it speaks of its trait in general."""
        return 1.0 if self.condition is None else CONDITION_PART

    def undated_weight(self) -> float:
        """What it counts on the day that it was seen."""
        heard = HEARSAY_WEIGHT if self.seen is Seen.HEARSAY else 1.0
        return self.weight * heard * (DENIED_WEIGHT if self.denied else 1.0)

    def weight_on(self, today: int) -> float:
        """What it counts on a day."""
        return self.undated_weight() * age_factor(self.day, today=today)

    def contradicts(self, other: Observation) -> bool:
        """Whether the two cannot both be right; both are about the same trait.

        What holds under a condition contradicts nothing that is said in general.
        """
        if self.condition is not other.condition:
            return False
        if TRAITS[self.trait].kind is not TraitKind.FACT:
            return self.speaks_for is not other.speaks_for
        if self.denied is other.denied:
            return not self.denied and self.value is not other.value
        return self.value is other.value


def age_factor(day: int, *, today: int) -> float:
    """What is left of evidence by age, 1 for today's; a future day counts as today."""
    return float(2.0 ** (-max(0, today - day) / HALF_LIFE_DAYS))


def one_per_author_and_day(observations: Iterable[Observation]) -> list[Observation]:
    """One claim per author, day and condition: the weightiest that fits the day's last."""
    by_day: dict[tuple[str, int, Tag | None], list[Observation]] = defaultdict(list)
    for one in observations:
        by_day[one.author, one.day, one.condition].append(one)
    return sorted(map(_of_one_day, by_day.values()), key=lambda one: one.day)


def _of_one_day(said: list[Observation]) -> Observation:
    if len(said) == 1:
        return said[0]
    told = sorted(said, key=_told)
    best = told[-1]
    for one in told:
        if not one.contradicts(told[-1]) and one.undated_weight() > best.undated_weight():
            best = one
    return best


def _told(one: Observation) -> list[tuple[int, str]]:
    """The order in which the notes of one day were written: by the numbers in their names."""
    return [(int(part), "") if part.isdigit() else (0, part) for part in one.evidence.split(":")]


def standings(kept: Iterable[Observation]) -> list[float]:
    """How much of each claim stands: less once its own author said the opposite on a later day.

    Of each author's claims the last of each kind is all that needs looking at.
    """
    told = list(kept)
    last: dict[str, dict[tuple[Value, bool, Tag | None], Observation]] = defaultdict(dict)
    for one in told:
        kinds = last[one.author]
        kind = (one.value, one.denied, one.condition)
        if kind not in kinds or one.day > kinds[kind].day:
            kinds[kind] = one
    return [TAKEN_BACK_WEIGHT if _is_taken_back(one, last[one.author]) else 1.0 for one in told]


def _is_taken_back(
    one: Observation, last: Mapping[tuple[Value, bool, Tag | None], Observation]
) -> bool:
    return len(last) > 1 and any(
        other.day > one.day and one.contradicts(other) for other in last.values()
    )
