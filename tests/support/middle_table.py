"""Computes the table behind knowledge/tactics/middle_times.py; run as a script it writes it."""

from __future__ import annotations

from functools import cache
from itertools import product
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from knowledge.court import Point
from knowledge.flight import BallPath, Launch, at_distance, azimuth_deg, fly, moving, path
from knowledge.reach import (
    Mover,
    Placed,
    mean_chance,
    mover,
    reaction_s,
    slack_s,
)
from knowledge.tactics.middle_balls import FLIGHTS, LANES_M, start_of
from knowledge.tactics.middle_times import Build, InTime, Place, stand
from knowledge.vocabulary import BallKind, Side, Value

SPREADS = (1.0, 2 / 3, 3 / 2)
"""The spread of the time as usual, small and large: 60, 40 and 90 ms but for lobs."""

EVERY_OTHER = 0.5

STRIP_LANES_M = tuple(round(-0.1 * step, 1) for step in range(13))
"""Lanes from the centre line to four feet left of it."""

ELEVATIONS_DEG = (-15.0, 65.0)
HALVINGS = 11

Floats = NDArray[np.float64]

TABLE = Path(__file__).parents[2] / "knowledge" / "tactics" / "middle_times.toml"
HEADER = """\
# Computed by tests/support/middle_table.py from knowledge/flight and knowledge/reach; do not
# edit by hand.
# time: per ball and place the chance to be there in time, at a spread of the time as usual, small
# and large, and milliseconds to spare down the centre line. strip: metres past the middle that a
# partner still gets to in time every other ball.
"""


def built(build: Build, kind: BallKind) -> Mover:
    """A player of that build, either hand alike: what a wing is worth is a rule of its own."""
    reaction = reaction_s(anticipation=FLIGHTS[kind].anticipation)
    foot = {Build.QUICK: 1.0, Build.SLOW: -1.0}.get(build, 0.0)
    reach = {Build.LONG: 1.0, Build.SHORT_REACH: -1.0}.get(build, 0.0)
    height = {Build.TALL: Value.TALL, Build.SHORT: Value.SHORT}.get(build)
    return mover(foot_speed=foot, reach=reach, height=height, reaction=reaction)


@cache
def paths_of(
    kind: BallKind, hitter: Side, lanes_m: tuple[float, ...] = LANES_M
) -> tuple[tuple[BallPath, ...], ...]:
    """For each lane a ball of this kind over each of its depths, by knowledge.flight."""
    by_depth = [_over(kind, hitter, lanes_m, y_m) for y_m in FLIGHTS[kind].over_m]
    return tuple(zip(*by_depth, strict=True))


def _over(kind: BallKind, hitter: Side, lanes_m: tuple[float, ...], y_m: float) -> list[BallPath]:
    """Balls that pass this depth at the kind's height, one in each lane; elevations by halving."""
    flight, start = FLIGHTS[kind], start_of(kind, hitter)
    aside = np.asarray([azimuth_deg(start, Point(x_m=x_m, y_m=y_m)) for x_m in lanes_m])
    low, high = (np.full_like(aside, limit) for limit in ELEVATIONS_DEG)

    def speeds_mps(elevation_deg: Floats) -> Floats:
        level: Floats = flight.speed_mps / np.cos(np.radians(elevation_deg))
        return level

    for _ in range(HALVINGS):
        middle = (low + high) / 2
        launched = moving(
            x_m=start.x_m,
            y_m=start.y_m,
            z_m=flight.contact_m,
            speed_mps=speeds_mps(middle),
            elevation_deg=middle,
            azimuth_deg=aside,
        )
        over = at_distance(fly(launched), y_m).places[2] > flight.height_m
        low, high = np.where(over, low, middle), np.where(over, middle, high)
    return [
        path(
            Launch(
                x_m=start.x_m,
                y_m=start.y_m,
                z_m=flight.contact_m,
                speed_mps=float(speed),
                elevation_deg=float(elevation),
                azimuth_deg=float(each),
            )
        )
        for speed, elevation, each in zip(speeds_mps(low), low, aside, strict=True)
    ]


def _slacks_s(player: Placed, kind: BallKind, balls: tuple[BallPath, ...]) -> list[float]:
    return [slack_s(ball, player, stroke_s=FLIGHTS[kind].stroke_s) for ball in balls]


def computed_in_time(place: Place, build: Build) -> InTime:
    """A right player's, the ball coming from cross or from in front; the left one's is mirrored."""
    player = Placed(mover=built(build, place.kind), at=stand(Side.RIGHT, is_wide=place.is_wide))
    lanes = [
        _slacks_s(player, place.kind, balls)
        for balls in paths_of(place.kind, Side.RIGHT if place.is_cross else Side.LEFT)
    ]
    spread_s = FLIGHTS[place.kind].spread_s
    usual, small, large = (
        mean_chance(np.asarray(lanes), spread_s=each * spread_s) for each in SPREADS
    )
    middle = lanes[LANES_M.index(0.0)]
    return InTime(chances=(usual, small, large), slack_ms=1000 * sum(middle) / len(middle))


def computed_strip_m(kind: BallKind) -> float:
    """The furthest lane to the left that our right player still gets to every other time."""
    player = Placed(mover=built(Build.USUAL, kind), at=stand(Side.RIGHT))
    balls = [paths_of(kind, hitter, STRIP_LANES_M) for hitter in Side]
    reached = [0.0]
    for lane, both in zip(STRIP_LANES_M, zip(*balls, strict=True), strict=True):
        slacks = np.asarray([_slacks_s(player, kind, each) for each in both])
        if mean_chance(slacks, spread_s=FLIGHTS[kind].spread_s) >= EVERY_OTHER:
            reached.append(-lane)
    return max(reached)


def places() -> list[Place]:
    return [
        Place(kind=kind, is_cross=cross, is_wide=wide)
        for kind, cross, wide in product(BallKind, (True, False), (False, True))
    ]


def table() -> str:
    """The whole file."""
    lines = [HEADER, "[strip]"]
    lines += [f"{kind} = {computed_strip_m(kind):.3f}" for kind in BallKind]
    for place in places():
        lines += ["", f'[time."{place.key}"]']
        for build in Build:
            one = computed_in_time(place, build)
            chances = ", ".join(f"{each:.4f}" for each in one.chances)
            lines.append(f"{build} = [{chances}, {one.slack_ms:.0f}.0]")
    return "\n".join(lines) + "\n"


if __name__ == "__main__":
    TABLE.write_text(table(), encoding="utf-8")
