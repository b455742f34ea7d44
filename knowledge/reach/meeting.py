"""Who gets to a ball: when, with how much time to spare, on which wing, how high."""

from __future__ import annotations

from functools import lru_cache
from typing import Final, Protocol

import numpy as np
from numpy.typing import NDArray

from knowledge.court import KITCHEN_DEPTH_M, Point
from knowledge.dataclass import dataclass
from knowledge.reach.body import BEHIND_M, Floats
from knowledge.reach.mover import Mover
from knowledge.reach.moving import Feet, arm_out_m
from knowledge.vocabulary import Wing

LOWEST_M: Final = 0.05
"""Below this a ball cannot be got under."""

LONGEST_S: Final = 4.0
SHORTEST_S: Final = 0.02
MOMENTS: Final = 64
"""Moves are looked at from SHORTEST_S to LONGEST_S, 9% apart, and straight in between."""

KEPT_FEET: Final = 256
"""Players whose steps are kept in memory, some 2 kB each."""

Bools = NDArray[np.bool_]

_MOMENTS_S = np.geomspace(SHORTEST_S, LONGEST_S, MOMENTS)

FINE_S: Final = 0.01
"""A path is looked at this often: a fast ball goes half a foot in it."""

LONGEST_RUN_M: Final = 100.0
"""Stands for no limit to a run forward."""

NEVER_S: Final = -LONGEST_S
"""The slack where a ball cannot be met at all."""


class Path(Protocol):
    """A ball's path after the opponent's contact (knowledge.court), as flight computes it."""

    @property
    def times_s(self) -> Floats: ...

    @property
    def points(self) -> Floats: ...


@dataclass(frozen=True, slots=True, kw_only=True)
class Placed:
    """A player and where they stand as the opponent hits."""

    mover: Mover
    at: Point


@dataclass(frozen=True, slots=True, kw_only=True)
class Meeting:
    """Where one player meets a ball best: time after contact, and time to spare there.

    `earliest_s` is when they can first have a paddle on it; None if they never can.
    """

    at_s: float
    slack_s: float
    wing: Wing | None
    height_m: float
    at: Point
    earliest_s: float | None

    @property
    def slack_ms(self) -> float:
        return 1000 * self.slack_s


def move_time_s(
    player: Placed, x_m: Floats, y_m: Floats, height_m: Floats, *, volleyed: Bools
) -> Floats:
    """Seconds from the first move to a paddle on a ball at these places; LONGEST_S for never.

    Arm and feet go at once: after t the paddle covers an ellipse whose half-axes are what arm and
    feet reach together, aside and along the court. Who volleys keeps their feet behind the kitchen
    line (2025 edition, 9.A).

    1. Both half-axes at each of the MOMENTS. 2. How far out the place lies in each ellipse: 1 on
    its edge, less inside. 3. The first moment at which it is inside, straight in between.
    """
    aside = x_m - player.at.x_m
    ahead = y_m - player.at.y_m
    share = player.mover.body.share_at(height_m)
    is_ahead = ahead >= 0
    side_reach = player.mover.side_reach_m(aside)
    long_reach = np.where(is_ahead, player.mover.body.arm_m, BEHIND_M)
    room = np.where(volleyed, max(0.0, -KITCHEN_DEPTH_M - player.at.y_m), LONGEST_RUN_M)
    out = arm_out_m(_MOMENTS_S)
    ahead_m, aside_m, back_m = _steps(player.mover.feet)
    forward = np.minimum(ahead_m, room[..., None])
    along = np.where(is_ahead[..., None], forward, back_m)
    left = share[..., None]
    across = left * np.minimum(out, side_reach[..., None]) + aside_m
    deep = left * np.minimum(out, long_reach[..., None]) + along
    how_far_out = np.square(aside[..., None] / across) + np.square(ahead[..., None] / deep)
    return np.where(share > 0, _first_inside_s(how_far_out), LONGEST_S)


@lru_cache(maxsize=KEPT_FEET)
def _steps(feet: Feet) -> tuple[Floats, Floats, Floats]:
    """How far these feet get ahead, aside and back at each of the MOMENTS."""
    return feet.ahead_m(_MOMENTS_S), feet.aside_m(_MOMENTS_S), feet.back_m(_MOMENTS_S)


