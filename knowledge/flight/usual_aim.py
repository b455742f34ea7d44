"""The aim of a shot from the tables: what a turn asks instead of computing a window."""

from __future__ import annotations

from knowledge.court import Lane
from knowledge.flight.aim import Aim
from knowledge.flight.shots import FORMS, Shot
from knowledge.flight.tables import tables


def usual_aim(
    shot: Shot,
    *,
    height_m: float,
    from_net_m: float,
    lane: Lane = Lane.MIDDLE,
    wind_mps: float = 0.0,
    factor: float = 1.0,
) -> Aim:
    """The best aim from there and how it goes, for a scatter of `factor` times the usual.

    The wind is positive from behind us. A serve is always across.
    """
    lanes = FORMS[shot].lanes
    at = lanes.index(lane) if lane in lanes else 0
    found = tables()[shot].at(height_m, from_net_m, float(at), wind_mps, factor)
    return Aim(**dict(zip(Aim.__slots__, map(float, found), strict=True)))
