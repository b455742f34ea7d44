"""How far a player's shots scatter, and how often a shot then does what is meant.

Speed, elevation and direction scatter independently, each as a normal curve around its aim.

Method: 1. the direction in eleven slices: landings turn about the contact point, and the net is
met a little sooner or later; the slice counts by its share between the sides; 2. for every launch
of the window the weighted sum of the slices that do what is meant; 3. speed and elevation as
weights over the cells of the grid, for every aim at once. What lies outside the grid is missed.
Turning is exact in still air; a wind along the court is taken to turn along, which is near enough
for the few degrees of a scatter.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

import numpy as np

from knowledge.dataclass import dataclass
from knowledge.flight.crossing import net_heights_m
from knowledge.flight.launch import Floats
from knowledge.flight.window import Intent, Window, goes_right
from knowledge.normal import normal_cdf
from knowledge.vocabulary import Level

SCATTER_PER_TRAIT: Final = 0.35
"""How much of the log of the scatter a trait moves from none to full. Common practice, no
source: a clear strength scatters 0.7 times as much as usual, a clear weakness 1.4 times."""


SCATTER_OF_LEVEL: Final[Mapping[Level, float]] = MappingProxyType(
    {
        Level.L3_0: 1.6,
        Level.L3_5: 1.35,
        Level.L4_0: 1.15,
        Level.L4_5: 1.0,
        Level.L5_0: 0.85,
    }
)
"""Scatter against that of the shots' forms. Common practice, no source."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Scatter:
    """Standard deviations of a shot: speed as a share of it, both angles in degrees."""

    speed_share: float
    elevation_deg: float
    azimuth_deg: float

    def times(self, factor: float) -> Scatter:
        return Scatter(
            speed_share=factor * self.speed_share,
            elevation_deg=factor * self.elevation_deg,
            azimuth_deg=factor * self.azimuth_deg,
        )


def scatter_factor(trait: float, level: Level = Level.L4_5) -> float:
    """What a trait, -1 (weakness) to 1 (strength), and the playing level make of the scatter."""
    return SCATTER_OF_LEVEL[level] * math.exp(-SCATTER_PER_TRAIT * trait)


def chances(
    shown: Window, intent: Intent, scatter: Scatter, *, speeds_mps: Floats, elevations_deg: Floats
) -> Floats:
    """Chance of doing what is meant for aims at these speeds by these elevations."""
    good = _over_directions(shown, intent, scatter)
    by_speed = _weights(speeds_mps, scatter.speed_share * speeds_mps, shown.speeds_mps)
    angle_sd = np.full_like(elevations_deg, scatter.elevation_deg)
    by_angle = _weights(elevations_deg, angle_sd, shown.elevations_deg)
    found: Floats = by_speed @ good @ by_angle.T
    return found


def success_chance(
    shown: Window, intent: Intent, scatter: Scatter, *, speed_mps: float, elevation_deg: float
) -> float:
    """Chance that one aim does what is meant."""
    speeds, angles = np.array([speed_mps]), np.array([elevation_deg])
    return float(chances(shown, intent, scatter, speeds_mps=speeds, elevations_deg=angles)[0, 0])


SLICES: Final = 11
SLICED_TO: Final = 3.0
"""The direction's normal curve is cut into so many slices, to so many standard deviations."""


def _over_directions(shown: Window, intent: Intent, scatter: Scatter) -> Floats:
    """For each launch, the chance over its scattering direction to do what is meant."""
    half = SLICED_TO / SLICES
    middles = np.linspace(-SLICED_TO + half, SLICED_TO - half, SLICES)
    shares = _weights(np.zeros(1), np.ones(1), middles)[0]
    sd = math.radians(scatter.azimuth_deg)
    slices = (
        share * _in_slice(shown, intent, float(middle) * sd, 2 * half * sd)
        for middle, share in zip(middles, shares / shares.sum(), strict=True)
    )
    found: Floats = np.sum(list(slices), axis=0)
    return found


def _in_slice(shown: Window, intent: Intent, turn: float, width: float) -> Floats:
    """Share of a slice of directions, `turn` off the aim in radians, that does what is meant."""
    aside, ahead = shown.aside_m - shown.start.x_m, shown.depth_m - shown.start.y_m
    cos, sin = math.cos(turn), math.sin(turn)
    across = shown.start.x_m + aside * cos + ahead * sin
    depth = shown.start.y_m + ahead * cos - aside * sin
    right = goes_right(shown, intent, _turned_clearance_m(shown, turn), depth)
    sweep = np.abs(ahead * cos - aside * sin) * width
    inside = _part_below(intent.aside_m[1] - across, sweep)
    inside -= _part_below(intent.aside_m[0] - across, sweep)
    found: Floats = np.where(right, inside, 0.0)
    return found


def _part_below(room_m: Floats, sweep_m: Floats) -> Floats:
    """Share of a stretch of this length, its middle so far before an edge, that is before it."""
    with np.errstate(invalid="ignore", divide="ignore"):
        found: Floats = np.clip(room_m / sweep_m + 0.5, 0.0, 1.0)
    return found


def _turned_clearance_m(shown: Window, turn: float) -> Floats:
    """Air over the net when the direction is turned: it is met elsewhere, sooner or later."""
    to_net = -shown.start.y_m
    was = math.radians(shown.azimuth_deg)
    farther = to_net / math.cos(was + turn) - to_net / math.cos(was)
    aside = shown.start.x_m + to_net * math.tan(was + turn)
    rise = net_heights_m(np.array([aside]))[0] - net_heights_m(shown.net_aside_m)
    found: Floats = shown.clearance_m + shown.net_slope * farther - rise
    return found


def _weights(aims: Floats, spreads: Floats, cells: Floats) -> Floats:
    """Share of each aim's normal curve that falls in each cell; cells are evenly spaced."""
    half = (cells[1] - cells[0]) / 2
    edges = np.append(cells - half, cells[-1] + half)
    below = _cdf((edges[np.newaxis] - aims[:, np.newaxis]) / spreads[:, np.newaxis])
    found: Floats = np.diff(below, axis=1)
    return found


CDF_AT: Final = np.linspace(-5, 5, 2001)
CDF: Final = np.array([normal_cdf(float(at)) for at in CDF_AT])


def _cdf(at: Floats) -> Floats:
    """The normal distribution from a table in steps of 0.005: within 1e-6."""
    found: Floats = np.interp(at, CDF_AT, CDF)
    return found
