"""What evidence comes to: a trait's level or a fact's value, how sure, and from what."""

from __future__ import annotations

from knowledge.dataclass import dataclass
from knowledge.evidence.intervals import beta_cdf, beta_interval, beta_of_moments
from knowledge.sources import Source, book
from knowledge.vocabulary import EvidenceId, Tag, Value

OPEN_LEVEL = 0.15
"""Notes for and against that leave a level below this settle nothing. Our own guess."""

FACT_KNOWN_CHANCE = 0.75
"""Below this chance the best-supported value of a fact counts as not known."""


@dataclass(frozen=True, slots=True, kw_only=True)
class TraitEstimate:
    """A skill or habit: level in (-1, 1), clear weakness or rarely to clear strength or often.

    `rallies` are counted apart from the notes, of so many `logged` in all. `only_when` is the
    condition that every note has, `ahead` how many notes bear a date to come: they count as
    today's. `only_denied`: nobody said more than that it is not weak.
    """

    level: float
    variance: float
    evidence: tuple[EvidenceId, ...] = ()
    says_yes: int = 0
    says_no: int = 0
    newest_day: int | None = None
    rallies: int = 0
    logged: int = 0
    only_when: Tag | None = None
    ahead: int = 0
    only_denied: bool = False

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

    @property
    def is_weak(self) -> bool:
        """Whether it marks a weakness: notes say so, or rallies do by more than a trifle."""
        return self.level < (-OPEN_LEVEL if self.rallies else 0.0)

    @property
    def source(self) -> Source:
        """The notes and rallies behind it, as a reply names them."""
        return book(
            notes=self.agreeing,
            against=self.disagreeing,
            rallies=self.rallies,
            logged=self.logged,
            evidence=self.evidence,
        )

    def interval(self, coverage: float) -> tuple[float, float]:
        """Between which levels it lies with this chance: the middle of its beta belief."""
        counts = beta_of_moments((1 + self.level) / 2, self.variance / 4)
        if counts is None:
            return self.level, self.level
        low, high = beta_interval(coverage, *counts)
        return 2 * low - 1, 2 * high - 1

    @property
    def chance_above(self) -> float:
        """The chance that the level lies above the middle: strength rather than weakness."""
        counts = beta_of_moments((1 + self.level) / 2, self.variance / 4)
        return float(self.level > 0) if counts is None else 1 - beta_cdf(0.5, *counts)


def level_and_variance(a: float, b: float) -> tuple[float, float]:
    """The mean and variance of a beta with two counts, stretched from (0, 1) to (-1, 1)."""
    total = a + b
    return (a - b) / total, 4 * a * b / (total**2 * (total + 1))


NOTHING_KNOWN = TraitEstimate(level=0.0, variance=1 / 3)
"""The prior, beta(1, 1) stretched to (-1, 1): level 0, variance 1/3."""


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
    def source(self) -> Source:
        """The notes behind it, as a reply names them."""
        agreeing = len(self.evidence) - self.disagreeing
        return book(notes=agreeing, against=self.disagreeing, evidence=self.evidence)

    @property
    def known(self) -> Value | None:
        """The value if it is sure enough to act on, else None (not known)."""
        return self.value if self.chance >= FACT_KNOWN_CHANCE else None
