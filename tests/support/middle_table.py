"""Computes the table behind knowledge/tactics/middle_times.py; run as a script it writes it."""

from __future__ import annotations

from itertools import product
from pathlib import Path

import numpy as np

from knowledge.reach import (
    Mover,
    Placed,
    mean_chance,
    mover,
    reaction_s,
    slacks_s,
)
from knowledge.tactics.middle_balls import FLIGHTS, LANES_M, paths_of
from knowledge.tactics.middle_times import Build, InTime, Place, stand
from knowledge.vocabulary import BallKind, Side, Value

SPREADS = (1.0, 2 / 3, 3 / 2)
"""The spread of the time as usual, small and large: 60, 40 and 90 ms but for lobs."""

EVERY_OTHER = 0.5

TABLE = Path(__file__).parents[2] / "knowledge" / "tactics" / "middle_times.toml"
HEADER = """\
# Computed by tests/support/middle_table.py from knowledge/reach; do not edit by hand.
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


def computed_in_time(place: Place, build: Build) -> InTime:
    """A right player's, the ball coming from cross or from in front; the left one's is mirrored."""
    paths = paths_of(place.kind, Side.RIGHT if place.is_cross else Side.LEFT)
    player = Placed(mover=built(build, place.kind), at=stand(Side.RIGHT, is_wide=place.is_wide))
    stroke_s = FLIGHTS[place.kind].stroke_s
    slacks = slacks_s(player, paths.times_s, paths.points, stroke_s=stroke_s).max(axis=-1)
    usual, small, large = (
        mean_chance(slacks, spread_s=each * FLIGHTS[place.kind].spread_s) for each in SPREADS
    )
    middle = float(slacks[LANES_M.index(0.0)].mean())
    return InTime(chances=(usual, small, large), slack_ms=1000 * middle)


def computed_strip_m(kind: BallKind) -> float:
    """The furthest lane to the left that our right player still gets to every other time."""
    lanes_m = tuple(np.linspace(0.0, -1.2, 49))
    player = Placed(mover=built(Build.USUAL, kind), at=stand(Side.RIGHT))
    stroke_s = FLIGHTS[kind].stroke_s
    best = [
        slacks_s(player, paths.times_s, paths.points, stroke_s=stroke_s).max(axis=-1)
        for paths in (paths_of(kind, hitter, lanes_m) for hitter in Side)
    ]
    spread_s = FLIGHTS[kind].spread_s
    chances = [mean_chance(lane, spread_s=spread_s) for lane in np.concatenate(best, axis=1)]
    reached = [lane for lane, chance in zip(lanes_m, chances, strict=True) if chance >= EVERY_OTHER]
    return -min(reached, default=0.0)


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
