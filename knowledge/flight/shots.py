"""The shots whose windows are computed ahead: pace, spin, what is meant, and the usual scatter."""

from __future__ import annotations

from collections.abc import Mapping
from enum import StrEnum
from types import MappingProxyType
from typing import Final

from knowledge.court import HALF_LENGTH_M, HALF_WIDTH_M, KITCHEN_DEPTH_M, Lane
from knowledge.dataclass import dataclass
from knowledge.flight.ball import MPS_PER_MPH
from knowledge.flight.scatter import Scatter
from knowledge.flight.window import LEGAL, Intent


class Shot(StrEnum):
    """The values are the trade's words."""

    SERVE = "serve"
    RETURN = "return"
    DROP = "drop"
    DRIVE = "drive"
    DINK = "dink"
    RESET = "reset"
    SPEED_UP = "speed-up"
    LOB = "lob"
    OVERHEAD = "overhead"


@dataclass(frozen=True, slots=True, kw_only=True)
class ShotForm:
    """How a shot is played: paces and elevations to choose the aim from, spin, and two intents.

    `legal` is a ball in play; `meant` is what the shot is for. `heights_m` and `from_net_m` are
    the contact points that the tables hold.
    """

    speeds_mph: tuple[float, float]
    elevations_deg: tuple[float, float]
    topspin_rpm: float = 0.0
    meant: Intent
    legal: Intent = LEGAL
    scatter: Scatter
    lanes: tuple[Lane, ...] = tuple(Lane)
    heights_m: tuple[float, ...]
    from_net_m: tuple[float, ...]

    @property
    def speeds_mps(self) -> tuple[float, float]:
        low, high = self.speeds_mph
        return (low * MPS_PER_MPH, high * MPS_PER_MPH)


KNEE_M, CHEST_M, SHOULDER_M, OVERHEAD_M = 0.5, 1.3, 1.5, 2.6
"""Heights on a player of 1.75 m, rounded up (Drillis and Contini 1966: knee .285, shoulder .818 of
stature; read; the chest between hip and shoulder: our guess); a raised paddle reaches 2.2 to 2.5 m,
leaning back a little more."""

DEEP_M: Final = (HALF_LENGTH_M - 2.0, HALF_LENGTH_M)
SHORT_M: Final = (0.0, KITCHEN_DEPTH_M)
PAST_KITCHEN_M: Final = (KITCHEN_DEPTH_M, HALF_LENGTH_M)
DIAGONAL_BOX_M: Final = (-HALF_WIDTH_M, 0.0)

LOW_HEIGHTS_M: Final = (0.2, 0.4, 0.6, 0.8, 1.0, 1.3)
ALL_HEIGHTS_M: Final = (0.3, 0.6, 0.9, 1.2, 1.6)
FROM_THE_BACK_M: Final = (4.0, 5.0, 6.0, 7.0, 8.0)
FROM_THE_LINE_M: Final = (0.8, 1.5, 2.2, 3.0, 4.0)

FORMS: Final[Mapping[Shot, ShotForm]] = MappingProxyType(
    {
        Shot.SERVE: ShotForm(
            speeds_mph=(30, 50),
            elevations_deg=(3, 20),
            topspin_rpm=400,
            meant=Intent(depth_m=DEEP_M, aside_m=DIAGONAL_BOX_M),
            legal=Intent(depth_m=PAST_KITCHEN_M, aside_m=DIAGONAL_BOX_M),
            scatter=Scatter(speed_share=0.04, elevation_deg=1.6, azimuth_deg=2.0),
            heights_m=(0.5, 0.7, 0.9),
            from_net_m=(6.8, 7.4),
            lanes=(Lane.CROSS,),
        ),
        Shot.RETURN: ShotForm(
            speeds_mph=(25, 45),
            elevations_deg=(4, 28),
            meant=Intent(depth_m=DEEP_M),
            scatter=Scatter(speed_share=0.05, elevation_deg=2.2, azimuth_deg=2.5),
            heights_m=(0.3, 0.6, 0.9, 1.2),
            from_net_m=(5.0, 6.0, 7.0, 8.0),
        ),
        Shot.DROP: ShotForm(
            speeds_mph=(14, 36),
            elevations_deg=(6, 32),
            meant=Intent(at_line_m=(0.0, 0.8)),
            scatter=Scatter(speed_share=0.05, elevation_deg=2.2, azimuth_deg=2.5),
            heights_m=LOW_HEIGHTS_M,
            from_net_m=FROM_THE_BACK_M,
        ),
        Shot.DRIVE: ShotForm(
            speeds_mph=(40, 52),
            elevations_deg=(-6, 20),
            topspin_rpm=1000,
            meant=Intent(at_line_m=(0.0, CHEST_M)),
            scatter=Scatter(speed_share=0.05, elevation_deg=1.8, azimuth_deg=2.5),
            heights_m=LOW_HEIGHTS_M,
            from_net_m=FROM_THE_BACK_M,
        ),
        Shot.DINK: ShotForm(
            speeds_mph=(6, 20),
            elevations_deg=(5, 48),
            meant=Intent(depth_m=SHORT_M),
            scatter=Scatter(speed_share=0.06, elevation_deg=3.5, azimuth_deg=3.5),
            heights_m=(0.15, 0.3, 0.5, 0.8, 1.1),
            from_net_m=(0.6, 1.2, 1.8, 2.5, 3.2),
        ),
        Shot.RESET: ShotForm(
            speeds_mph=(8, 26),
            elevations_deg=(5, 48),
            meant=Intent(depth_m=SHORT_M),
            scatter=Scatter(speed_share=0.09, elevation_deg=4.5, azimuth_deg=4.0),
            heights_m=(0.15, 0.3, 0.6, 0.9, 1.3),
            from_net_m=(1.8, 2.5, 3.5, 4.5, 5.5),
        ),
        Shot.SPEED_UP: ShotForm(
            speeds_mph=(30, 42),
            elevations_deg=(-15, 30),
            topspin_rpm=800,
            meant=Intent(at_line_m=(KNEE_M, SHOULDER_M)),
            scatter=Scatter(speed_share=0.05, elevation_deg=2.2, azimuth_deg=2.5),
            heights_m=ALL_HEIGHTS_M,
            from_net_m=FROM_THE_LINE_M,
        ),
        Shot.LOB: ShotForm(
            speeds_mph=(20, 34),
            elevations_deg=(25, 75),
            meant=Intent(depth_m=DEEP_M, at_line_m=(OVERHEAD_M, 20.0)),
            scatter=Scatter(speed_share=0.05, elevation_deg=3.0, azimuth_deg=3.0),
            heights_m=(0.3, 0.6, 1.0, 1.6),
            from_net_m=(1.2, 2.2, 4.0, 7.0),
        ),
        Shot.OVERHEAD: ShotForm(
            speeds_mph=(40, 55),
            elevations_deg=(-30, 12),
            meant=Intent(depth_m=PAST_KITCHEN_M, at_line_m=(0.0, CHEST_M)),
            scatter=Scatter(speed_share=0.05, elevation_deg=2.5, azimuth_deg=3.0),
            heights_m=(1.6, 2.0, 2.4),
            from_net_m=(1.5, 3.0, 4.5, 6.5),
        ),
    }
)
"""Paces within what the trade has: drive 35 to 55 mph, speed-up 25 to 45, overhead 35 to 60, lob 20
to 30, return 25 to 40, all from memory. Into a wind of 10 mph the best aims of a lob and of a
return go beyond that (computed), so their forms do. The other paces, every elevation, spin and
scatter: common practice, no source. The scatter is a good club player's (4.0 to 4.5) off a ball
that suits him."""
