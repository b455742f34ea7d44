"""Who gets to a ball that is hit down or dropped: the time to spare of `knowledge.reach`.

Beside it the straight run that a lob's race takes.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import Final

from knowledge.court import Point
from knowledge.reach import Placed, mover
from knowledge.reach.mover import FASTER
from knowledge.reach.moving import FORWARD_MPS, RISE_S, TURN_BACK_S
from knowledge.tactics.ball_courses import Leg, most_slack_s

REACTION_S: Final = 0.18
"""Who waits for the ball, split-stepping, moves 0.177 s after it is struck (Aviles et al. 2021:
expert returners); without that wait a simple reaction alone takes 0.231 s (Woods et al. 2015)."""

ARM_M: Final = 1.1
"""Sideways with a paddle, feet still: 1.1 to 1.2 m (computed from body fractions)."""

READ_S: Final = 0.055
"""Who awaits an overhead or an open face starts as it is struck, on the shoulder's word. Our guess,
with which rows 21 and 22 of the trade's table come out."""

OUT_OF_PLAY_M: Final = 10.0
"""No further from the net: a fence stands there. Common practice, no source."""

TURN_S: Final = TURN_BACK_S

SPREAD_S: Final = 0.15
"""How far the start of a run varies: read early, or leaning the wrong way. Common practice."""


def distance_run_m(time_s: float, *, level: float = 0.0) -> float:
    """How far a player is after so long: `knowledge.reach`'s run, for one time."""
    top = FORWARD_MPS * (1 + FASTER * level)
    return top * (time_s + RISE_S * math.expm1(-time_s / RISE_S))


def run_s(distance_m: float, *, level: float = 0.0) -> float:
    """How long a run takes, by bisection; 0 for a ball within reach already."""
    if distance_m <= 0:
        return 0.0
    low, high = 0.0, 10.0
    for _ in range(40):
        middle = (low + high) / 2
        if distance_run_m(middle, level=level) < distance_m:
            low = middle
        else:
            high = middle
    return high


def slack_s(
    legs: Sequence[Leg], player: Point, *, level: float = 0.0, delay_s: float = 0.0
) -> float:
    """The most time to spare on the way of a ball, by `knowledge.reach`; negative: too late.

    `level` is how quick forward the player is; `delay_s` is lost before the run, as by a turn.
    """
    runner = Placed(
        mover=mover(forward_speed=level, reaction=READ_S + delay_s),
        at=Point(x_m=-player.x_m, y_m=-player.y_m),
    )
    return most_slack_s(legs, runner, out_of_play_m=OUT_OF_PLAY_M)
