"""The time a return buys: until the third arrives, against our returner's run to the line.

Times in the air are those of the flight's tables; after the bounce they hit it at its top, which
is the soonest that is comfortable. We are set if we stand still at the line a reaction before the
third arrives; slack is what is left of the time until then when we have run in. No turn
integrates.
"""

from __future__ import annotations

import math
from enum import StrEnum
from functools import lru_cache
from typing import Final

import numpy as np

from knowledge.court import HALF_LENGTH_M, KITCHEN_DEPTH_M, METRES_PER_FOOT
from knowledge.dataclass import dataclass
from knowledge.effects import Points
from knowledge.evidence import Profile
from knowledge.flight import MPS_PER_MPH, FlatFire, Shot
from knowledge.flight.ball import GRAVITY_MPS2, OUTDOOR
from knowledge.normal import normal_cdf
from knowledge.planning.sizes import RECEIVING_CHANCE
from knowledge.reach import Feet, mover_of
from knowledge.reach.mover import CLUB_REACTION_S
from knowledge.sources import computed
from knowledge.tactics.return_sizes import AT_THE_LINE
from knowledge.tactics.shot_success import Ball, points_over

TIME: Final = computed("flight tables; run v = V (1 - exp(-t/T))")

FINISH_S: Final = 0.15
"""What the stroke still takes before the run starts. So a club player needs the 1.7 s that the
trade reckons with. Our guess."""

STAND_BEHIND_LINE_M: Final = 0.3
"""How far behind the kitchen line one stands. Common practice."""

THIRD_S: Final = 0.8
"""How long a third is on its way to our line: between a drive's 0.5 s and a drop's 1.1 s. Computed
with drag; which of them it is, and so the middle, our guess."""

SPREAD_S: Final = 0.30
"""How much the race varies: where it lands, how soon they take it, drive or drop. And who is a
little late has lost only a little ground. Our guess."""

DOUBT_S: Final = 0.12
"""Doubt of the slack itself: how they take the ball, and the runner. Our guess."""

SLICE_MPS: Final = 32 * MPS_PER_MPH
SLICE_INSIDE_FT: Final = 6.0
SLICE_TOP_M: Final = 0.35
"""A low slice: its pace along the ground, where it lands, and how high it gets up again: no table
has backspin. Common practice, no source."""


class Style(StrEnum):
    """How the return is hit."""

    HIGH = "high"
    HARD = "hard"
    SLICE = "slice"


@dataclass(frozen=True, slots=True, kw_only=True)
class Contact:
    """Where the return is hit, how far ahead in the run that leaves us, and the wind.

    The wind is along the court, positive from behind us.
    """

    height_m: float
    from_net_m: float
    head_start_s: float = 0.0
    wind_mps: float = 0.0

    def ball(self, style: Style) -> Ball:
        """As the tables know it: a high return, or a drive for a hard one."""
        return Ball(
            shot=Shot.DRIVE if style is Style.HARD else Shot.RETURN,
            height_m=self.height_m,
            from_net_m=self.from_net_m,
            wind_mps=self.wind_mps,
        )

    @property
    def way_m(self) -> float:
        """To the place at the line."""
        return max(0.0, self.from_net_m - KITCHEN_DEPTH_M - STAND_BEHIND_LINE_M)


@dataclass(frozen=True, slots=True, kw_only=True)
class Flown:
    """A return's time in the air, then up to the top of its bounce; and how often it is in play."""

    air_s: float
    rise_s: float
    in_play: float

    @property
    def to_third_s(self) -> float:
        return self.air_s + self.rise_s


def flown(style: Style, contact: Contact, *, factor: float, aim_ft: float | None = None) -> Flown:
    """One way to return; `aim_ft` is how far inside the baseline a high one lands."""
    return _flown(style, contact, round(factor, 2), aim_ft)


