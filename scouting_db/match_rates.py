"""What the rallies of a match say of the players' rates, as a value that stands for itself."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator
from dataclasses import replace
from itertools import chain

from knowledge.dataclass import dataclass
from knowledge.evidence import RateCount, RateTally
from knowledge.vocabulary import PlayerId, Rate
from scouting_db.values import MatchId


@dataclass(frozen=True, slots=True, kw_only=True)
class MatchRates:
    """One tally per player, rate and whether the game is over.

    `settled_rallies` and `open_rallies` count the rallies that stand, whatever they tell. Only the
    last game of a running match is open.
    """

    match: MatchId
    is_running: bool
    tallies: tuple[RateTally, ...] = ()
    settled_rallies: int = 0
    open_rallies: int = 0

    @property
    def counts(self) -> tuple[RateCount, ...]:
        """What it adds to what others are compared with: nothing while it runs."""
        if self.is_running:
            return ()
        return tuple(
            RateCount(
                player=one.player,
                rate=one.rate,
                day=one.day,
                made=len(one.made),
                missed=len(one.missed),
            )
            for one in self.tallies
        )

    @property
    def between_games(self) -> tuple[RateTally, ...]:
        """The tallies while none of its games is on: all of them settled."""
        found: dict[tuple[PlayerId, Rate], RateTally] = {}
        for one in self.tallies:
            known = found.get((one.player, one.rate))
            found[one.player, one.rate] = replace(
                one,
                made=one.made if known is None else (*known.made, *one.made),
                missed=one.missed if known is None else (*known.missed, *one.missed),
                is_settled=True,
                logged=self.settled_rallies + self.open_rallies,
            )
        return tuple(found.values())


def tallies_of(
    matches: Iterable[MatchRates],
    players: Collection[PlayerId],
    *,
    between_games: MatchId | None = None,
) -> tuple[RateTally, ...]:
    """What the matches say of these players; of that match as it is between its games."""
    told: Iterator[Iterable[RateTally]] = (
        one.between_games if one.match == between_games else one.tallies for one in matches
    )
    return tuple(tally for tally in chain.from_iterable(told) if tally.player in players)
