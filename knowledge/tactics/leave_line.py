"""How high a ball must be at our kitchen line to fly out: flat, and with topspin by both fits."""

from __future__ import annotations

import math
from typing import Final

from knowledge.ball_facts import Spin
from knowledge.ball_places import HeightName, height_m
from knowledge.court import METRES_PER_FOOT
from knowledge.dataclass import dataclass
from knowledge.flight import (
    DEFAULT_LIFT,
    DRIVE_MPS,
    HIGH_LIFT,
    LOW_LIFT,
    MPS_PER_MPH,
    SPEED_UP_MPS,
    TOPSPIN_RPM,
    leave_height_m,
)
from knowledge.reach.body import DEFAULT_STATURE_M
from knowledge.tactics.reset_flight import CONTACT_FROM_NET_M, DRIVEN_FROM_NET_M

SPED_UP_FROM_M: Final = 2.5 * METRES_PER_FOOT
DRIVEN_FROM_M: Final = 3.0 * METRES_PER_FOOT
"""Height of their contact: thigh to net high off a dink, hip high off a return."""

BODY: Final = (
    (HeightName.HIP, "hip"),
    (HeightName.WAIST, "belt"),
    (HeightName.CHEST, "chest"),
    (HeightName.SHOULDER, "shoulder"),
    (HeightName.HEAD, "eyes"),
)
"""Heights that a player feels without looking, from the ground up."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Hit:
    """A hard ball of theirs, as usual or as said: contact, speed, and the wind along it."""

    height_m: float
    from_net_m: float
    speed_mps: float
    wind_mps: float = 0.0
    is_drive: bool = False

    @property
    def mph(self) -> int:
        return round(self.speed_mps / MPS_PER_MPH)

    @property
    def taken_as(self) -> str:
        """The line of what is assumed of it."""
        place = "from their baseline" if self.is_drive else "from their line"
        return f"Taken as: {self.mph} mph {place}, straight."


def usual_hit(*, is_drive: bool, pace_mps: float | None = None, wind_mps: float = 0.0) -> Hit:
    """A drive from their baseline, or a speed-up from 2 ft behind their line."""
    usual_mps = DRIVE_MPS if is_drive else SPEED_UP_MPS
    return Hit(
        height_m=DRIVEN_FROM_M if is_drive else SPED_UP_FROM_M,
        from_net_m=DRIVEN_FROM_NET_M if is_drive else CONTACT_FROM_NET_M,
        speed_mps=pace_mps if pace_mps is not None else usual_mps,
        wind_mps=wind_mps,
        is_drive=is_drive,
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class LeaveLines:
    """Heights at our line above which a ball flies out: 0 always, infinite never."""

    flat_m: float
    spun_m: float
    spun_low_m: float
    spun_high_m: float


def leave_lines(hit: Hit) -> LeaveLines:
    """The line of a flat ball, and of one with topspin: by the default lift and by both fits."""
    flat, default, low, high = (
        leave_height_m(
            hit.height_m,
            hit.from_net_m,
            speed_mps=hit.speed_mps,
            topspin_rpm=rpm,
            lift_per_spin=lift,
            wind_mps=hit.wind_mps,
        )
        for rpm, lift in (
            (0.0, LOW_LIFT),
            (TOPSPIN_RPM, DEFAULT_LIFT),
            (TOPSPIN_RPM, LOW_LIFT),
            (TOPSPIN_RPM, HIGH_LIFT),
        )
    )
    return LeaveLines(flat_m=flat, spun_m=default, spun_low_m=low, spun_high_m=high)


def body_word(metres: float, *, stature_m: float = DEFAULT_STATURE_M) -> str | None:
    """The part of the body nearest to a height at our line; None over the head or for no height."""
    if not math.isfinite(metres) or metres > stature_m:
        return None
    named = [(abs(height_m(name, stature_m=stature_m) - metres), word) for name, word in BODY]
    return min(named)[1]


def leave_words(line_m: float) -> str:
    """ "above the belt"; "all of them" where none stays in, "none" where none flies out."""
    if line_m == 0:
        return "all of them"
    word = body_word(line_m)
    return f"above the {word}" if word else "none"


def feet(metres: float) -> str:
    """ "3.4 ft": to the tenth, as a table has it."""
    return f"{metres / METRES_PER_FOOT:.1f} ft"


def taken_as_spun(spin: Spin | None, habit_level: float) -> bool | None:
    """Whether this hitter's ball is taken as topspin (True), as flat (False), or as either."""
    if spin is not None:
        return spin is Spin.TOPSPIN
    return None if abs(habit_level) < SURE_HABIT else habit_level > 0


SURE_HABIT: Final = 0.3
"""A habit's level, -1 to 1, from which on the hitter is taken to have it: about one clear note."""
