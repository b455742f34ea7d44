"""Profiles of the players that questions are about, read when asked for and kept in memory."""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Callable, Hashable, Iterable, Mapping, Sequence
from functools import partial
from typing import Any, NamedTuple, TypeVar

from knowledge.evidence import (
    NO_PEERS,
    RATE_TRAIT,
    Observation,
    Peers,
    Profile,
    RateTally,
    Recall,
    profile,
    recall_nothing,
)
from knowledge.vocabulary import PlayerId
from scouting_db.values import MatchId

CACHED_PROFILES = 512
"""Profiles kept in memory, the least recently used one leaving first."""


class Stamp(NamedTuple):
    """What a profile is true of: the version that last wrote what it is made of, the day (ordinal)
    and the zone in which days are counted, and a match in a break.
    """

    version: int
    day: int
    between_games: MatchId | None = None
    zone: str = "UTC"


Read = Callable[[Sequence[PlayerId]], Mapping[PlayerId, Profile]]
Found = TypeVar("Found")


class Memory:
    """What was worked out last under each key, and from what: equal inputs give it again."""

    def __init__(self) -> None:
        self._known: dict[Hashable, tuple[tuple[object, ...], Any]] = {}

    def recall(self, key: Hashable, inputs: tuple[object, ...], find: Callable[[], Found]) -> Found:
        """A knowledge.evidence.Recall. Inputs that are the same objects are told at a glance."""
        known = self._known.get(key)
        if known is None or known[0] != inputs:
            known = self._known[key] = (inputs, find())
        found: Found = known[1]
        return found


class Memories:
    """Memories by book and player (None: of the book as a whole), the least recent leaving."""

    def __init__(self) -> None:
        self._kept: OrderedDict[tuple[int, PlayerId | None], Memory] = OrderedDict()

    def __len__(self) -> int:
        return len(self._kept)

    def of(self, book: int, player: PlayerId | None = None) -> Memory:
        memory = self._kept.setdefault((book, player), Memory())
        self._kept.move_to_end((book, player))
        while len(self._kept) > CACHED_PROFILES:
            self._kept.popitem(last=False)
        return memory


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
    noted: Mapping[PlayerId, tuple[Observation, ...]],
    tallies: Iterable[RateTally],
    *,
    today: int,
    peers: Callable[[], Peers] = lambda: NO_PEERS,
    recall_of: Callable[[PlayerId], Recall] = lambda _: recall_nothing,
) -> dict[PlayerId, Profile]:
    """A profile for each of the named players; what `peers` did is where their rates begin.

    Peers are asked for only where somebody has rates of their own to begin with.
    """
    counted: dict[PlayerId, list[RateTally]] = {player: [] for player in names}
    for tally in tallies:
        counted[tally.player].append(tally)
    found = {}
    for player, name in names.items():
        recall, own = recall_of(player), counted[player]
        others = peers() if any(one.rate in RATE_TRAIT for one in own) else NO_PEERS
        found[player] = profile(
            player,
            name,
            noted.get(player, ()),
            today=today,
            tallies=own,
            others=recall("others", (others,), partial(others.around, player)),
            recall=recall,
        )
    return found
