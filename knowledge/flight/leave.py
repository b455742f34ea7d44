"""When to let a ball go: the height at our kitchen line above which it flies out."""

from __future__ import annotations

import math
from typing import Final

from knowledge.court import Lane
from knowledge.dataclass import dataclass
from knowledge.flight.ball import DEFAULT_LIFT, HIGH_LIFT, LOW_LIFT
from knowledge.flight.build import LIMITS
from knowledge.flight.tables import tables

NOBODY_REACHES_M: Final = 3.0
"""Higher than any paddle at our line: stretched up it reaches 2.2 to 2.5 m (computed from body
fractions), jumping some more."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Leave:
    """The lowest height at our line at which the ball flies out, with the lift's two bounds.

    0 means that it flies out if it clears the net at all; infinite, that it cannot fly out below
    NOBODY_REACHES_M. `low_m` is by the low fit of the lift and `high_m` by the high one: for a
    ball with topspin the first is the lower.
    """

    height_m: float
    low_m: float
    high_m: float


def leave(
    height_m: float,
    from_net_m: float,
    *,
    speed_mps: float,
    topspin_rpm: float = 0.0,
    wind_mps: float = 0.0,
    lane: Lane = Lane.LINE,
) -> Leave:
    """By the default lift and both fits; arguments as for `leave_height_m`."""
    by_default, by_low, by_high = (
        leave_height_m(
            height_m,
            from_net_m,
            speed_mps=speed_mps,
            topspin_rpm=topspin_rpm,
            lift_per_spin=lift,
            wind_mps=wind_mps,
            lane=lane,
        )
        for lift in (DEFAULT_LIFT, LOW_LIFT, HIGH_LIFT)
    )
    return Leave(height_m=by_default, low_m=by_low, high_m=by_high)


def leave_height_m(
    height_m: float,
    from_net_m: float,
    *,
    speed_mps: float,
    topspin_rpm: float = 0.0,
    lift_per_spin: float = DEFAULT_LIFT,
    wind_mps: float = 0.0,
    lane: Lane = Lane.LINE,
) -> float:
    """Height at our kitchen line above which a ball struck by them lands out, from the tables.

    `height_m` and `from_net_m` are their contact point, the wind is positive from behind them.
    0: always out if it clears the net. Infinite: what we can reach does not fly out.
    `Lane.MIDDLE` reads as line.
    """
    lowest, highest, height = tables()[LIMITS].at(
        height_m,
        from_net_m,
        float(lane is Lane.CROSS),
        wind_mps,
        topspin_rpm * lift_per_spin / LOW_LIFT,
        speed_mps,
    )
    if height >= NOBODY_REACHES_M:
        return math.inf
    return 0.0 if highest <= lowest else float(height)
