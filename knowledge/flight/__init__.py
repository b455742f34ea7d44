"""The ball's flight: drag, spin, wind and bounce, many launches at once.

Coordinates are those of `knowledge.court`. Pure: numbers in, numbers out. Inside a turn ask
`usual_aim`, `attackable` and `leave`, which read tables; `FlatFire` is a hard ball in closed form,
`path` integrates one ball, `window` many.
"""

from knowledge.flight.aim import Aim, best_aim, shot_window, times_wider_across
from knowledge.flight.attackable import (
    DRIVE_MPS,
    SPEED_UP_MPS,
    TOPSPIN_RPM,
    Attackable,
    attackable,
)
from knowledge.flight.ball import (
    DEFAULT_LIFT,
    HIGH_LIFT,
    INDOOR,
    LOW_LIFT,
    MPS_PER_MPH,
    OUTDOOR,
    Ball,
)
from knowledge.flight.bounce import bounced
from knowledge.flight.crossing import Crossing, at_distance, landing, net_clearance_m, top_m
from knowledge.flight.flat_fire import FlatFire, level_time_s
from knowledge.flight.integrate import Track, fly
from knowledge.flight.launch import STILL_AIR, Launch, Moving, Vector, azimuth_deg, moving
from knowledge.flight.leave import Leave, leave, leave_height_m
from knowledge.flight.path import BallPath, path
from knowledge.flight.scatter import Scatter, scatter_factor, success_chance
from knowledge.flight.shots import FORMS, Shot, ShotForm
from knowledge.flight.usual_aim import usual_aim
from knowledge.flight.window import (
    LEGAL,
    Intent,
    Window,
    fastest,
    on_target,
    size,
    slowest,
    window,
    works,
)

__all__ = [
    "DEFAULT_LIFT",
    "DRIVE_MPS",
    "FORMS",
    "HIGH_LIFT",
    "INDOOR",
    "LEGAL",
    "LOW_LIFT",
    "MPS_PER_MPH",
    "OUTDOOR",
    "SPEED_UP_MPS",
    "STILL_AIR",
    "TOPSPIN_RPM",
    "Aim",
    "Attackable",
    "Ball",
    "BallPath",
    "Crossing",
    "FlatFire",
    "Intent",
    "Launch",
    "Leave",
    "Moving",
    "Scatter",
    "Shot",
    "ShotForm",
    "Track",
    "Vector",
    "Window",
    "at_distance",
    "attackable",
    "azimuth_deg",
    "best_aim",
    "bounced",
    "fastest",
    "fly",
    "landing",
    "leave",
    "leave_height_m",
    "level_time_s",
    "moving",
    "net_clearance_m",
    "on_target",
    "path",
    "scatter_factor",
    "shot_window",
    "size",
    "slowest",
    "success_chance",
    "times_wider_across",
    "top_m",
    "usual_aim",
    "window",
    "works",
]
