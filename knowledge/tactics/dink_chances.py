"""How often a dink comes off by each lane, and what a lane gains over down the line.

Read from the flight's tables: nothing is integrated in a turn. A dink in play that lands short
leaves an even rally, one that carries past the kitchen line sits up (`LEAVES`).

Where the model is wrong: its aim is the one that most often lands short, so it floats the ball well
over the net; that a lower one is harder to attack does not count. The air of a `LaneChance` is that
of this safest arc. Its line is some 3.5 ft inside the sideline, ours 2 ft, which costs another half
a ball in 100. Physics and the trade disagree on the wide dink: the trade has it 2 points safer than
the line (row 12), here a neutral one is half a point worse, since what it gains in length it loses
beyond the far sideline. The trade's call stands: the rest of row 12 is the corner and the short way
back (`dink_sizes.LINE_IS_JUMPED`).
"""

from __future__ import annotations

import math
from dataclasses import replace
from functools import lru_cache
from types import MappingProxyType
from typing import Final

from knowledge import court
from knowledge.dataclass import dataclass
from knowledge.effects import Points
from knowledge.flight import usual_aim
from knowledge.situation import OnCourt
from knowledge.sources import computed
from knowledge.tactics.dink_ball import DinkBall
from knowledge.tactics.dink_lanes import Lane, lane_across_m
from knowledge.tactics.shot_success import Leaves, OurScatter, our_scatter, points_over
from knowledge.vocabulary import Level, Trait

LANE_SOURCE = computed("flight by lane: net, room, scatter")

LEAVES: Final = Leaves(meant=0.5, loose=0.3)
"""Our chance after a dink that stays short, and after one past the kitchen line: it sits up and
costs 20 of 100. Common practice, no source."""

MIDDLE_GOES_ACROSS_M: Final = court.LANE_FROM_CENTRE_M
"""How far across the tables' middle lane goes; the inside foot is that share of the way to it."""

NEVER: Final = 0.02
"""No rally is taken to be worth less, since log-odds have no end."""

AT_MOST: Final = 15.0
"""No lane gains more. The tables' steepest dink goes up at 48 degrees, so that a ball at the feet
close to the net seems not to be playable down the line at all."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LaneChance:
    """How often a dink by a lane is in play and lands short, and the air of its safest arc."""

    in_play: float
    short: float
    clearance_m: float
    window: float

    @property
    def worth(self) -> float:
        """Our chance to win the rally with it: w + (1 - w - e) v with two kinds of rally left."""
        loose = self.in_play - self.short
        return max(NEVER, self.short * LEAVES.meant + loose * LEAVES.loose)

    def plus(self, one: LaneChance, other: LaneChance, part: float) -> LaneChance:
        """Part of the way from the other to the one, from here; chances stay chances."""
        moved = {
            name: getattr(self, name) + part * (getattr(one, name) - getattr(other, name))
            for name in self.__slots__
        }
        in_play = min(1.0, max(0.0, moved["in_play"]))
        short = min(in_play, max(0.0, moved["short"]))
        return LaneChance(**moved | {"in_play": in_play, "short": short})


def our_dinks(striker: OnCourt | None, level: Level | None) -> OurScatter:
    """How far our dinks scatter: both wings alike, since a lane does not say which one plays."""
    forehand, backhand = (
        our_scatter(striker, trait, level) for trait in (Trait.FOREHAND_DINK, Trait.BACKHAND_DINK)
    )
    return OurScatter(
        factor=math.sqrt(forehand.factor * backhand.factor),
        log_sd=(forehand.log_sd + backhand.log_sd) / 2,
    )


@lru_cache(maxsize=4096)
def lane_chance(lane: Lane, ball: DinkBall, factor: float = 1.0) -> LaneChance:
    """How a dink by this lane goes, for so many times the usual scatter.

    The inside foot lies between line and middle. The tables aim in one direction whatever the wind;
    who dinks wide in a wind turns in for it, so that it does there what it does to the middle.
    """
    if lane is Lane.STRAIGHT:
        line, middle = (lane_chance(one, ball, factor) for one in (Lane.LINE, Lane.CENTRE))
        return line.plus(middle, line, lane_across_m(lane) / MIDDLE_GOES_ACROSS_M)
    if lane is Lane.WIDE and ball.wind_mps:
        still = replace(ball, wind_mps=0.0)
        blown, calm = (lane_chance(Lane.CENTRE, one, factor) for one in (ball, still))
        return lane_chance(lane, still, factor).plus(blown, calm, 1.0)
    aim = usual_aim(
        ball.shot,
        height_m=ball.height_m,
        from_net_m=ball.from_net_m,
        lane=_TABLES_LANE[lane],
        wind_mps=ball.wind_mps,
        factor=factor,
    )
    return LaneChance(
        in_play=aim.legal,
        short=min(aim.meant, aim.legal),
        clearance_m=aim.clearance_m,
        window=aim.window_size,
    )


_TABLES_LANE: Final = MappingProxyType(
    {
        Lane.LINE: court.Lane.LINE,
        Lane.CENTRE: court.Lane.MIDDLE,
        Lane.WIDE: court.Lane.CROSS,
    }
)


def gain_over_line(lane: Lane, ball: DinkBall, scatter: OurScatter) -> Points:
    """What a lane gains by coming off more often than down the line.

    The doubt is half of what one standard deviation of scatter to either side moves it.
    """
    size, tight, wild = (
        points_over(
            lane_chance(lane, ball, factor * ball.scatters).worth,
            lane_chance(Lane.LINE, ball, factor * ball.scatters).worth,
        )
        for factor in (scatter.factor, *scatter.ends)
    )
    return Points(mean=max(-AT_MOST, min(AT_MOST, size)), sd=min(AT_MOST, abs(wild - tight) / 2))
