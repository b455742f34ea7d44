"""One thing known of one player, as a report ranks it, and how sure it is."""

from __future__ import annotations

from knowledge.dataclass import dataclass
from knowledge.evidence import LASTING_FACTS, FactEstimate, TraitEstimate
from knowledge.planning.phrases import fact_words
from knowledge.situation import OnCourt
from knowledge.sources import Source
from knowledge.vocabulary import TRAITS, Trait

RANGE = 0.8
"""The chance that a level lies in the range that a report gives for it."""

FAIRLY = 0.5
"""The chance of the narrower range that makes a level fairly sure."""


SUPPOSED_ODDS = 4.5
"""Odds between one "might be" and what a friend's plain word comes to (evidence.facts)."""

DISAGREE = "notes disagree"
"""What stands behind a fact that some notes tell otherwise."""


def fact_said(trait: Trait, fact: FactEstimate) -> str:
    """A fact as a report says it; where neither value counts, no value is told as one."""
    if fact.contradicted and fact.known is None:
        return f"{DISAGREE} on {TRAITS[trait].label}"
    words = fact_words(trait, fact.value)
    if fact.contradicted:
        return f"{words} ({DISAGREE})"
    return f"maybe {words}" if _is_only_supposed(trait, fact) else words


def _is_only_supposed(trait: Trait, fact: FactEstimate) -> bool:
    """Whether all that stands behind a fact that does not fade was told with a "maybe"."""
    if trait not in LASTING_FACTS or fact.chance >= 1:
        return False
    others = len(TRAITS[trait].values) - 1 - (trait is Trait.HAND)
    return fact.chance / (1 - fact.chance) * others < SUPPOSED_ODDS


@dataclass(frozen=True, slots=True, kw_only=True)
class Known:
    """One thing noted of one player, with what it is worth in rallies per hundred.

    `said` is what most of it says, `up` whether that is strength or often. Of facts, which come
    in one line, `estimate` is None.
    """

    player: OnCourt
    trait: Trait
    text: str
    per_100: float
    source: Source
    use: str
    estimate: TraitEstimate | None = None
    said: str = ""
    up: bool = False
    habit: bool = False

    @property
    def in_full(self) -> str:
        """The line with how sure it is."""
        sure = "" if self.estimate is None else f", {how_sure(self.estimate)}"
        return f"{self.player.name}: {self.text} ({self.source}){sure}"


def how_sure(estimate: TraitEstimate) -> str:
    """How sure it is on which side of the middle the level lies.

    Sure where the middle lies outside the RANGE of the level, fairly where outside FAIRLY's.
    """
    side = max(estimate.chance_above, 1 - estimate.chance_above)
    if side > (1 + RANGE) / 2:
        return "sure"
    return "fairly sure" if side > (1 + FAIRLY) / 2 else "not sure"