def _first_inside_s(how_far_out: Floats) -> Floats:
    """When 1 is first undercut along the last axis; LONGEST_S for never."""
    inside = how_far_out <= 1.0
    first = inside.argmax(axis=-1)
    after = np.take_along_axis(how_far_out, first[..., None], axis=-1)[..., 0]
    previous = np.maximum(first - 1, 0)
    before = np.take_along_axis(how_far_out, previous[..., None], axis=-1)[..., 0]
    gap = np.where(first > 0, before - after, 1.0)
    share = np.where(first > 0, (before - 1.0) / np.where(gap > 0, gap, 1.0), 0.0)
    start, end = _MOMENTS_S[previous], _MOMENTS_S[first]
    return np.where(inside.any(axis=-1), start + share * (end - start), LONGEST_S)


def spare_s(player: Placed, times_s: Floats, move_s: Floats, *, stroke_s: float) -> Floats:
    """Time to spare by then for a move that takes so long; NEVER_S if it never gets there.

    `stroke_s` is what must be left on arrival to play the ball in balance.
    """
    spare = times_s - player.mover.reaction_s - move_s - stroke_s
    return np.where(move_s < LONGEST_S, spare, NEVER_S)


def slacks_s(player: Placed, times_s: Floats, points: Floats, *, stroke_s: float = 0.0) -> Floats:
    """Time to spare at each sample of one path or many; NEVER_S where the ball can't be met.

    Who stands in the kitchen meets no volley: stepping out first is not looked at. Shapes (..., n)
    and (..., n, 3), the samples last. `stroke_s` as in `spare_s`.
    """
    return slacks_after(
        player, times_s, points, bounces=_bounces(points[..., 2]), stroke_s=stroke_s
    )


def slacks_after(
    player: Placed, times_s: Floats, points: Floats, *, bounces: Floats, stroke_s: float = 0.0
) -> Floats:
    """The same where it is known how often the ball has bounced by each sample."""
    x_m, y_m, height_m = points[..., 0], points[..., 1], points[..., 2]
    move_s = move_time_s(player, x_m, y_m, height_m, volleyed=np.equal(bounces, 0))
    spare = spare_s(player, times_s, move_s, stroke_s=stroke_s)
    may_volley = player.at.y_m <= -KITCHEN_DEPTH_M
    in_play = (y_m < 0) & (height_m >= LOWEST_M) & (bounces < 2) & ((bounces > 0) | may_volley)
    return np.where(in_play, spare, NEVER_S)


def slack_s(path: Path, player: Placed, *, stroke_s: float = 0.0) -> float:
    """The most time to spare anywhere on the path."""
    return float(slacks_s(player, *_finely(path), stroke_s=stroke_s).max())


def _finely(path: Path) -> tuple[Floats, Floats]:
    """Times and points at most FINE_S apart, straight between the path's own."""
    start, end = float(path.times_s[0]), float(path.times_s[-1])
    even = np.linspace(start, end, int((end - start) / FINE_S) + 2)
    times = np.union1d(even, path.times_s)
    points = [np.interp(times, path.times_s, axis) for axis in path.points.T]
    return times, np.stack(points, axis=-1)


def meeting(path: Path, player: Placed, *, stroke_s: float = 0.0) -> Meeting:
    """Where this player meets the ball with the most time to spare."""
    times, points = _finely(path)
    slacks = slacks_s(player, times, points, stroke_s=stroke_s)
    best = int(slacks.argmax())
    x_m, y_m, height_m = (float(each) for each in points[best])
    in_time = np.flatnonzero(slacks >= 0)
    return Meeting(
        at_s=float(times[best]),
        slack_s=float(slacks[best]),
        wing=player.mover.wing_to(x_m - player.at.x_m),
        height_m=height_m,
        at=Point(x_m=x_m, y_m=y_m),
        earliest_s=float(times[in_time[0]]) if in_time.size else None,
    )


def _bounces(height_m: Floats) -> Floats:
    """How often the ball has bounced by each sample. In flight its height has no low point."""
    found = np.zeros_like(height_m)
    inner = height_m[..., 1:-1]
    found[..., 1:-1] = (inner <= height_m[..., :-2]) & (inner < height_m[..., 2:])
    return np.cumsum(found, axis=-1)
