"""The bibliography: where each number and each reason comes from."""

from __future__ import annotations

from dataclasses import field
from enum import StrEnum

from knowledge.dataclass import dataclass
from knowledge.vocabulary import EvidenceId


class SourceKind(StrEnum):
    """How a reply names the ground of a reason."""

    RULEBOOK = "rulebook"
    PUBLISHED = "published"
    COMPUTED = "maths"
    BOOK = "book"
    COMMON_PRACTICE = "common practice"
    AGREED = "agreed"
    SAID = "your numbers"


@dataclass(frozen=True, slots=True, kw_only=True)
class Source:
    """One ground: its kind and a citation, or the model or notes that it was computed from.

    `evidence` names those notes and rallies one by one, for who asks why.
    """

    kind: SourceKind
    citation: str
    evidence: tuple[EvidenceId, ...] = field(default=(), compare=False)

    def __str__(self) -> str:
        return self.kind if not self.citation else f"{self.kind}: {self.citation}"


COMMON_PRACTICE = Source(kind=SourceKind.COMMON_PRACTICE, citation="")
"""What good players do and teach; no source."""

SAID = Source(kind=SourceKind.SAID, citation="")
"""What the user stated and is taken as it is."""

RULEBOOK_2025 = Source(kind=SourceKind.RULEBOOK, citation="2025")
"""The national rulebook, 2025 edition."""


def rule(number: str) -> Source:
    """A rule of the 2025 edition by its number."""
    return Source(kind=SourceKind.RULEBOOK, citation=f"2025, {number}")


def rule_of_edition(edition: str, place: str) -> Source:
    """A rule by the edition it was read in and its place there: a number, or a section."""
    return Source(kind=SourceKind.RULEBOOK, citation=f"{edition}, {place}")


def computed(model: str) -> Source:
    """A figure computed here, by the named model."""
    return Source(kind=SourceKind.COMPUTED, citation=model)


def book(
    *,
    notes: int,
    against: int = 0,
    rallies: int = 0,
    logged: int = 0,
    evidence: tuple[EvidenceId, ...] = (),
) -> Source:
    """Our own notes that say so, how many say the opposite, and our logged rallies.

    `rallies` are those that tell something of it, `logged` all among which they are.
    """
    told = [] if rallies and not notes and not against else [counted(notes, "note", "notes")]
    if against:
        told.append(f"{against} disagree{'s' if against == 1 else ''}")
    if rallies:
        told.append(_tagged(rallies, logged))
    return Source(kind=SourceKind.BOOK, citation=", ".join(told), evidence=evidence)


def _tagged(rallies: int, logged: int) -> str:
    """ "12 of 40 rallies tagged"; without the count of all, "12 rallies"."""
    if logged <= rallies:
        return counted(rallies, "rally", "rallies")
    return f"{rallies} of {logged} rallies tagged"


def book_rallies(rallies: int, *, rest: str = "", evidence: tuple[EvidenceId, ...] = ()) -> Source:
    """Our own logged rallies, and what else stands behind the number."""
    told = f"{counted(rallies, 'rally', 'rallies')} {rest}".strip()
    return Source(kind=SourceKind.BOOK, citation=told, evidence=evidence)


def counted(number: int, one: str, more: str) -> str:
    """The number with its noun: "1 rally", "2 rallies"."""
    return f"{number} {one if number == 1 else more}"
