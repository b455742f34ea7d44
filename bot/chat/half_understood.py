"""Claims of a note that are possible but not likely enough to make: which of them to offer."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from bot.chat.said import Claim
from knowledge.dataclass import dataclass

MOST_OFFERED = 2
"""Buttons of this kind under a note: more would be read as a quiz. Common practice, no source."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Doubted:
    """A claim that was not made, and the chance that it is meant."""

    claim: Claim
    chance: float


def worth_offering(doubted: Iterable[Doubted], made: Sequence[Claim]) -> tuple[Claim, ...]:
    """The likeliest few, one a trait, and none of a trait of which the note says something."""
    told = {(one.player, one.trait) for one in made}
    offered: list[Claim] = []
    for one in sorted(doubted, key=lambda one: -one.chance):
        trait = (one.claim.player, one.claim.trait)
        if trait not in told:
            told.add(trait)
            offered.append(one.claim)
    return tuple(offered[:MOST_OFFERED])
