"""The bibliography: where each number and each reason comes from."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


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
    """One ground: its kind and a citation, or the model or notes that it was computed from."""

    kind: SourceKind
    citation: str

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


def book(*, notes: int, against: int = 0) -> Source:
    """Our own notes that say so, and how many say the opposite."""
    counted = f"{notes} {'note' if notes == 1 else 'notes'}"
    if against:
        counted += f", {against} disagree{'s' if against == 1 else ''}"
    return Source(kind=SourceKind.BOOK, citation=counted)


def book_rallies(rallies: int, *, rest: str = "") -> Source:
    """Our own logged rallies, and what else stands behind the number."""
    counted = f"{rallies} rall{'y' if rallies == 1 else 'ies'}"
    return Source(kind=SourceKind.BOOK, citation=f"{counted} {rest}".strip())
