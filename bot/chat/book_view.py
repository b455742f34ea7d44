"""A book as it reads: its people by name, their pairs, and profiles of whom a question is about."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import field
from types import MappingProxyType

from knowledge.dataclass import dataclass
from knowledge.evidence import Profile
from knowledge.vocabulary import PlayerId
from scouting_db.values import PairId, PlayerRow


@dataclass(frozen=True, slots=True, kw_only=True)
class BookView:
    """A book as it reads: roster, known pairs, and profiles of whom one asked for.

    `version` is the first of those in which the same people were in it. A question reads the
    profiles of those on court only (bot.chat.profiles).
    """

    version: int
    roster: tuple[PlayerRow, ...]
    pairs: tuple[tuple[PairId, tuple[PlayerId, PlayerId]], ...]
    profiles: Mapping[PlayerId, Profile] = field(default_factory=lambda: MappingProxyType({}))

    def has_same_people_as(self, other: BookView) -> bool:
        return (self.roster, self.pairs) == (other.roster, other.pairs)

    def name_of(self, player: PlayerId) -> str:
        row = self.player(player)
        return row.name if row else "?"

    def player(self, player: PlayerId) -> PlayerRow | None:
        return next((row for row in self.roster if row.player == player), None)

    def short_name(self, player: PlayerId) -> str:
        """The surname, or the whole name where a part of somebody else's is the same."""
        name = self.name_of(player)
        last = surname(name)
        shared = sum(last in _parts(row.name) for row in self.roster) > 1
        row = self.player(player)
        if row is not None and row.ours:
            return name.split()[0]
        return name if shared else last

    def profile_of(self, player: PlayerId) -> Profile:
        known = self.profiles.get(player)
        return known or Profile(player=player, name=self.short_name(player))

    def ours(self) -> tuple[PlayerId, ...]:
        return tuple(row.player for row in self.roster if row.ours)

    def partner_of(self, player: PlayerId) -> PlayerId | None:
        """The one known partner; None without one or with several."""
        partners = {a if b == player else b for _, (a, b) in self.pairs if player in (a, b)}
        return partners.pop() if len(partners) == 1 else None

    def pair_id(self, players: Sequence[PlayerId]) -> PairId | None:
        """The number of a pair that the book knows."""
        wanted = set(players)
        return next((pair for pair, both in self.pairs if set(both) == wanted), None)


def surname(name: str) -> str:
    """The last word and the small ones before it: `van der Meer` of `Joost van der Meer`."""
    words = name.split()
    start = len(words) - 1
    while start > 1 and words[start - 1].islower():
        start -= 1
    return " ".join(words[start:]) if words else name


def _parts(name: str) -> frozenset[str]:
    """Every part somebody may be called by: Nguyen and Brandt of Nguyen-Brandt."""
    return frozenset((surname(name), *re.split(r"[\s-]+", name)))
