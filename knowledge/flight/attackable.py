"""What can be attacked: whether pace from a contact point clears the net and stays in."""

from __future__ import annotations

from typing import Final

import numpy as np

from knowledge.court import Lane
from knowledge.dataclass import dataclass
from knowledge.flight.ball import DEFAULT_LIFT, LOW_LIFT, MPS_PER_MPH
from knowledge.flight.build import LIMIT_SPEEDS_MPS, LIMITS
from knowledge.flight.tables import tables

SPEED_UP_MPS: Final = 35 * MPS_PER_MPH
"""Middle of a speed-up's 25 to 45 mph, from memory."""

DRIVE_MPS: Final = 48 * MPS_PER_MPH
"""Towards the fast end of a drive's 35 to 55 mph, from memory."""

TOPSPIN_RPM: Final = 1200.0
"""A speed-up or a drive with topspin; published ground strokes are 1,400 to 1,500 (trade
magazine), and a roll from the kitchen line is shorter. Common practice, no source."""

NEEDED_DEG: Final = 4.5
"""Angle between the net and the line that makes an attack: about one usual standard deviation of
a speed-up to either side, so some two of three go in. Common practice, no source."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Attackable:
    """The angles at which a ball of this pace clears the net and lands in, and how hard one may.

    `margin_deg` below 0: no angle does, by so much. `fastest_legal_mps` is the hardest ball that
    some angle keeps in, `fastest_safe_mps` the hardest with NEEDED_DEG to spare; both end at 60
    mph, the fastest in play (Lindsey; second-hand), and are 0 where no pace of 20 mph or more is
    kept in.
    """

    lowest_deg: float
    highest_deg: float
    fastest_legal_mps: float
    fastest_safe_mps: float

    @property
    def margin_deg(self) -> float:
        return self.highest_deg - self.lowest_deg

    @property
    def is_downward(self) -> bool:
        """Whether it can be hit level or down."""
        return self.lowest_deg <= 0 < self.margin_deg

    @property
    def is_attackable(self) -> bool:
        """Whether this pace leaves the margin that an attack needs."""
        return self.margin_deg >= NEEDED_DEG


def attackable(
    height_m: float,
    from_net_m: float,
    *,
    pace_mps: float = SPEED_UP_MPS,
    topspin_rpm: float = 0.0,
    lift_per_spin: float = DEFAULT_LIFT,
    wind_mps: float = 0.0,
    lane: Lane = Lane.LINE,
) -> Attackable:
    """Of a ball met at this height, so far behind the net, from the tables.

    `topspin_rpm` is what we put on it: a ball off the bounce is often rolled. The wind is
    positive from behind us. `Lane.MIDDLE` reads as line.
    """
    spin = topspin_rpm * lift_per_spin / LOW_LIFT
    by_pace = tables()[LIMITS].at(height_m, from_net_m, float(lane is Lane.CROSS), wind_mps, spin)
    lowest, highest = (
        float(np.interp(pace_mps, LIMIT_SPEEDS_MPS, by_pace[:, column])) for column in (0, 1)
    )
    margins = [float(high - low) for low, high, _ in by_pace]
    return Attackable(
        lowest_deg=lowest,
        highest_deg=highest,
        fastest_legal_mps=_fastest_mps(margins, 0.0),
        fastest_safe_mps=_fastest_mps(margins, NEEDED_DEG),
    )


def _fastest_mps(margins: list[float], needed: float) -> float:
    """The hardest pace whose margin is at least what is needed; 0 if none is."""
    paces = LIMIT_SPEEDS_MPS
    enough = [at for at, margin in enumerate(margins) if margin >= needed]
    if not enough:
        return 0.0
    last = enough[-1]
    if last == len(paces) - 1:
        return paces[-1]
    part = (margins[last] - needed) / (margins[last] - margins[last + 1])
    return paces[last] + part * (paces[last + 1] - paces[last])
