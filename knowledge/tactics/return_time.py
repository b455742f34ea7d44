"""The time a return buys: how long it is in the air, and the ground that is worth to a runner."""

from __future__ import annotations

import math

from knowledge.court import METRES_PER_FOOT
from knowledge.situation import OnCourt
from knowledge.sources import computed
from knowledge.vocabulary import Trait

HIGH_FLIGHT_S = (1.24 + 1.29) / 2
"""A deep return at 31 to 33 mph, 25 degrees up: 1.24 to 1.29 s in the air. Computed with drag."""

HARD_FLIGHT_S = (0.76 + 0.79) / 2
"""A deep flat one at 47 to 49 mph: 0.76 to 0.79 s. Computed with drag."""

TOP_SPEED_MPS = 5.5
RISE_TIME_S = 0.8
"""A club player's run: reaches the line, 5.5 m from behind the baseline, in the 1.7 s that the
trade reckons with. Our guess; an athlete's published values are 8.6 m/s and 0.81 s."""

SLOWER = 0.25
"""How much of the top speed a clearly slow runner lacks, and a quick one has more. Our guess."""

TIME = computed("flight with drag; run v = V (1 - exp(-t/T))")


def run_m(
    time_s: float, *, top_speed_mps: float = TOP_SPEED_MPS, rise_time_s: float = RISE_TIME_S
) -> float:
    """Metres run from standing: the integral of V (1 - exp(-t/T))."""
    return top_speed_mps * (time_s - rise_time_s * (1 - math.exp(-time_s / rise_time_s)))


def ground_bought_ft(returner: OnCourt | None) -> float:
    """Feet of the run that a high return buys against a hard one."""
    level = 0.0 if returner is None else returner.profile.skill(Trait.FORWARD_SPEED).level
    top = TOP_SPEED_MPS * (1 + SLOWER * level)
    high, hard = (run_m(each, top_speed_mps=top) for each in (HIGH_FLIGHT_S, HARD_FLIGHT_S))
    return (high - hard) / METRES_PER_FOOT
