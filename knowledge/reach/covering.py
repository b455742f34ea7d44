"""Which places each of two partners covers, and the seam between them."""

from __future__ import annotations

from functools import lru_cache
from typing import Final

import numpy as np
from numpy.typing import NDArray

from knowledge.court import HALF_LENGTH_M, HALF_WIDTH_M, METRES_PER_FOOT, Point
from knowledge.dataclass import dataclass
from knowledge.flight import level_time_s
from knowledge.reach.body import Body, Floats
from knowledge.reach.meeting import Placed, move_time_s, spare_s
from knowledge.reach.mover import Mover
from knowledge.reach.moving import Feet
from knowledge.vocabulary import Side

GRID_M: Final = 0.25
KEPT_SEAMS: Final = 512
"""Seams kept in memory, some 300 bytes each."""

PLACE_STEP_M: Final = 0.1
SPEED_STEP_MPS: Final = 0.1
TIME_STEP_S: Final = 0.01
LENGTH_STEP_M: Final = 0.02
"""What a kept seam's inputs are rounded to: less than anyone knows them to."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Shot:
    """A ball as our half sees it: from where, how fast along the ground, how high it is met.

    `stroke_s` is what must be left on arrival to play it in balance.
    """

    start: Point
    speed_mps: float
    height_m: float
    volleyed: bool = True
    stroke_s: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Cover:
    """Time to spare of the left and the right partner at each place: slack_s[who, y, x]."""

    x_m: Floats
    y_m: Floats
    slack_s: Floats

    def in_time(self, side: Side) -> NDArray[np.bool_]:
        """The places that the partner on this side gets to in time."""
        slack_s: Floats = self.slack_s[0 if side is Side.LEFT else 1]
        return np.asarray(slack_s >= 0, dtype=np.bool_)

    @property
    def share_covered(self) -> float:
        """Share of the places that at least one of them gets to in time."""
        return float((self.slack_s.max(axis=0) >= 0).mean())


@dataclass(frozen=True, slots=True, kw_only=True)
class Seam:
    """Where both partners are equally early, from the net back: x at each depth.

    It lies between them: where one is first as far as the other's own place, there.
    """

    y_m: tuple[float, ...]
    x_m: tuple[float, ...]

    def x_at_m(self, y_m: float) -> float:
        """x at a depth, straight between the depths looked at, level beyond them."""
        return float(np.interp(-y_m, np.negative(self.y_m), self.x_m))

    @property
    def mean_x_m(self) -> float:
        return sum(self.x_m) / len(self.x_m)

    def moved_ft(self, other: Seam) -> float:
        """How far to the right of another seam this one lies on average, in feet."""
        return (self.mean_x_m - other.mean_x_m) / METRES_PER_FOOT


def cover(
    left: Placed, right: Placed, shot: Shot, *, x_m: Floats | None = None, y_m: Floats | None = None
) -> Cover:
    """The time to spare of both over a grid on our half."""
    if x_m is None:
        x_m = np.linspace(-HALF_WIDTH_M, HALF_WIDTH_M, round(2 * HALF_WIDTH_M / GRID_M) + 1)
    if y_m is None:
        y_m = np.linspace(-HALF_LENGTH_M, -GRID_M, round(HALF_LENGTH_M / GRID_M))
    across, along = np.meshgrid(x_m, y_m)
    there = level_time_s(np.hypot(across - shot.start.x_m, along - shot.start.y_m), shot.speed_mps)
    slacks = np.stack([_slack(each, shot, across, along, there) for each in (left, right)])
    return Cover(x_m=x_m, y_m=y_m, slack_s=slacks)


def _slack(player: Placed, shot: Shot, across: Floats, along: Floats, there: Floats) -> Floats:
    move_s = move_time_s(
        player,
        across,
        along,
        np.asarray(shot.height_m),
        volleyed=np.asarray(shot.volleyed),
    )
    return spare_s(player, there, move_s, stroke_s=shot.stroke_s)


SEAM_DEPTHS_M: Final = (-1.6, -2.4, -3.2, -4.0, -4.8, -5.6, -6.4)
SEAM_STEPS: Final = 17


def seam(left: Placed, right: Placed, shot: Shot) -> Seam:
    """The seam for this ball; inputs are rounded, and what was computed is kept."""
    return _kept_seam(rounded(left), rounded(right), _rounded_shot(shot))


@lru_cache(maxsize=KEPT_SEAMS)
def _kept_seam(left: Placed, right: Placed, shot: Shot) -> Seam:
    x_m = np.linspace(left.at.x_m, right.at.x_m, SEAM_STEPS)
    found = cover(left, right, shot, x_m=x_m, y_m=np.asarray(SEAM_DEPTHS_M))
    ahead = found.slack_s[0] - found.slack_s[1]
    return Seam(y_m=SEAM_DEPTHS_M, x_m=tuple(_crossing(x_m, row) for row in ahead))


def _crossing(x_m: Floats, left_ahead_s: Floats) -> float:
    """Where the left partner's lead runs out, going right; the middle one of several places."""
    turns = np.flatnonzero((left_ahead_s[:-1] > 0) & (left_ahead_s[1:] <= 0))
    if turns.size == 0:
        return float(x_m[-1] if left_ahead_s.mean() > 0 else x_m[0])
    place = int(turns[turns.size // 2])
    before, after = left_ahead_s[place], left_ahead_s[place + 1]
    share = before / (before - after)
    return float(x_m[place] + share * (x_m[place + 1] - x_m[place]))


def _to(value: float, step: float) -> float:
    return round(round(value / step) * step, 6)


def rounded(player: Placed) -> Placed:
    """The player with every figure rounded, so that near enough players share what is kept."""
    one = player.mover
    return Placed(
        mover=Mover(
            body=Body(
                stature_m=_to(one.body.stature_m, LENGTH_STEP_M),
                longer_m=_to(one.body.longer_m, LENGTH_STEP_M),
            ),
            feet=Feet(
                forward_mps=_to(one.feet.forward_mps, SPEED_STEP_MPS),
                run_mps=_to(one.feet.run_mps, SPEED_STEP_MPS),
                shuffle_mps=_to(one.feet.shuffle_mps, SPEED_STEP_MPS),
                rise_s=_to(one.feet.rise_s, TIME_STEP_S),
            ),
            hand=one.hand,
            two_handed=one.two_handed,
            reaction_s=_to(one.reaction_s, TIME_STEP_S),
        ),
        at=_rounded_place(player.at),
    )


def _rounded_place(place: Point) -> Point:
    return Point(x_m=_to(place.x_m, PLACE_STEP_M), y_m=_to(place.y_m, PLACE_STEP_M))


def _rounded_shot(shot: Shot) -> Shot:
    return Shot(
        start=_rounded_place(shot.start),
        speed_mps=_to(shot.speed_mps, SPEED_STEP_MPS),
        height_m=_to(shot.height_m, LENGTH_STEP_M),
        volleyed=shot.volleyed,
        stroke_s=_to(shot.stroke_s, TIME_STEP_S),
    )
