"""What letting a soft ball bounce costs: time, ground, and where and how high it is met then.

Closed forms without drag (a dink flies so slowly that drag takes a tenth at most): it falls from
where we could take it, bounces, and is met at the top of its bounce. Bounce: national rulebook's
drop test (see knowledge.flight, whose ball it is); a gripping thin shell keeps 0.600 of its forward
speed (computed).
"""

from __future__ import annotations

import math
from typing import Final

from knowledge.ball_places import NET_M
from knowledge.court import KITCHEN_DEPTH_M
from knowledge.dataclass import dataclass
from knowledge.flight import OUTDOOR
from knowledge.flight.ball import GRAVITY_MPS2

BALL_RADIUS_M: Final = OUTDOOR.radius_m
RESTITUTION: Final = OUTDOOR.restitution
FORWARD_KEPT: Final = 0.6

DINK_FORWARD_MPS: Final = 4.0
DINK_FALLING_MPS: Final = 3.1
TAKEN_AT_M: Final = 0.7
FEET_FROM_NET_M: Final = KITCHEN_DEPTH_M + 0.3
"""A dink as it comes to a player at the line, taken between knee and hip, with the feet just
behind it: common practice, no source. It falls so fast there because it had to clear the net by
CLEARS_NET_M half a second before (no drag)."""

CLEARS_NET_M: Final = 0.15
TAKEN_FROM_NET_M: Final = FEET_FROM_NET_M - 0.5
"""An arm in front of the feet."""

NEAREST_M: Final = 0.3
DEAD_FORWARD_MPS: Final = 2.5
DEAD_FROM_NET_M: Final = 0.9
"""A dead ball is slower, and one would have to reach in to here. Common practice, no source."""


def taken_at_m(height_m: float | None) -> float:
    """Where it could be taken, as told; a height on the ground is only where it lands."""
    return TAKEN_AT_M if height_m is None or height_m <= BALL_RADIUS_M else height_m


@dataclass(frozen=True, slots=True, kw_only=True)
class Bounce:
    """What follows if it is let go by: from now until the top of its bounce."""

    time_s: float
    ground_m: float
    lands_after_m: float
    top_m: float


def bounce_of(
    *,
    height_m: float = TAKEN_AT_M,
    forward_mps: float = DINK_FORWARD_MPS,
    falling_mps: float = DINK_FALLING_MPS,
) -> Bounce:
    """From a ball at this height moving so fast towards us and down.

    1. fall: v^2 = f^2 + 2 g h, in (v - f) / g; 2. up again with e v, for e v / g, to
    (e v)^2 / 2 g; 3. forward at 0.6 of the speed meanwhile.
    """
    drop_m = max(0.0, height_m - BALL_RADIUS_M)
    landing_mps = math.sqrt(falling_mps**2 + 2 * GRAVITY_MPS2 * drop_m)
    fall_s = (landing_mps - falling_mps) / GRAVITY_MPS2
    rising_mps = RESTITUTION * landing_mps
    rise_s = rising_mps / GRAVITY_MPS2
    return Bounce(
        time_s=fall_s + rise_s,
        ground_m=forward_mps * (fall_s + FORWARD_KEPT * rise_s),
        lands_after_m=forward_mps * fall_s,
        top_m=BALL_RADIUS_M + rising_mps**2 / (2 * GRAVITY_MPS2),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Dink:
    """A soft ball where it could be taken in the air: height, from the net, and how it moves."""

    height_m: float
    from_net_m: float
    forward_mps: float
    falling_mps: float

    @property
    def bounce(self) -> Bounce:
        return bounce_of(
            height_m=self.height_m, forward_mps=self.forward_mps, falling_mps=self.falling_mps
        )

    def height_at_m(self, from_net_m: float) -> float:
        """How high it was or will be so far behind the net, before its bounce."""
        later_s = (from_net_m - self.from_net_m) / self.forward_mps
        return self.height_m - self.falling_mps * later_s - GRAVITY_MPS2 * later_s**2 / 2


def dink_of(
    *,
    height_m: float = TAKEN_AT_M,
    from_net_m: float | None = None,
    forward_mps: float | None = None,
    is_dead: bool = False,
) -> Dink:
    """One that cleared the net by CLEARS_NET_M: falling (n - h + g t^2 / 2) / t, t from the net."""
    usual_m = DEAD_FROM_NET_M if is_dead else TAKEN_FROM_NET_M
    away = max(NEAREST_M, usual_m if from_net_m is None else from_net_m)
    forward = forward_mps or (DEAD_FORWARD_MPS if is_dead else DINK_FORWARD_MPS)
    since_net_s = away / forward
    net_m = NET_M + CLEARS_NET_M + BALL_RADIUS_M
    falling = (net_m - height_m + GRAVITY_MPS2 * since_net_s**2 / 2) / since_net_s
    return Dink(
        height_m=height_m,
        from_net_m=away,
        forward_mps=forward,
        falling_mps=max(0.0, falling),
    )
