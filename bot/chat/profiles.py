"""Profiles of the players that questions are about, read when asked for and kept in memory."""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Callable, Iterable, Mapping, Sequence
from typing import NamedTuple

from knowledge.evidence import NO_PEERS, Observation, Peers, Profile, RateTally, profile
from knowledge.vocabulary import PlayerId
from scouting_db.values import MatchId

CACHED_PROFILES = 512
"""Profiles kept in memory, the least recently used one leaving first."""


class Stamp(NamedTuple):
    """What a profile is true of: the book's version, the day (ordinal), and a match in a break."""

    version: int
    day: int
    between_games: MatchId | None = None


Read = Callable[[Sequence[PlayerId]], Mapping[PlayerId, Profile]]


class KeptProfiles:
    """Profiles by book and player, each with its stamp: another stamp is read anew."""

    def __init__(self) -> None:
        self._kept: OrderedDict[tuple[int, PlayerId], tuple[Stamp, Profile]] = OrderedDict()

    def __len__(self) -> int:
        return len(self._kept)

    def get(
        self, book: int, stamp: Stamp, players: Sequence[PlayerId], read: Read
    ) -> dict[PlayerId, Profile]:
        """The players' profiles; those that are not kept with this stamp are read together."""
        missing = [one for one in players if self._stamp(book, one) != stamp]
        if missing:
            for player, found in read(missing).items():
                self._kept[book, player] = (stamp, found)
        profiles = {}
        for player in players:
            self._kept.move_to_end((book, player))
            profiles[player] = self._kept[book, player][1]
        while len(self._kept) > CACHED_PROFILES:
            self._kept.popitem(last=False)
        return profiles

    def _stamp(self, book: int, player: PlayerId) -> Stamp | None:
        kept = self._kept.get((book, player))
        return None if kept is None else kept[0]


def profiles_of(
    names: Mapping[PlayerId, str],
    observations: Iterable[Observation],
    tallies: Iterable[RateTally],
    *,
    today: int,
    peers: Peers = NO_PEERS,
) -> dict[PlayerId, Profile]:
    """A profile for each of the named players; what `peers` did is where their rates begin."""
    noted: dict[PlayerId, list[Observation]] = {player: [] for player in names}
    counted: dict[PlayerId, list[RateTally]] = {player: [] for player in names}
    for one in observations:
        noted[one.player].append(one)
    for tally in tallies:
        counted[tally.player].append(tally)
    return {
        player: profile(
            player,
            name,
            noted[player],
            today=today,
            tallies=counted[player],
            others=peers.around(player),
        )
        for player, name in names.items()
    }
