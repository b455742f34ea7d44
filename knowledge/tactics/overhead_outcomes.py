"""What an overhead is worth, computed: it wins, it misses, or the rally goes on.

A shot that wins w, errs e and otherwise leaves a rally worth v is worth w + (1 - w - e) v. Misses
come from our scatter round the aim, wins from the time of whoever must reach it, and what goes on
from where we stand by then. All sizes here are common practice, no source, unless said.
"""

from __future__ import annotations

from enum import StrEnum
from functools import cache
from types import MappingProxyType
from typing import Final

from knowledge.ball_facts import Depth, Footing
from knowledge.court import HALF_LENGTH_M, METRES_PER_FOOT, Point
from knowledge.dataclass import dataclass
from knowledge.reach import chance_in_time
from knowledge.tactics.overhead_flight import Scatter, Shot, course, misses
from knowledge.tactics.overhead_reach import SPREAD_S, TURN_S, slack_s


class Spot(StrEnum):
    """Where an overhead goes."""

    MIDDLE = "middle"
    FEET = "feet"
    HIP = "hip"
    ANGLE = "angle"
    BEHIND = "behind"
    BOUNCE = "bounce"


AT_LINE_M: Final = 2.4
OFF_LINE_M: Final = 3.4
COMING_M: Final = 4.3
BACK_M: Final = 6.4
BESIDE_M: Final = 1.2
"""Where they stand: from the net, and from the centre line."""

STANDS: Final = MappingProxyType(
    {
        Depth.AT_LINE: (AT_LINE_M, AT_LINE_M),
        Depth.ONE_BACK: (AT_LINE_M, BACK_M),
        Depth.COMING_IN: (COMING_M, COMING_M),
        Depth.BOTH_BACK: (BACK_M, BACK_M),
    }
)
"""From the net: whoever stands across from us, and the other one."""

OUR_X_M: Final = 1.0
"""We hit it from the right of the centre line; the left is the mirror image."""

SPEED_MPS: Final = MappingProxyType(
    {
        Spot.MIDDLE: 20.0,
        Spot.FEET: 20.0,
        Spot.HIP: 20.0,
        Spot.ANGLE: 17.0,
        Spot.BEHIND: 18.0,
        Spot.BOUNCE: 18.0,
    }
)
"""In balance. Overheads go 35 to 60 mph, 16 to 27 m/s (from memory); an angle is placed."""

MOVING_BACK_SPEED: Final = 0.8
"""Of that, with the weight going backwards."""

SCATTER: Final = MappingProxyType(
    {
        Footing.STILL: Scatter(up_deg=2.0, across_deg=2.2),
        Footing.FORWARD: Scatter(up_deg=2.0, across_deg=2.2),
        Footing.SIDEWAYS: Scatter(up_deg=2.9, across_deg=3.3),
        Footing.BACKWARD: Scatter(up_deg=3.8, across_deg=4.4),
    }
)

RETURNED: Final = MappingProxyType(
    {
        Spot.MIDDLE: 0.66,
        Spot.FEET: 0.70,
        Spot.HIP: 0.64,
        Spot.ANGLE: 0.62,
        Spot.BEHIND: 0.62,
        Spot.BOUNCE: 0.78,
    }
)
"""How often a ball that they get to comes back: less at the feet and off balance."""

READY_DEEP: Final = 0.16
"""So much more comes back from who stands deep and waits for it."""

RALLY_NEAR: Final = 0.66
RALLY_DEEP: Final = 0.50
NEAR_M: Final = 7 * METRES_PER_FOOT
"""What a rally is worth when it goes on: they are under pressure, while we are at the line."""

ANGLE_OPENS: Final = 0.04
"""An angle that comes back meets an open court of ours."""

GUARDS_SHORT_COURT: Final = 0.85
"""Who stays up while the partner backs off mostly shades to the short court."""

ALREADY_RUNNING_S: Final = -0.25
"""Who comes in is on the way to a short ball already."""

