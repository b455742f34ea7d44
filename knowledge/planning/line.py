"""One line of a plan: what to do, how it is said before a serve, and what it is worth."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from enum import StrEnum
from types import MappingProxyType

from knowledge.advice import Reason
from knowledge.court_picture import Arrow
from knowledge.dataclass import dataclass
from knowledge.engine import Ranking
from knowledge.sources import COMMON_PRACTICE, Source
from knowledge.vocabulary import EvidenceId, PlayerId, RallyPoints


class Phase(StrEnum):
    """The part of the rally that a line is about."""

    SERVE = "serve"
    RETURN = "return"
    THIRD = "third"
    DINK = "dink"
    HANDS = "hands"
    LOB = "lob"
    OURS = "ours"
    RESPECT = "respect"


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """A line of a plan. `points` are gained over the plain alternative, where it applies.

    `source` is what stands behind the trait that `because` names: without notes and rallies it is
    a general rule. `cue` is the same in at most eight
    words. `who` is the one of ours it speaks to, if not both; `we_serve` says in which rallies
    it can be used, None in all. `option` is what it chose, `worth` the points of every option of
    the decision it comes from, over the same plain alternative: what the choice is worth elsewhere.
    """

    phase: Phase
    do: str
    cue: str
    points: RallyPoints
    share: float
    because: str = ""
    source: Source = COMMON_PRACTICE
    arrow: Arrow | None = None
    who: PlayerId | None = None
    we_serve: bool | None = None
    option: str = ""
    worth: Mapping[str, float] = field(default_factory=lambda: MappingProxyType({}), repr=False)

    @property
    def per_100(self) -> float:
        """Rallies in 100 that the line is worth: points times share."""
        return self.points * self.share / 100

    @property
    def evidence(self) -> tuple[EvidenceId, ...]:
        """The notes and rallies behind it."""
        return self.source.evidence

    @property
    def is_specific(self) -> bool:
        """Whether it names something noted of these people."""
        return bool(self.evidence)

    @property
    def text(self) -> str:
        """What to do, and why."""
        return f"{self.do}: {self.because}" if self.because else self.do

    def suits(self, *, we_serve: bool) -> bool:
        """Whether it can be used in a rally that we serve, or that they serve."""
        return self.we_serve is None or self.we_serve is we_serve

    def reason(self) -> Reason:
        return Reason(text=self.text, source=self.source)


def worth_of(ranking: Ranking, points: float) -> Mapping[str, float]:
    """Points of each option over the plain one, of which the best gains so many."""
    best = ranking.best.chance
    return MappingProxyType(
        {one.option.id: points - 100 * (best - one.chance) for one in ranking.ranked}
    )