@lru_cache(maxsize=1024)
def _flown(style: Style, contact: Contact, factor: float, aim_ft: float | None) -> Flown:
    if style is Style.SLICE:
        return _sliced(contact, factor)
    aim = contact.ball(style).aimed(factor)
    shorter = 1.0 if aim_ft is None else _shorter(contact, aim_ft, aim.depth_m)
    return Flown(
        air_s=aim.landing_s * math.sqrt(shorter),
        rise_s=rise_s(aim.bounce_m * shorter),
        in_play=aim.legal,
    )


def _shorter(contact: Contact, aim_ft: float, depth_m: float) -> float:
    """The way to this aim against the way to the table's. Arcs of one angle are alike: heights go
    with the way, times with its root (without drag, which changes little over a few feet)."""
    way = contact.from_net_m + HALF_LENGTH_M - aim_ft * METRES_PER_FOOT
    return way / (contact.from_net_m + depth_m)


def _sliced(contact: Contact, factor: float) -> Flown:
    way = contact.from_net_m + HALF_LENGTH_M - SLICE_INSIDE_FT * METRES_PER_FOOT
    level = FlatFire(height_m=contact.height_m, speed_mps=SLICE_MPS, wind_mps=contact.wind_mps)
    return Flown(
        air_s=level.time_s(way),
        rise_s=rise_s(SLICE_TOP_M),
        in_play=contact.ball(Style.SLICE).aimed(factor).legal,
    )


def rise_s(top_m: float) -> float:
    """From the bounce to its top, without drag: the ball is slow there."""
    return math.sqrt(2 * max(0.0, top_m - OUTDOOR.radius_m) / GRAVITY_MPS2)


def feet_of(profile: Profile | None) -> Feet:
    """The returner's run, by the notes on foot and forward speed."""
    return Feet() if profile is None else mover_of(profile).feet


@lru_cache(maxsize=1024)
def run_s(way_m: float, feet: Feet) -> float:
    """Seconds to run so far from standing, by bisection of the run's own formula."""
    low, high = 0.0, 10.0
    for _ in range(40):
        middle = (low + high) / 2
        low, high = (middle, high) if _ahead_m(feet, middle) < way_m else (low, middle)
    return high


def _ahead_m(feet: Feet, time_s: float) -> float:
    return float(feet.ahead_m(np.array(time_s)))


def slack_s(ball: Flown, contact: Contact, feet: Feet) -> float:
    """Time to spare, still at the line, before the third asks for a move; negative: on the way."""
    start_s = FINISH_S - contact.head_start_s
    by_then_s = ball.to_third_s + THIRD_S - CLUB_REACTION_S
    return by_then_s - start_s - run_s(contact.way_m, feet)


def chance_set(slack: float) -> float:
    """The chance to be at the line and still by then."""
    return normal_cdf(slack / SPREAD_S)


def bought_points(slack: float, other: float) -> Points:
    """What time to spare is worth against another return's, in rally points.

    Row 2 is what being set is worth against not: x = late + Phi(slack / spread) (set - late), round
    the usual rally. The doubt is row 2's own and, by two more evaluations, that of the slack.
    """
    mean = _points(slack) - _points(other)
    more, less = (_points(slack + by) - _points(other + by) for by in (DOUBT_S, -DOUBT_S))
    return Points(
        mean=mean, sd=math.hypot((more - less) / 2, AT_THE_LINE.sd / AT_THE_LINE.mean * mean)
    )


def _points(slack: float) -> float:
    gained = (chance_set(slack) - 0.5) * AT_THE_LINE.mean / 100
    return points_over(RECEIVING_CHANCE + gained, RECEIVING_CHANCE)


def ground_ft(time_s: float, other_s: float, feet: Feet) -> float:
    """Feet of the run that lie between two times after our stroke."""
    more, less = (_ahead_m(feet, each - FINISH_S) for each in (time_s, other_s))
    return (more - less) / METRES_PER_FOOT
