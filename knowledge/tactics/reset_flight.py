"""How often a ball that passes us so high flies out: over speeds, contacts and spins we can't see.

The heights above which it does are those of `knowledge.flight`, looked up over a grid of what
the ball may be, weighed by how usual it is: speeds and contacts from memory, lift by both
published fits.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from functools import lru_cache
from typing import Final

from knowledge.ball_facts import Spin
from knowledge.ball_places import NET_M
from knowledge.court import HALF_LENGTH_M, KITCHEN_DEPTH_M, METRES_PER_FOOT
from knowledge.dataclass import dataclass
from knowledge.flight import (
    DRIVE_MPS,
    HIGH_LIFT,
    LOW_LIFT,
    MPS_PER_MPH,
    SPEED_UP_MPS,
    TOPSPIN_RPM,
    FlatFire,
    leave_height_m,
)
from knowledge.normal import normal_cdf

AT_OUR_LINE_M: Final = KITCHEN_DEPTH_M + 0.3

SPREAD_MPS: Final = 5.0 * MPS_PER_MPH
KNOWN_SPREAD_MPS: Final = 2.0 * MPS_PER_MPH
"""How far speeds vary round the usual one, and round one that is told. Common practice."""

SPEED_STEPS: Final = (-1.5, -0.75, 0.0, 0.75, 1.5)
STEP_WEIGHTS: Final = (0.32, 0.75, 1.0, 0.75, 0.32)
"""A normal spread in five steps: its density at each, against the middle's."""

CONTACTS_M: Final = (0.45, 0.70, 0.95)
CONTACT_FROM_NET_M: Final = KITCHEN_DEPTH_M + 2 * METRES_PER_FOOT
"""Their dink sped up: knee to net high, about 2 ft behind their line. Common practice."""

VOLLEYED_M: Final = (0.95, 1.25, 1.55)
"""What comes at us in mid-court is hit out of the air, net to shoulder high. Common practice."""

DRIVEN_M: Final = (0.75, 0.95)
DRIVEN_FROM_NET_M: Final = HALF_LENGTH_M

FLAT_SHARE: Final = 0.4
FLAT_SHIFT: Final = 0.35
"""Balls hit flat where nobody noted the hitter; that much more or less of a clear habit."""

SEEN_WITHIN_M: Final = 0.10
"""Nobody sees the height better than this. Common practice."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Passing:
    """A ball as it comes at us. `flat_share` is how often this hitter hits flat, 0 to 1."""

    height_m: float
    met_from_net_m: float = AT_OUR_LINE_M
    pace_mps: float | None = None
    is_drive: bool = False
    is_volleyed: bool = False
    flat_share: float = FLAT_SHARE
    wind_mps: float = 0.0


HEIGHTS_KEPT: Final = 4096


def chance_out(ball: Passing) -> float:
    """How many of the balls that pass us there fly out, 0 to 1; half where none could."""
    from_net_m = DRIVEN_FROM_NET_M if ball.is_drive else CONTACT_FROM_NET_M
    out = total = 0.0
    for weight, hard in _possible(ball):
        slope = hard.slope_through(from_net_m + ball.met_from_net_m, ball.height_m)
        if hard.height_at_m(from_net_m, slope) < NET_M:
            continue
        above = _leave_m(hard, from_net_m, ball.met_from_net_m) - ball.height_m
        out += weight * (1 - normal_cdf(above / SEEN_WITHIN_M))
        total += weight
    return out / total if total else 0.5


def out_of_ten(ball: Passing) -> int:
    """Never ten: nobody sees a ball that well."""
    return min(9, round(10 * chance_out(ball)))


def _possible(ball: Passing) -> Iterator[tuple[float, FlatFire]]:
    """Every ball that it may be, with how usual that is."""
    middle, spread = DRIVE_MPS if ball.is_drive else SPEED_UP_MPS, SPREAD_MPS
    if ball.pace_mps is not None:
        middle, spread = ball.pace_mps, KNOWN_SPREAD_MPS
    contacts = DRIVEN_M if ball.is_drive else VOLLEYED_M if ball.is_volleyed else CONTACTS_M
    spun = (1 - ball.flat_share) / 2
    spins = (
        (0.0, LOW_LIFT, ball.flat_share),
        (TOPSPIN_RPM, LOW_LIFT, spun),
        (TOPSPIN_RPM, HIGH_LIFT, spun),
    )
    for step, usual in zip(SPEED_STEPS, STEP_WEIGHTS, strict=True):
        for height_m in contacts:
            for rpm, lift, share in spins:
                hard = FlatFire(
                    height_m=height_m,
                    speed_mps=middle + step * spread,
                    topspin_rpm=rpm,
                    lift_per_spin=lift,
                    wind_mps=ball.wind_mps,
                )
                yield usual * share, hard


@lru_cache(maxsize=HEIGHTS_KEPT)
def _leave_m(hard: FlatFire, from_net_m: float, met_m: float) -> float:
    """The height to leave it at where we meet it: the table's at our line, and the way from there.

    0 for always, infinite for never, as in the table.
    """
    at_line_m = leave_height_m(
        hard.height_m,
        from_net_m,
        speed_mps=hard.speed_mps,
        topspin_rpm=hard.topspin_rpm,
        lift_per_spin=hard.lift_per_spin,
        wind_mps=hard.wind_mps,
    )
    if at_line_m == 0 or math.isinf(at_line_m):
        return at_line_m
    slope = hard.slope_through(from_net_m + HALF_LENGTH_M, 0.0)
    line_m, there_m = (
        hard.height_at_m(from_net_m + way, slope) for way in (KITCHEN_DEPTH_M, met_m)
    )
    return max(0.0, at_line_m + there_m - line_m)


def flat_share(spin: Spin | None, habit_level: float) -> float:
    """How often it is flat: as said of this ball, else by what is noted of the hitter."""
    match spin:
        case Spin.FLAT | Spin.SLICE:
            return 1.0
        case Spin.TOPSPIN:
            return 0.0
    return min(1.0, max(0.0, FLAT_SHARE - FLAT_SHIFT * habit_level))
