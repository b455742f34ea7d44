"""The court: coordinates, zones, net height along the net, and the room along a lane.

Coordinates in metres, seen from above; the origin is on the ground under the centre of the net.
x grows to our right as we face the net, y grows from our half into theirs:

        y = +6.71   +---------+---------+   their baseline
                    |  their  |  their  |
                    |  RIGHT  |  LEFT   |   (their own right and left, facing the net)
        y = +2.13   +---------+---------+   their kitchen line
                    |                   |
        y =  0      =====================   net, x from -3.05 to +3.05
                    |                   |
        y = -2.13   +---------+---------+   our kitchen line
                    |  our    |  our    |
                    |  LEFT   |  RIGHT  |
        y = -6.71   +---------+---------+   our baseline
                 x = -3.05    0       +3.05

Sizes: national rulebook, 2025 edition, 2.A to 2.C: 20 by 44 ft to the outside of the lines,
kitchen 7 ft, net 36 in at the sidelines and 34 in at the centre, posts 22 ft apart.
"""

from __future__ import annotations

import math
from enum import StrEnum

from knowledge.dataclass import dataclass
from knowledge.vocabulary import Side

METRES_PER_FOOT = 0.3048
METRES_PER_INCH = 0.0254

HALF_WIDTH_M = 10 * METRES_PER_FOOT
HALF_LENGTH_M = 22 * METRES_PER_FOOT
KITCHEN_DEPTH_M = 7 * METRES_PER_FOOT
NET_HEIGHT_CENTRE_M = 34 * METRES_PER_INCH
NET_HEIGHT_SIDELINE_M = 36 * METRES_PER_INCH
POST_FROM_CENTRE_M = 11 * METRES_PER_FOOT

MID_COURT_ENDS_M = 15 * METRES_PER_FOOT
"""How far from the net the mid-court, where one is caught on the way in, goes over into the back
court. Common practice, no source: the rulebook knows no such line."""

LANE_FROM_CENTRE_M = 2.0
"""Where the lanes of `Lane` start, and end unless in the middle: some 3.5 ft inside a sideline.
Common practice, no source."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Point:
    """A place on the ground, in metres."""

    x_m: float
    y_m: float

    def distance_m(self, other: Point) -> float:
        return math.hypot(self.x_m - other.x_m, self.y_m - other.y_m)


def net_height_m(x_m: float) -> float:
    """Height of the net at `x_m`: linear between centre and sideline, level beyond it.

    How a net hangs between its two ruled heights is a modelling choice; linear is the plainest.
    """
    share = min(1.0, abs(x_m) / HALF_WIDTH_M)
    return NET_HEIGHT_CENTRE_M + share * (NET_HEIGHT_SIDELINE_M - NET_HEIGHT_CENTRE_M)


def net_crossing_x_m(start: Point, end: Point) -> float:
    """Where a straight lane crosses the net; ValueError if both ends are on one side."""
    if start.y_m * end.y_m >= 0:
        raise ValueError(f"a lane goes from one half to the other, not {start} to {end}")
    share = start.y_m / (start.y_m - end.y_m)
    return start.x_m + share * (end.x_m - start.x_m)


def room_m(start: Point, target: Point) -> float:
    """How far past the target the lane stays inside the lines, in metres; 0 if it is out."""
    dx, dy = target.x_m - start.x_m, target.y_m - start.y_m
    length = math.hypot(dx, dy)
    if length == 0 or not is_in(target):
        return 0.0
    reach = [math.inf]
    if dy:
        reach.append((math.copysign(HALF_LENGTH_M, dy) - target.y_m) / dy)
    if dx:
        reach.append((math.copysign(HALF_WIDTH_M, dx) - target.x_m) / dx)
    return max(0.0, min(reach)) * length


def lane_in_court_m(start: Point, target: Point) -> float:
    """Length of the part of a lane beyond the net that is in the court, in metres."""
    crossing = Point(x_m=net_crossing_x_m(start, target), y_m=0.0)
    return crossing.distance_m(target) + room_m(start, target)


def is_in(place: Point) -> bool:
    """Whether a ball landing here is in; lines are in (2025 edition, 2.A)."""
    return abs(place.x_m) <= HALF_WIDTH_M and abs(place.y_m) <= HALF_LENGTH_M


def is_in_kitchen(place: Point) -> bool:
    """Whether the place is in either non-volley zone, lines included."""
    return abs(place.x_m) <= HALF_WIDTH_M and abs(place.y_m) <= KITCHEN_DEPTH_M


class Zone(StrEnum):
    """How deep in a half a place is; the words are the trade's."""

    KITCHEN = "kitchen"
    MID_COURT = "mid-court"
    BACK_COURT = "back court"
    OUT = "out"


def zone_of(place: Point) -> Zone:
    """The zone of a place in either half; lines belong to the court, the kitchen's to it."""
    if not is_in(place):
        return Zone.OUT
    if is_in_kitchen(place):
        return Zone.KITCHEN
    return Zone.MID_COURT if abs(place.y_m) <= MID_COURT_ENDS_M else Zone.BACK_COURT


class Lane(StrEnum):
    """Where a ball from near a sideline goes: along it, to the middle, or to the other one."""

    LINE = "line"
    MIDDLE = "middle"
    CROSS = "cross"


def lane_ends(lane: Lane, *, from_net_m: float, depth_m: float) -> tuple[Point, Point]:
    """Start on our right, so far behind the net, and a target so far beyond it.

    From our left everything is mirrored; a ball at us is the same turned half round.
    """
    across = {Lane.LINE: 1.0, Lane.MIDDLE: 0.0, Lane.CROSS: -1.0}[lane]
    start = Point(x_m=LANE_FROM_CENTRE_M, y_m=-from_net_m)
    return start, Point(x_m=across * LANE_FROM_CENTRE_M, y_m=depth_m)


def x_of_side_m(side: Side, *, ours: bool, share: float = 0.5) -> float:
    """x at `share` of the way from the centre line to the sideline of a pair's own side."""
    towards = 1.0 if (side is Side.RIGHT) is ours else -1.0
    return towards * share * HALF_WIDTH_M


def at_kitchen_line(side: Side, *, ours: bool, behind_m: float = 0.3) -> Point:
    """Where a player of that side stands at the line, in the middle of their half."""
    y_m = KITCHEN_DEPTH_M + behind_m
    return Point(x_m=x_of_side_m(side, ours=ours), y_m=-y_m if ours else y_m)


def at_baseline(side: Side, *, ours: bool, behind_m: float = 0.5) -> Point:
    """Where a server or a receiver of that side stands, behind the baseline."""
    y_m = HALF_LENGTH_M + behind_m
    return Point(x_m=x_of_side_m(side, ours=ours), y_m=-y_m if ours else y_m)
