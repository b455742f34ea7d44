"""What evidence comes to: a trait's level or a fact's value, how sure, and from what."""

from __future__ import annotations

from dataclasses import dataclass

from knowledge.vocabulary import EvidenceId, Value

OPEN_LEVEL = 0.15
"""Notes for and against that leave a level below this settle nothing. Our own guess."""

FACT_KNOWN_CHANCE = 0.75
"""Below this chance the best-supported value of a fact counts as not known."""


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
    def known(self) -> Value | None:
        """The value if it is sure enough to act on, else None (not known)."""
        return self.value if self.chance >= FACT_KNOWN_CHANCE else None
