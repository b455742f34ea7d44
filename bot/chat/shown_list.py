"""Which list, and which page of it, was shown last: "more" is the next one."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from knowledge.dataclass import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Listing:
    """A list shown page by page: what it lists, of which match or event, and the page shown."""

    what: str
    of: int
    page: int = 0

    def to_json(self) -> list[Any]:
        return [self.what, self.of, self.page]

    @classmethod
    def from_json(cls, stored: Sequence[Any]) -> Listing:
        what, of, page = stored
        return cls(what=what, of=of, page=page)
