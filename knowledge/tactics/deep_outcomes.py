"""What a ball against a deep pair is worth, computed: deep at the feet, dropped, or put away.

A shot that wins w, errs e and otherwise leaves a rally worth v is worth w + (1 - w - e) v. The
drop is a race: their run to the ball against its second bounce. All sizes here are common
practice, no source, unless said.
"""

from __future__ import annotations

import math
from functools import cache, lru_cache
from typing import Final

from knowledge.court import METRES_PER_FOOT, NET_HEIGHT_CENTRE_M, Point
from knowledge.dataclass import dataclass
from knowledge.flight.ball import GRAVITY_MPS2
from knowledge.reach import chance_in_time
from knowledge.tactics.ball_courses import Rebound
from knowledge.tactics.overhead_flight import Scatter, Shot, misses
from knowledge.tactics.overhead_outcomes import Outcome, unreached
from knowledge.tactics.overhead_reach import SPREAD_S, slack_s

BASELINE_M: Final = 21 * METRES_PER_FOOT
FENCE_M: Final = 25 * METRES_PER_FOOT
BACKING_M: Final = 18 * METRES_PER_FOOT
MIDCOURT_M: Final = 14 * METRES_PER_FOOT
"""Where a pair that is "back" stands, from the net; backing: still on their way."""

DEEP_ENOUGH_M: Final = 18 * METRES_PER_FOOT
"""Row 22: nearer than this a drop is a gift."""

DROP_LANDS_M: Final = 1.2
OVER_THE_NET_M: Final = 0.20
DROP_RESTITUTION: Final = 0.64
"""Upwards, from the drop test: 30 to 34 in from 78 in."""

DROP_KEEPS: Final = 0.45
"""Forwards: an open face takes some off; a thin shell without spin would keep 0.60."""

DROP_MISSES: Final = 0.14
"""In the net, or sitting up in balance: touch is the hard part."""

READ_EARLY_S: Final = 0.20
"""An open face is read before the ball leaves it. So the race comes out as row 22 has it."""

WRONG_FOOTED_S: Final = 0.30
MOVING_BACK_S: Final = 0.25
COMING_IN_S: Final = -0.25
"""What a run forward loses, or has already done, when they move that way."""

TIME_TO_PLAY_S: Final = 0.25
"""Beyond just touching it: so much more and they do something with it."""

SCRAMBLED: Final = 0.66
SETTLED: Final = 0.46
"""The rally after a drop that comes back: hit up from the shoelaces; or both in, on their terms."""

DEEP_WINS: Final = 0.13
DEEP_MISSES: Final = 0.05
PINNED: Final = 0.60
"""Deep at the feet: few winners, few misses, and they stay where they are."""

PUT_AWAY_MPS: Final = 16.0
PUT_AWAY_SCATTER: Final = Scatter(up_deg=2.5, across_deg=2.5)
PUT_AWAY_BACK: Final = 0.60
"""How often a put-away that they get to comes back."""

AFTER_PUT_AWAY: Final = 0.58

OUR_X_M: Final = 1.0
THEIR_X_M: Final = 1.2


@dataclass(frozen=True, slots=True, kw_only=True)
class Runner:
    """Where one of them stands, how quick forward (-1 to 1), and what delays the run."""

    from_net_m: float
    level: float = 0.0
    delay_s: float = 0.0


def dead_drop(height_m: float, from_net_m: float) -> Rebound:
    """A drop volley from its first bounce to its second; before that nobody deep gets to it.

    It peaks OVER_THE_NET_M over the net, or where we meet it if that is higher; without drag: slow
    and short.
    """
    top = max(height_m, NET_HEIGHT_CENTRE_M + OVER_THE_NET_M)
    up_s = math.sqrt(2 * (top - height_m) / GRAVITY_MPS2)
    bounce_s = up_s + math.sqrt(2 * top / GRAVITY_MPS2)
    return Rebound(
        start_s=bounce_s,
        place=Point(x_m=THEIR_X_M, y_m=DROP_LANDS_M),
        across_mps=0.0,
        along_mps=DROP_KEEPS * (from_net_m + DROP_LANDS_M) / bounce_s,
        up_mps=DROP_RESTITUTION * math.sqrt(2 * GRAVITY_MPS2 * top),
    )


def drop_slack_s(runner: Runner, height_m: float, from_net_m: float) -> float:
    """Seconds that a runner has to spare before the second bounce; negative: too late."""
    return _drop_slack_s(runner, round(height_m, 2), round(from_net_m, 2))


@lru_cache(maxsize=4096)
def _drop_slack_s(runner: Runner, height_m: float, from_net_m: float) -> float:
    return slack_s(
        (dead_drop(height_m, from_net_m),),
        Point(x_m=THEIR_X_M, y_m=runner.from_net_m),
        level=runner.level,
        delay_s=runner.delay_s - READ_EARLY_S,
    )


def drop(runner: Runner, height_m: float, from_net_m: float, *, touch: float = 1.0) -> Outcome:
    """A drop in front of this one; `touch` multiplies our misses."""
    slack = drop_slack_s(runner, height_m, from_net_m)
    errs = min(1.0, DROP_MISSES * touch)
    settled = chance_in_time(slack - TIME_TO_PLAY_S, spread_s=SPREAD_S)
    return Outcome(
        wins=(1 - errs) * (1 - chance_in_time(slack, spread_s=SPREAD_S)),
        errs=errs,
        goes_on=SCRAMBLED + settled * (SETTLED - SCRAMBLED),
    )


def deep() -> Outcome:
    """Deep at the feet."""
    return Outcome(wins=DEEP_WINS, errs=DEEP_MISSES, goes_on=PINNED)


def put_away(height_m: float, from_net_m: float, their_depth_m: float) -> Outcome:
    """A hard short angle; below the net it is hit up, so it misses. Rounded and kept."""
    return _put_away(round(height_m, 1), round(from_net_m, 1), round(their_depth_m, 1))


@cache
def _put_away(height_m: float, from_net_m: float, their_depth_m: float) -> Outcome:
    shot = Shot(
        contact=Point(x_m=OUR_X_M, y_m=-from_net_m),
        height_m=height_m,
        speed_mps=PUT_AWAY_MPS,
        target=Point(x_m=-2.5, y_m=3.0),
    )
    errs = misses(shot, PUT_AWAY_SCATTER)
    if errs >= 1:
        return Outcome(wins=0.0, errs=1.0, goes_on=AFTER_PUT_AWAY)
    right, left = (Point(x_m=x, y_m=their_depth_m) for x in (THEIR_X_M, -THEIR_X_M))
    wins = (1 - errs) * (1 - (1 - unreached(shot, (right, left))) * PUT_AWAY_BACK)
    return Outcome(wins=wins, errs=errs, goes_on=AFTER_PUT_AWAY)
