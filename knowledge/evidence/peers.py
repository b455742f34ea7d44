"""What others' logged rallies say of a player's rates: those alike, and everybody else.

Which ring somebody belongs to depends on whom it is asked for. Only rates of which a rally tells
one player are pooled: on whose paddle errors end is half for everybody together by definition, and
a rally of the one would stand among the partner's too.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import field
from types import MappingProxyType

from knowledge.dataclass import dataclass
from knowledge.evidence.observation import age_factor
from knowledge.evidence.rates import RATE_TRAIT, USUAL_RATE
from knowledge.evidence.rings import RING_PART, Ring, RingCount
from knowledge.vocabulary import Hand, PlayerId, Rate, Side

Stance = tuple[Hand, Side]
"""The hand somebody plays with and the side they play; players alike share both."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RateCount:
    """How often a player did it and did not, in the rallies of one day."""

    player: PlayerId
    rate: Rate
    day: int
    made: int
    missed: int


@dataclass(frozen=True, slots=True, kw_only=True)
class RateRing:
    """What one ring says of one rate: so many `rallies` as counted, and their sum after age."""

    ring: Ring
    rallies: int
    count: RingCount


Rings = Mapping[Rate, tuple[RateRing, ...]]


@dataclass(slots=True)
class _Sum:
    made: float = 0.0
    of: float = 0.0
    rallies: int = 0

    def add(self, made: float, of: float, rallies: int) -> None:
        self.made += made
        self.of += of
        self.rallies += rallies


@dataclass(frozen=True, slots=True, kw_only=True)
class Peers:
    """Everybody's counts, summed after age by rate and player, and how those known stand."""

    sums: Mapping[Rate, Mapping[PlayerId, _Sum]] = field(
        default_factory=lambda: MappingProxyType({})
    )
    stances: Mapping[PlayerId, Stance] = field(default_factory=lambda: MappingProxyType({}))

    def around(self, player: PlayerId) -> Rings:
        """The rings around one player, by rate; rings without rallies are left out."""
        found = {rate: self._rings(player, people) for rate, people in self.sums.items()}
        return MappingProxyType(
            {
                rate: tuple(_ring(rate, ring, rings[ring]) for ring in Ring if rings[ring].rallies)
                for rate, rings in found.items()
                if any(one.rallies for one in rings.values())
            }
        )

    def _rings(self, player: PlayerId, people: Mapping[PlayerId, _Sum]) -> Mapping[Ring, _Sum]:
        own = self.stances.get(player)
        rings = {ring: _Sum() for ring in Ring}
        for other, told in people.items():
            if other != player:
                is_alike = own is not None and self.stances.get(other) == own
                ring = rings[Ring.ALIKE if is_alike else Ring.OTHERS]
                ring.add(told.made, told.of, told.rallies)
        return rings


NO_PEERS = Peers()


def peers_of(
    counts: Iterable[RateCount], stances: Mapping[PlayerId, Stance], *, today: int
) -> Peers:
    """Everybody's counts as of day `today`, older ones for less."""
    sums: dict[Rate, dict[PlayerId, _Sum]] = defaultdict(lambda: defaultdict(_Sum))
    for one in counts:
        if one.rate in RATE_TRAIT:
            weight, of = age_factor(one.day, today=today), one.made + one.missed
            sums[one.rate][one.player].add(weight * one.made, weight * of, of)
    return Peers(sums=sums, stances=stances)


def _ring(rate: Rate, ring: Ring, told: _Sum) -> RateRing:
    return RateRing(
        ring=ring,
        rallies=told.rallies,
        count=RingCount(
            made=told.made, of=told.of, expected=USUAL_RATE[rate], part=RING_PART[ring]
        ),
    )
