"""A sheet of what we believe of one or two players: a bar per trait, as long as we are unsure.

Everything is told from our side: plus is what helps us, minus what hurts us.
"""

from __future__ import annotations

from enum import StrEnum

from knowledge.dataclass import dataclass


class BarGroup(StrEnum):
    """Where on the sheet a trait stands."""

    HELPS = "helps"
    HURTS = "hurts"
    UNKNOWN = "unknown"


@dataclass(frozen=True, slots=True, kw_only=True)
class TraitBar:
    """One trait: its level and the range that it lies in, -1 (hurts us) to 1 (helps us).

    `who` is left out where the sheet is of one player. `counts` says what stands behind it, the
    fullest form first: the first that fits is written. `sure` says how sure it is on which side
    it lies, in words. `contradicted`: some of it says the opposite. `settles` is False where it
    says nothing yet or contradicts itself so much that nothing should rest on it. ValueError for
    a range that lies outside, or not around its level.
    """

    words: str
    who: str = ""
    group: BarGroup
    level: float
    low: float
    high: float
    counts: tuple[str, ...] = ()
    sure: str = ""
    contradicted: bool = False
    settles: bool = True

    def __post_init__(self) -> None:
        if not -1 <= self.low <= self.level <= self.high <= 1:
            raise ValueError(f"not a range around its level: {self.low}, {self.level}, {self.high}")

    @property
    def in_full(self) -> str:
        """ "Okafor: weak backhand dink"."""
        return f"{self.who}: {self.words}" if self.who else self.words


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetFact:
    """A line of hands and sides; `contradicted` where notes on any of them disagree."""

    words: str
    contradicted: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class TraitBars:
    """The sheet: facts first, then the bars group by group, most useful first.

    `range_words` says what a bar's length means; `alt` is the whole sheet in words.
    """

    title: str
    alt: str
    facts: tuple[SheetFact, ...] = ()
    bars: tuple[TraitBar, ...] = ()
    range_words: str = ""
