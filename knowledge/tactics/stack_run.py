"""What crossing costs in time: the returner's longer run to the line, and the server's way over.

Runs and shuffles from knowledge.reach, the ball over the ground from knowledge.flight.
"""

from __future__ import annotations

from functools import cache
from typing import Final

import numpy as np

from knowledge.court import METRES_PER_FOOT, at_baseline, at_kitchen_line
from knowledge.dataclass import dataclass
from knowledge.reach import Feet, chance_in_time, mover_of
from knowledge.situation import OnCourt
from knowledge.sources import computed
from knowledge.tactics import stack_sizes as sizes
from knowledge.tactics.return_time import run_s
from knowledge.tactics.transition_time import FOLLOW_THROUGH_S, over_ground_s
from knowledge.vocabulary import Side
from knowledge.wind import TYPICAL, Stroke

RUN = computed("run to the line against the ball's time of flight")

_FROM = at_baseline(Side.RIGHT, ours=True)
_STRAIGHT = at_kitchen_line(Side.RIGHT, ours=True)
_ACROSS = at_kitchen_line(Side.LEFT, ours=True)

STRAIGHT_M: Final = _FROM.distance_m(_STRAIGHT)
ACROSS_M: Final = _FROM.distance_m(_ACROSS)
"""The returner's way from the middle of a court's baseline to the line, and to the other court's.
By the court's symmetry the same from both."""

OVER_M: Final = abs(_STRAIGHT.x_m - _ACROSS.x_m)
"""The server's way from the middle of one court to the middle of the other."""

EXTRA_FT: Final = (ACROSS_M - STRAIGHT_M) / METRES_PER_FOOT

_BALL_WAY_M: Final = 2 * TYPICAL[Stroke.RETURN].from_net_m
_TIMES_S: Final = np.linspace(0.0, 6.0, 3001)


@dataclass(frozen=True, slots=True, kw_only=True)
class Crossing:
    """What crossing costs one of us; points in the rallies in which they return and cross."""

    points: float
    behind_high_points: float
    extra_s: float


def crossing_of(one: OnCourt) -> Crossing:
    """The returner's: fewer times at the line before the third gets there.

    1. Time: flight of return and third, less the follow-through, for a hard and a high return and
    a driven and a dropped third. 2. In time with a chance each, by the spread of a run. 3. What is
    lost of that by the longer way, times what being there is worth.
    """
    return _crossing_on(mover_of(one.profile).feet)


@cache
def _crossing_on(feet: Feet) -> Crossing:
    need_s = run_s(STRAIGHT_M, feet), run_s(ACROSS_M, feet)
    hard, high = _lost(Stroke.RETURN, need_s), _lost(Stroke.HIGH_RETURN, need_s)
    return Crossing(
        points=-sizes.AT_THE_LINE * (hard + high) / 2,
        behind_high_points=-sizes.AT_THE_LINE * high,
        extra_s=need_s[1] - need_s[0],
    )


def _lost(ball: Stroke, need_s: tuple[float, float]) -> float:
    """Chance to be there that the longer way loses, over driven and dropped thirds."""
    straight, across = (
        sum(
            chance_in_time(there_s(ball, third) - need, spread_s=sizes.RUN_SPREAD_S)
            for third in (Stroke.DRIVE, Stroke.DROP)
        )
        / 2
        for need in need_s
    )
    return straight - across


def there_s(ball: Stroke, third: Stroke) -> float:
    """From the returner's first step until the third reaches our line."""
    to_line_m = TYPICAL[third].from_net_m + abs(_STRAIGHT.y_m)
    return over_ground_s(ball, _BALL_WAY_M) + over_ground_s(third, to_line_m) - FOLLOW_THROUGH_S


def server_spare_s(one: OnCourt) -> float:
    """What a server who crosses has left when a hard return reaches the baseline."""
    feet = mover_of(one.profile).feet
    ball_s = over_ground_s(Stroke.SERVE, _BALL_WAY_M) + over_ground_s(Stroke.RETURN, _BALL_WAY_M)
    return ball_s - FOLLOW_THROUGH_S - aside_s(feet, OVER_M)


def aside_s(feet: Feet, way_m: float) -> float:
    """Time of a way sideways, the inverse of reach's metres in a time."""
    return float(np.interp(way_m, feet.aside_m(_TIMES_S), _TIMES_S))
