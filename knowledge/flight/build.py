"""What the shipped tables hold, cell by cell: best aims of every shot, and limits."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import astuple
from hashlib import sha256
from itertools import product
from typing import Final

import numpy as np

from knowledge.court import Lane
from knowledge.flight.aim import (
    ANGLE_STEP_DEG,
    SPEED_CELLS,
    best_aim,
    shot_window,
)
from knowledge.flight.ball import LOW_LIFT, MPS_PER_MPH, OUTDOOR, Ball
from knowledge.flight.integrate import STEP_S
from knowledge.flight.launch import Floats
from knowledge.flight.limits import ELEVATIONS_DEG, limits
from knowledge.flight.scatter import SLICES
from knowledge.flight.shots import FORMS, Shot

LIMITS: Final = "limits"
WINDS_MPS: Final = (-4.5, 0.0, 4.5)
FACTORS: Final = (0.6, 1.0, 1.5, 2.2)
"""Scatter against the usual: from a strength of an expert to a weakness of a beginner."""

LANES: Final = (Lane.LINE, Lane.CROSS)
LIMIT_HEIGHTS_M: Final = (0.2, 0.5, 0.8, 1.1, 1.5, 2.0, 2.5)
LIMIT_FROM_NET_M: Final = (0.4, 0.9, 1.5, 2.13, 2.75, 3.5, 4.5, 5.5, 6.7, 8.0)
LIMIT_WINDS_MPS: Final = (-4.5, -2.25, 0.0, 2.25, 4.5)
LIMIT_SPEEDS_MPH: Final = (20, 22.5, 25, 27.5, 30, 32.5, 35, 40, 45, 50, 60)
LIMIT_SPEEDS_MPS: Final = tuple(MPS_PER_MPH * mph for mph in LIMIT_SPEEDS_MPH)
LIMIT_LOW_RPM: Final = (-2400.0, 0.0, 2400.0, 4800.0, 7200.0)
"""Topspin as it would be with the low fit of the lift: in the air only spin x lift counts."""

OUT_OF_REACH_M: Final = 4.0
"""Stands for all greater heights of a ball to leave, so that there is something between a cell
that flies out and one that cannot."""

LOW_BALL: Final = Ball(lift_per_spin=LOW_LIFT)


def axes_of(name: str) -> tuple[tuple[float, ...], ...]:
    """The axes of a table. Lanes are numbered as in their tuple.

    A shot: height, distance from the net, lane, wind, factor of scatter. Limits: height, distance
    from the net, lane, wind, spin, pace.
    """
    if name == LIMITS:
        lanes = tuple(float(place) for place in range(len(LANES)))
        places = (LIMIT_HEIGHTS_M, LIMIT_FROM_NET_M, lanes, LIMIT_WINDS_MPS)
        return (*places, LIMIT_LOW_RPM, LIMIT_SPEEDS_MPS)
    form = FORMS[Shot(name)]
    lanes = tuple(float(place) for place in range(len(form.lanes)))
    return (form.heights_m, form.from_net_m, lanes, WINDS_MPS, FACTORS)


def row_of(name: str, place: tuple[int, ...]) -> Floats:
    """What one run computes, at a place of the table's first four axes (five of the limits)."""
    height, away, lane, wind, *spin = (
        axis[at] for axis, at in zip(axes_of(name), place, strict=False)
    )
    if name == LIMITS:
        found = limits(
            height_m=height,
            from_net_m=away,
            speeds_mps=np.array(LIMIT_SPEEDS_MPS),
            topspin_rpm=spin[0],
            wind_mps=wind,
            lane=LANES[int(lane)],
            ball=LOW_BALL,
        )
        leave = np.minimum(found.leave_m, OUT_OF_REACH_M)
        return np.stack([found.lowest_deg, found.highest_deg, leave], axis=-1)
    shot = Shot(name)
    shown = shot_window(
        shot,
        height_m=height,
        from_net_m=away,
        lane=FORMS[shot].lanes[int(lane)],
        wind_mps=wind,
    )
    aims = (best_aim(shot, shown, factor=factor, wind_mps=wind) for factor in FACTORS)
    return np.array([astuple(aim) for aim in aims])


def runs_of(name: str) -> Iterator[tuple[int, ...]]:
    """The places of a table that need a run of their own."""
    return product(*(range(len(axis)) for axis in axes_of(name)[:-1]))


def names() -> tuple[str, ...]:
    return (*Shot, LIMITS)


def fingerprint() -> str:
    """Changes with anything that the tables are computed from, but for the code itself."""
    parts = (
        OUTDOOR,
        LOW_BALL,
        OUT_OF_REACH_M,
        STEP_S,
        SPEED_CELLS,
        ANGLE_STEP_DEG,
        SLICES,
        FORMS,
        FACTORS,
    )
    told = [repr(part) for part in parts] + [repr(axes_of(name)) for name in names()]
    told.append(repr(ELEVATIONS_DEG.tolist()))
    return sha256("\n".join(told).encode()).hexdigest()[:16]
