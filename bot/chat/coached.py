"""What a coach's chat keeps beside the pair that speaks: which of their pairs plays which draw."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from typing import Any

from bot.chat.book_view import BookView
from knowledge.dataclass import dataclass
from knowledge.vocabulary import PlayerId

Pair = tuple[PlayerId, PlayerId]


@dataclass(frozen=True, slots=True, kw_only=True)
class Coached:
    """A coach writes. `draws` are "womens", "mens" and "mixed", as far as told, with who plays it.

    To a coach "they" may be their own pair, and what is told may be of another of their matches.
    """

    draws: tuple[tuple[str, Pair], ...] = ()

    def with_draw(self, draw: str, pair: Pair) -> Coached:
        """The pair plays that draw from now on, and nobody else of the coach's does."""
        kept = tuple(one for one in self.draws if one[0] != draw)
        return Coached(draws=(*kept, (draw, pair)))

    def among(self, known: Collection[PlayerId]) -> Coached:
        """The same without pairs of whom one is no longer in the book."""
        return Coached(draws=tuple(one for one in self.draws if set(one[1]) <= set(known)))

    def to_json(self) -> dict[str, Any]:
        return {"draws": [[draw, *pair] for draw, pair in self.draws]}

    @classmethod
    def from_json(cls, stored: Mapping[str, Any]) -> Coached:
        return cls(draws=tuple((draw, (one, other)) for draw, one, other in stored["draws"]))


def own_pairs(coach: Coached | None, view: BookView) -> tuple[Pair, ...]:
    """The pairs that a coach speaks for; none where no coach writes."""
    if coach is None:
        return ()
    ours = {*view.ours()}
    return tuple(both for _, both in view.pairs if set(both) <= ours)
