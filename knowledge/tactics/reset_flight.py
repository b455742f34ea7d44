"""How often a ball that passes us so high flies out: over speeds, contacts and spins we can't see.

The chance is that of the closed form in attack_flight over a grid of what the ball may be, weighed
by how usual it is: speeds and contacts from memory, lift by both published fits.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from knowledge.ball_facts import Depth, Spin
from knowledge.court import HALF_LENGTH_M, KITCHEN_DEPTH_M, METRES_PER_FOOT
from knowledge.normal import normal_cdf
from knowledge.situation import Wind
from knowledge.tactics.attack_flight import HIGH_LIFT, MPS_PER_MPH, NET_M, HardBall

AT_OUR_LINE_M: Final = KITCHEN_DEPTH_M + 0.3

SPEED_UP_MPH: Final = 35.0
DRIVE_MPH: Final = 48.0
"""Middles of 25 to 45 and 35 to 55 mph, from memory."""

SPREAD_MPH: Final = 5.0
KNOWN_SPREAD_MPH: Final = 2.0
SPEED_STEPS: Final = (-1.5, -0.75, 0.0, 0.75, 1.5)
STEP_WEIGHTS: Final = (0.32, 0.75, 1.0, 0.75, 0.32)
"""A normal spread in five steps: its density at each, against the middle's."""

CONTACTS_M: Final = (0.45, 0.70, 0.95)
CONTACT_FROM_NET_M: Final = KITCHEN_DEPTH_M + 2 * METRES_PER_FOOT
"""Their dink sped up: knee to net high, about 2 ft behind their line. Common practice."""

DRIVEN_M: Final = (0.75, 0.95)
DRIVEN_FROM_NET_M: Final = HALF_LENGTH_M

FLAT_SHARE: Final = 0.4
FLAT_SHIFT: Final = 0.35
"""Balls hit flat where nobody noted the hitter; that much more or less of a clear habit."""

SEEN_WITHIN_M: Final = 0.10
"""Nobody sees the height better than this. Common practice."""

BREEZE_MPH: Final = 10.0
"""A wind that is told without a number."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Passing:
    """A ball as it comes at us. `flat_share` is how often this hitter hits flat, 0 to 1."""

    height_m: float
    met_from_net_m: float = AT_OUR_LINE_M
    pace_mps: float | None = None
    is_drive: bool = False
    flat_share: float = FLAT_SHARE
    wind_mps: float = 0.0


def chance_out(ball: Passing) -> float:
    """How many of the balls that pass us there fly out, 0 to 1; half where none could."""
    out = total = 0.0
    for weight, hard in _possible(ball):
        slope = hard.slope_through(hard.from_net_m + ball.met_from_net_m, ball.height_m)
        if hard.height_at_m(hard.from_net_m, slope) < NET_M:
            continue
        limit = hard.leave_height_m(ball.met_from_net_m)
        above = -1.0 if limit is None else limit - ball.height_m
        out += weight * (1 - normal_cdf(above / SEEN_WITHIN_M))
        total += weight
    return out / total if total else 0.5


def _possible(ball: Passing) -> Iterator[tuple[float, HardBall]]:
    """Every ball that it may be, with how usual that is."""
    middle = DRIVE_MPH if ball.is_drive else SPEED_UP_MPH
    spread = SPREAD_MPH
    if ball.pace_mps is not None:
        middle, spread = ball.pace_mps / MPS_PER_MPH, KNOWN_SPREAD_MPH
    contacts = DRIVEN_M if ball.is_drive else CONTACTS_M
    from_net_m = DRIVEN_FROM_NET_M if ball.is_drive else CONTACT_FROM_NET_M
    spun = (1 - ball.flat_share) / 2
    for step, usual in zip(SPEED_STEPS, STEP_WEIGHTS, strict=True):
        for height_m in contacts:
            for lift, share in ((0.0, ball.flat_share), (1.0, spun), (HIGH_LIFT, spun)):
                hard = HardBall(
                    height_m=height_m,
                    from_net_m=from_net_m,
                    speed_mps=(middle + step * spread) * MPS_PER_MPH,
                    lift=lift,
                    wind_mps=ball.wind_mps,
                )
                yield usual * share, hard


def flat_share(spin: Spin | None, habit_level: float) -> float:
    """How often it is flat: as said of this ball, else by what is noted of the hitter."""
    match spin:
        case Spin.FLAT | Spin.SLICE:
            return 1.0
        case Spin.TOPSPIN:
            return 0.0
    return min(1.0, max(0.0, FLAT_SHARE - FLAT_SHIFT * habit_level))


def wind_along_mps(wind: Wind | None, told_mps: float | None) -> float:
    """The wind along their ball: it blows with it where it is against us."""
    speed = BREEZE_MPH * MPS_PER_MPH if told_mps is None else told_mps
    return {Wind.AGAINST_US: speed, Wind.BEHIND_US: -speed}.get(wind or Wind.NONE, 0.0)


def is_drive(theirs: Depth | None) -> bool:
    """Whether they hit it from the back of the court."""
    return theirs is Depth.BOTH_BACK
