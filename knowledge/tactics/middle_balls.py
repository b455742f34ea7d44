"""The five balls through the middle as flights: how long each leaves our two to get there.

Speeds, heights and what must be left for the stroke are common practice without a source.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

from knowledge.court import HALF_LENGTH_M, KITCHEN_DEPTH_M, Point, x_of_side_m
from knowledge.dataclass import dataclass
from knowledge.reach import SPREAD_S, Shot
from knowledge.reach.reacting import CLUB_ANTICIPATION
from knowledge.vocabulary import BallKind, Side

AT_LINE_M: Final = KITCHEN_DEPTH_M + 0.2
FROM_DEEP_M: Final = HALF_LENGTH_M - 0.7
"""How far from the net they hit: at their line, or a drive from just inside their baseline."""

LOB_SPREAD_S: Final = 0.15
"""How much the time to a lob varies: reading it and running back vary more than a step. Our
guess."""

LANES_M: Final = (-0.6, -0.3, 0.0, 0.3, 0.6)
"""Where a ball "down the middle" passes: two feet to either side, each as likely."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Flight:
    """One kind of ball: from where, how fast along the ground, how high over which depths.

    `met_m` is how high it is met on average; `anticipation` is the share of our reaction that the
    swing gives away (reach.reaction_s); `stroke_s` what must be left on arrival to play it in
    balance; `spread_s` how much the time to it varies.
    """

    from_net_m: float
    contact_m: float
    speed_mps: float
    over_m: tuple[float, ...]
    height_m: float
    met_m: float
    stroke_s: float
    anticipation: float = CLUB_ANTICIPATION
    volleyed: bool = True
    spread_s: float = SPREAD_S


FLIGHTS: Final[Mapping[BallKind, Flight]] = MappingProxyType(
    {
        BallKind.DINK: Flight(
            from_net_m=AT_LINE_M,
            contact_m=0.4,
            speed_mps=5.2,
            over_m=(-1.8,),
            height_m=0.05,
            met_m=0.4,
            stroke_s=0.25,
            volleyed=False,
        ),
        BallKind.FLOATING: Flight(
            from_net_m=AT_LINE_M,
            contact_m=0.4,
            speed_mps=7.0,
            over_m=(-2.4,),
            height_m=1.5,
            met_m=1.5,
            stroke_s=0.15,
        ),
        BallKind.DRIVE: Flight(
            from_net_m=FROM_DEEP_M,
            contact_m=0.8,
            speed_mps=18.0,
            over_m=(-2.4,),
            height_m=0.9,
            met_m=0.9,
            anticipation=0.3,
            stroke_s=0.1,
        ),
        BallKind.SPEED_UP: Flight(
            from_net_m=AT_LINE_M,
            contact_m=0.8,
            speed_mps=14.0,
            over_m=(-2.4,),
            height_m=1.1,
            met_m=1.1,
            anticipation=0.5,
            stroke_s=0.0,
        ),
        BallKind.LOB: Flight(
            from_net_m=AT_LINE_M,
            contact_m=0.4,
            speed_mps=5.5,
            over_m=(-4.4, -5.0, -5.6),
            height_m=0.05,
            met_m=1.9,
            spread_s=LOB_SPREAD_S,
            stroke_s=0.3,
        ),
    }
)


def start_of(kind: BallKind, hitter: Side | None) -> Point:
    """Where they hit it from: the middle of that court of theirs, or of both."""
    x_m = 0.0 if hitter is None else x_of_side_m(hitter, ours=False)
    return Point(x_m=x_m, y_m=FLIGHTS[kind].from_net_m)


def shot_of(kind: BallKind, hitter: Side | None) -> Shot:
    """The same ball to any place on our half, as a seam is computed for."""
    flight = FLIGHTS[kind]
    return Shot(
        start=start_of(kind, hitter),
        speed_mps=flight.speed_mps,
        height_m=flight.met_m,
        volleyed=flight.volleyed,
        stroke_s=flight.stroke_s,
    )