BOUNCE_BACK_M: Final = 1.8
BOUNCE_HEIGHT_M: Final = 1.8
"""Where a lob that bounced is met: further back and lower. From 5 m high it comes up 0.64 x 0.64
of that (drop test), and is met near the top."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Contact:
    """How we meet it: footing, distance from the net, height, and how wild our overhead is."""

    footing: Footing
    from_net_m: float
    height_m: float
    wildness: float = 1.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Outcome:
    """Chances that it wins outright and that it misses, and the worth of the rally otherwise."""

    wins: float
    errs: float
    goes_on: float

    @property
    def worth(self) -> float:
        """Our chance to win the rally with it."""
        return self.wins + (1 - self.wins - self.errs) * self.goes_on


def outcome(spot: Spot, contact: Contact, theirs: Depth | None) -> Outcome:
    """What one shot is worth from here; equal inputs, rounded, are worked out once."""
    return _outcome(
        spot,
        contact.footing,
        round(contact.from_net_m, 1),
        round(contact.height_m, 1),
        round(contact.wildness, 1),
        theirs,
    )


@cache
def _outcome(
    spot: Spot,
    footing: Footing,
    from_net_m: float,
    height_m: float,
    wild: float,
    theirs: Depth | None,
) -> Outcome:
    if spot is Spot.BOUNCE:
        footing, from_net_m = Footing.STILL, min(from_net_m + BOUNCE_BACK_M, HALF_LENGTH_M + 1)
        height_m, theirs = min(height_m, BOUNCE_HEIGHT_M), _ready(theirs)
    shot = shot_at(spot, from_net_m, height_m, theirs, speed=_pace(footing))
    errs = misses(shot, SCATTER[footing].times(wild))
    free = unreached(shot, stands(theirs), delay_s=_delay_s(spot, theirs))
    if spot is Spot.ANGLE and theirs is Depth.ONE_BACK:
        guarded = unreached(shot, mirrored(stands(theirs)))
        free += GUARDS_SHORT_COURT * (guarded - free)
    back = RETURNED[spot] + (READY_DEEP if _meets_deep(spot, theirs) else 0.0)
    wins = (1 - errs) * (1 - (1 - free) * back)
    return Outcome(wins=wins, errs=errs, goes_on=_goes_on(spot, from_net_m))


def _pace(footing: Footing) -> float:
    return MOVING_BACK_SPEED if footing is Footing.BACKWARD else 1.0


def _ready(theirs: Depth | None) -> Depth | None:
    """While it bounces they get into place."""
    return Depth.AT_LINE if theirs in (Depth.COMING_IN, Depth.AT_LINE) else theirs


def _meets_deep(spot: Spot, theirs: Depth | None) -> bool:
    if spot in (Spot.HIP, Spot.ANGLE, Spot.BEHIND):
        return False
    return theirs is Depth.BOTH_BACK or (theirs is Depth.ONE_BACK and spot is not Spot.FEET)


def _goes_on(spot: Spot, from_net_m: float) -> float:
    """What is left of our pressure where we stand when it comes back."""
    depth = min(1.0, max(0.0, (from_net_m - NEAR_M) / (HALF_LENGTH_M - NEAR_M)))
    worth = RALLY_NEAR + depth * (RALLY_DEEP - RALLY_NEAR)
    return worth - (ANGLE_OPENS if spot is Spot.ANGLE else 0.0)


def stands(theirs: Depth | None) -> tuple[Point, Point]:
    """Who stands across from us (on our right), and the other one."""
    across, other = (OFF_LINE_M, OFF_LINE_M) if theirs is None else STANDS[theirs]
    return Point(x_m=BESIDE_M, y_m=across), Point(x_m=-BESIDE_M, y_m=other)


def mirrored(pair: tuple[Point, Point]) -> tuple[Point, Point]:
    """The same two with their sides changed."""
    across, other = pair
    return Point(x_m=-other.x_m, y_m=other.y_m), Point(x_m=-across.x_m, y_m=across.y_m)


def shot_at(
    spot: Spot, from_net_m: float, height_m: float, theirs: Depth | None, *, speed: float = 1.0
) -> Shot:
    return Shot(
        contact=Point(x_m=OUR_X_M, y_m=-from_net_m),
        height_m=height_m,
        speed_mps=SPEED_MPS[spot] * speed,
        target=target_of(spot, theirs),
    )


def target_of(spot: Spot, theirs: Depth | None) -> Point:
    """Where it lands. A ball at the hip lands well behind whom it is meant for."""
    across, other = stands(theirs)
    match spot:
        case Spot.FEET:
            return Point(x_m=across.x_m, y_m=min(across.y_m + 0.2, 5.4))
        case Spot.HIP:
            return Point(x_m=across.x_m + 0.3, y_m=across.y_m + 2.6)
        case Spot.ANGLE:
            return Point(x_m=-2.3, y_m=3.0)
        case Spot.BEHIND:
            return Point(x_m=other.x_m - 0.9, y_m=5.0)
        case Spot.MIDDLE | Spot.BOUNCE:
            return Point(x_m=0.0, y_m=5.2)


def _delay_s(spot: Spot, theirs: Depth | None) -> float:
    """Behind a runner it takes a turn first; a short ball is in a runner's way."""
    if spot is Spot.BEHIND:
        return TURN_S
    return ALREADY_RUNNING_S if spot is Spot.ANGLE and theirs is Depth.COMING_IN else 0.0


@cache
def unreached(shot: Shot, pair: tuple[Point, Point], *, delay_s: float = 0.0) -> float:
    """The chance that neither of them gets a paddle on it."""
    legs = course(shot)
    slack = max(slack_s(legs, one, delay_s=delay_s) for one in pair)
    return 1 - chance_in_time(slack, spread_s=SPREAD_S)
