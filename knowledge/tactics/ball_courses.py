"""A ball's course past whoever must reach it: legs of flight, each known at any moment."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final, Protocol

import numpy as np

from knowledge.court import Point
from knowledge.dataclass import dataclass
from knowledge.flight.ball import GRAVITY_MPS2
from knowledge.flight.launch import Floats
from knowledge.reach import Placed, slacks_after

COARSE: Final = 37
FINE: Final = 13
ROUNDS: Final = 3
"""Moments looked at on a leg, then between the neighbours of the best, and again: a leg of half a
second comes down to a fraction of a millisecond; a spike between two of them hides up to 3 ms."""


class Leg(Protocol):
    """A stretch of flight without a bounce in it."""

    @property
    def start_s(self) -> float: ...

    @property
    def end_s(self) -> float: ...

    @property
    def bounces(self) -> int: ...

    def points(self, times_s: Floats) -> Floats:
        """x, y, z at these times; the last axis is the place."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Rebound:
    """From the first bounce to the second, without drag: the ball is slow and the way short."""

    start_s: float
    place: Point
    across_mps: float
    along_mps: float
    up_mps: float

    @property
    def bounces(self) -> int:
        return 1

    @property
    def end_s(self) -> float:
        return self.start_s + 2 * self.up_mps / GRAVITY_MPS2

    def points(self, times_s: Floats) -> Floats:
        since = times_s - self.start_s
        x_m = self.place.x_m + self.across_mps * since
        y_m = self.place.y_m + self.along_mps * since
        return np.stack((x_m, y_m, self.up_mps * since - GRAVITY_MPS2 * since**2 / 2), axis=-1)


def most_slack_s(legs: Sequence[Leg], player: Placed, *, out_of_play_m: float) -> float:
    """The most time to spare anywhere on the course; negative: too late.

    Reach looks from the side of whoever receives, so places are turned by half a circle: theirs
    come with y above 0. Nothing is reached further from the net than `out_of_play_m`.

    1. Even moments on each leg. 2. Round by round even ones between the neighbours of the best.
    """
    bounces = np.array([[leg.bounces] for leg in legs])
    lows = np.array([leg.start_s for leg in legs])
    highs = np.array([leg.end_s for leg in legs])
    best_s = -np.inf
    for count in (COARSE, *[FINE] * ROUNDS):
        times = np.linspace(lows, highs, count, axis=-1)
        points = np.stack([leg.points(each) for leg, each in zip(legs, times, strict=True)])
        turned = points * np.array((-1.0, -1.0, 1.0))
        slacks = slacks_after(player, times, turned, bounces=bounces)
        slacks = np.where(points[..., 1] <= out_of_play_m, slacks, -np.inf)
        best_s = max(best_s, float(slacks.max()))
        lows, highs = _beside(times, slacks.argmax(axis=-1))
    return best_s


def _beside(times_s: Floats, best: Floats) -> tuple[Floats, Floats]:
    """The moments before and after the best one of each leg."""
    last = times_s.shape[-1] - 1
    legs = np.arange(len(times_s))
    return times_s[legs, np.maximum(best - 1, 0)], times_s[legs, np.minimum(best + 1, last)]
