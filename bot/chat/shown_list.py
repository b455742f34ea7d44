"""Which list, and which page of it, was shown last: "more" is the next one."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from knowledge.dataclass import dataclass

DROP, FORGET = "drop", "forget"
"""Lists that ask: which note goes, and whether a player is to be forgotten."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Listing:
    """A list shown page by page: what it lists, of which match or event, and the page shown.

    `notes` are those on it, in order, where one can be told by its place.
    """

    what: str
    of: int
    page: int = 0
    notes: tuple[int, ...] = ()

    @property
    def asks(self) -> bool:
        """Whether it asked what is to go: "none" answers it, and it has no other page."""
        return self.what in (DROP, FORGET)

    def to_json(self) -> list[Any]:
        return [self.what, self.of, self.page, list(self.notes)]

    @classmethod
    def from_json(cls, stored: Sequence[Any]) -> Listing:
        what, of, page, *notes = stored
        return cls(what=what, of=of, page=page, notes=tuple(notes[0]) if notes else ())
