"""Who runs for their lob, computed: the one under it must turn, the partner crosses and sees it.

The run of each against the ball's clock; all places are common practice, no source.
"""

from __future__ import annotations

from functools import cache
from typing import Final

from knowledge.court import KITCHEN_DEPTH_M, Point
from knowledge.dataclass import dataclass
from knowledge.reach import chance_in_time
from knowledge.situation import OnCourt
from knowledge.sources import computed
from knowledge.tactics.overhead_reach import ARM_M, REACTION_S, TURN_S, run_s
from knowledge.vocabulary import Trait
from knowledge.wind import Launch, landing

RACE = computed("their lob's flight against both runs")

THEIR_LOB: Final = Launch(speed_mps=9.7, angle_deg=48, height_m=0.5, from_net_m=2.5)
"""A good one: low, off their kitchen line, over the paddle and down near our baseline."""

LANDS: Final = Point(x_m=1.4, y_m=-5.6)
UNDER_IT: Final = Point(x_m=1.4, y_m=-(KITCHEN_DEPTH_M + 0.3))
PARTNER: Final = Point(x_m=-1.4, y_m=-(KITCHEN_DEPTH_M + 0.3))
"""A lob over our right player lands near the baseline; the left is the mirror image."""

OPENS_UP_S: Final = 0.10
"""The partner only opens the hips: the ball is in view all the way. Common practice."""

LOOKS_UP_S: Final = 0.15
"""The one under it loses the ball for a moment, over the head. Common practice."""

BOUNCE_GIVES_S: Final = 0.45
"""After it lands, until it is met near the top of its bounce."""

SPREAD_S: Final = 0.30
IN_BALANCE_S: Final = 0.40
"""So much to spare and it is hit in balance; and how far a run varies. Common practice."""

IN_BALANCE_WORTH: Final = 0.45
SCRAMBLED_WORTH: Final = 0.28
"""Our chance in the rally from back there, set or scrambling. Common practice."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Run:
    """One of our two runs: seconds to spare and what the rally is worth then."""

    spare_s: float

    @property
    def worth(self) -> float:
        in_balance = chance_in_time(self.spare_s - IN_BALANCE_S, spread_s=SPREAD_S)
        return SCRAMBLED_WORTH + in_balance * (IN_BALANCE_WORTH - SCRAMBLED_WORTH)


def own_run(one: OnCourt | None) -> Run:
    """The one under it turns and runs straight back."""
    return Run(spare_s=_clock_s() - TURN_S - LOOKS_UP_S - _run_s(one, UNDER_IT))


def crossing_run(one: OnCourt | None) -> Run:
    """The partner crosses behind."""
    return Run(spare_s=_clock_s() - OPENS_UP_S - _run_s(one, PARTNER))


def _clock_s() -> float:
    return _aloft_s() + BOUNCE_GIVES_S - REACTION_S


@cache
def _aloft_s() -> float:
    return landing(THEIR_LOB).time_s


def _run_s(one: OnCourt | None, start: Point) -> float:
    level = 0.0 if one is None else one.profile.skill(Trait.FOOT_SPEED).level
    return run_s(start.distance_m(LANDS) - ARM_M, level=level)
