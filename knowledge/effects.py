"""What a topic declares to the engine: options, conditions and effects, in rally points."""

from __future__ import annotations

from collections.abc import Callable
from enum import Enum, StrEnum
from typing import NewType

from knowledge.dataclass import dataclass
from knowledge.evidence import TraitEstimate
from knowledge.situation import Situation
from knowledge.sources import Source, SourceKind
from knowledge.vocabulary import PlayerId, RallyChance, Trait

OptionId = NewType("OptionId", str)
EffectId = NewType("EffectId", str)
FactId = NewType("FactId", str)
"""What a condition looks at: a MatchFact, or `trait:<player>:<trait>`."""


class Truth(Enum):
    YES = "yes"
    NO = "no"
    UNKNOWN = "unknown"

    @classmethod
    def of(cls, value: bool | None) -> Truth:
        """UNKNOWN for None."""
        if value is None:
            return cls.UNKNOWN
        return cls.YES if value else cls.NO


class Mechanism(StrEnum):
    """Why an effect helps; effects of one mechanism overlap, so they do not simply add."""

    OUR_ERROR = "fewer misses of ours"
    THEIR_ERROR = "more misses of theirs"
    THEIR_REPLY = "a weaker reply"
    TIME = "time"
    COVER = "court covered"
    HABIT = "their habit"
    AGREEMENT = "no hesitation"


@dataclass(frozen=True, slots=True, kw_only=True)
class Points:
    """A belief about an effect's size: mean and standard deviation in rally points."""

    mean: float
    sd: float

    def __neg__(self) -> Points:
        return Points(mean=-self.mean, sd=self.sd)

    def times(self, share: float) -> Points:
        """A share of it, doubt and all."""
        return Points(mean=share * self.mean, sd=abs(share) * self.sd)


_NOT = "not "


@dataclass(frozen=True, slots=True, kw_only=True)
class Condition:
    """A named three-valued test of the situation.

    `fact` is what the test looks at, so that an unknown can be asked for; `prevalence` is how
    often it holds where nobody says, used when the answer is UNKNOWN.
    """

    name: str
    fact: FactId
    prevalence: float
    test: Callable[[Situation], Truth]

    def __invert__(self) -> Condition:
        flipped = {Truth.YES: Truth.NO, Truth.NO: Truth.YES, Truth.UNKNOWN: Truth.UNKNOWN}
        is_negation = self.name.startswith(_NOT)
        return Condition(
            name=self.name.removeprefix(_NOT) if is_negation else _NOT + self.name,
            fact=self.fact,
            prevalence=1 - self.prevalence,
            test=lambda situation: flipped[self.test(situation)],
        )


ALWAYS = Condition(
    name="always", fact=FactId(""), prevalence=1.0, test=lambda _situation: Truth.YES
)


def trait_fact(player: PlayerId, trait: Trait) -> FactId:
    """The fact that a trait of a player is."""
    return FactId(f"trait:{player}:{trait}")


@dataclass(frozen=True, slots=True, kw_only=True)
class TraitScale:
    """An effect that grows with a trait: towards +1 for strength or often, -1 for the opposite.

    Beyond level 0 the other way it is nothing, or with `both_ways` the same against. With `trait`
    set, a trait that is little known counts among the unknowns.
    """

    estimate: TraitEstimate
    towards: int
    player: PlayerId
    trait: Trait | None = None
    habit: bool = False
    both_ways: bool = False

    @property
    def level(self) -> float:
        """How far the effect applies: 0 to 1, or -1 to 1 both ways."""
        level = self.towards * self.estimate.level
        return level if self.both_ways else max(0.0, level)

    @property
    def fact(self) -> FactId | None:
        """The fact to ask for; None for a scale that is not up for asking."""
        return None if self.trait is None else trait_fact(self.player, self.trait)


@dataclass(frozen=True, slots=True, kw_only=True)
class Effect:
    """One reason for or against some options, in points in the rallies where it applies.

    With `scale` the points are those of the trait at full level. `states` names the fact that
    a computed effect stands for: a rule of thumb that states the same is replaced by it.
    """

    id: EffectId
    on: frozenset[OptionId]
    points: Points
    mechanism: Mechanism
    because: str
    source: Source
    when: Condition = ALWAYS
    scale: TraitScale | None = None
    states: str | None = None

    @property
    def is_rule_of_thumb(self) -> bool:
        """Whether the size is our own judgement; notes make it apply, they do not measure it."""
        return self.source.kind not in _MEASURED


_MEASURED = frozenset({SourceKind.COMPUTED, SourceKind.PUBLISHED, SourceKind.RULEBOOK})


@dataclass(frozen=True, slots=True, kw_only=True)
class Option:
    """Something we could do; `label` is how a reply says it."""

    id: OptionId
    label: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Decision:
    """A topic's question put to the engine.

    `neutral` is the usual chance once the situation has arisen. `share` is how often it arises
    in a rally, in rallies of 100.
    """

    options: tuple[Option, ...]
    effects: tuple[Effect, ...]
    neutral: RallyChance
    share: float

    def __post_init__(self) -> None:
        known = {option.id for option in self.options}
        if not known or len(known) < len(self.options):
            raise ValueError(f"options must be some and all different: {self.options}")
        if len({effect.id for effect in self.effects}) < len(self.effects):
            raise ValueError("two effects share an id")
        for effect in self.effects:
            if not effect.on <= known:
                raise ValueError(f"{effect.id} acts on {set(effect.on - known)}, not an option")
