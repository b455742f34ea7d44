"""A message that waits for a tap, as a chat's context keeps it."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from bot.chat.asked import Asked, maybe
from knowledge.dataclass import dataclass
from knowledge.vocabulary import PlayerId


@dataclass(frozen=True, slots=True, kw_only=True)
class Pending:
    """A message that waits for a tap: for whom `typed` means, or to be answered after others.

    `text` is taken up again; where the question was read already, it is `asked`. `also` are other
    names in it that nobody bears, to be added with `typed`. `announces`: it is the match to come,
    and `then` are the messages told of that match meanwhile. `by_writer`: it is a note of whoever
    wrote it, which waits until that is known.
    """

    number: int
    typed: str
    text: str
    candidates: tuple[PlayerId, ...]
    note: int | None = None
    asked: Asked | None = None
    also: tuple[str, ...] = ()
    announces: bool = False
    then: tuple[str, ...] = ()
    by_writer: bool = False

    @property
    def waits_for_name(self) -> bool:
        """Whether a name is to be settled; else it is a question to be answered later."""
        return bool(self.typed) or self.note is not None

    def to_json(self) -> dict[str, Any]:
        return {
            "number": self.number,
            "typed": self.typed,
            "text": self.text,
            "candidates": list(self.candidates),
            "note": self.note,
            "asked": None if self.asked is None else self.asked.to_json(),
            "also": list(self.also),
            "announces": self.announces,
            "then": list(self.then),
            "by_writer": self.by_writer,
        }

    @classmethod
    def from_json(cls, stored: Mapping[str, Any]) -> Pending:
        return cls(
            number=stored["number"],
            typed=stored["typed"],
            text=stored["text"],
            candidates=tuple(stored["candidates"]),
            note=stored.get("note"),
            asked=maybe(Asked.from_json, stored.get("asked")),
            also=tuple(stored.get("also", ())),
            announces=stored.get("announces", False),
            then=tuple(stored.get("then", ())),
            by_writer=stored.get("by_writer", False),
        )
