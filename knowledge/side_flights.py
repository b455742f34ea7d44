"""Flights that a side view draws: integrated only when the picture is made, never in a turn."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

import numpy as np

from knowledge.court import HALF_LENGTH_M, Lane, Point, lane_ends
from knowledge.flight import FORMS, Shot, azimuth_deg, fly, moving, window, works
from knowledge.flight.integrate import Track
from knowledge.flight.launch import Floats
from knowledge.flight.window import Bools
from knowledge.side_view import Place, SideFlight, SidePath, SideView

FINE_S: Final = 0.04
"""Straight lines between steps are then off by 2 mm at most (g step^2 / 8)."""

ANGLE_STEP_DEG: Final = 0.5
WIDEST_DEG: Final = 14.0
"""How far to either side of the aim the window is looked for."""

WINDOW_STEPS: Final = 40
BALLS_DRAWN: Final = 7
"""Of those that work, evenly spread: no other lies outside of them by what an eye sees."""


def flown(view: SideView) -> SideView:
    """The view with its flights as paths, and the window of the first that has one."""
    if not view.flights:
        return view
    wide = next((one for one in view.flights if one.has_window), None)
    return replace(
        view,
        paths=(*(_path(one) for one in view.flights), *view.paths),
        window=view.window if wide is None else flight_window(wide),
        flights=(),
    )


def flight_window(one: SideFlight) -> tuple[tuple[float, float, float], ...]:
    """The room between the lowest and the highest ball of this pace that do what is meant.

    1. Angles around the aim, and which of them work; 2. those next to the aim that all do;
    3. at each distance the lowest and the highest of these balls. Empty if none works.
    """
    angles = one.elevation_deg + np.arange(-WIDEST_DEG, WIDEST_DEG, ANGLE_STEP_DEG)
    good = _run_around_middle(_work(one, angles))
    if not good.any():
        return ()
    lowest, highest = angles[good][[0, -1]]
    track = _track(one, np.linspace(lowest, highest, BALLS_DRAWN))
    ends = [_end(track, ball, one.met_at_m) for ball in range(BALLS_DRAWN)]
    along = np.linspace(-one.from_net_m, max(places[-1][0] for places in ends), WINDOW_STEPS)
    heights = np.array([_heights_at(along, places) for places in ends])
    return tuple(
        (float(at), float(low), float(high))
        for at, low, high in zip(along, heights.min(axis=0), heights.max(axis=0), strict=True)
    )


def _heights_at(along: Floats, places: list[Place]) -> Floats:
    """How high that ball is there; on the ground where it has landed."""
    path = np.array(places)
    found: Floats = np.interp(along, path[:, 0], path[:, 1], right=0.0)
    return found


def _ends(one: SideFlight) -> tuple[Point, Point]:
    near, far = FORMS[Shot(one.shot)].meant.depth_m
    return lane_ends(Lane.MIDDLE, from_net_m=one.from_net_m, depth_m=(near + far) / 2)


def _work(one: SideFlight, angles: Floats) -> Bools:
    start, target = _ends(one)
    form = FORMS[Shot(one.shot)]
    shown = window(
        start,
        target,
        height_m=one.height_m,
        speeds_mps=np.array([one.speed_mps]),
        elevations_deg=angles,
        topspin_rpm=form.topspin_rpm,
        wind_mps=(0.0, one.wind_mps, 0.0),
    )
    found: Bools = (works(shown, form.meant) & works(shown, form.legal))[0]
    return found


def _run_around_middle(good: Bools) -> Bools:
    """The unbroken run of what works that is nearest to the middle, alone."""
    middle = len(good) // 2
    at = np.flatnonzero(good)
    kept = np.zeros_like(good)
    if not len(at):
        return kept
    first = last = int(at[np.argmin(np.abs(at - middle))])
    while first > 0 and good[first - 1]:
        first -= 1
    while last < len(good) - 1 and good[last + 1]:
        last += 1
    kept[first : last + 1] = True
    return kept


def _track(one: SideFlight, angles: Floats) -> Track:
    start, target = _ends(one)
    launches = moving(
        x_m=start.x_m,
        y_m=start.y_m,
        z_m=one.height_m,
        speed_mps=one.speed_mps,
        elevation_deg=angles,
        azimuth_deg=azimuth_deg(start, target),
        topspin_rpm=FORMS[Shot(one.shot)].topspin_rpm,
    )
    return fly(launches, wind_mps=(0.0, one.wind_mps, 0.0), step_s=FINE_S)


def _end(track: Track, ball: int, met_at_m: float | None) -> list[Place]:
    """One ball's places until it lands or is met, the last one between two steps."""
    along, up = track.states[:, 1, ball], track.states[:, 2, ball]
    down = np.flatnonzero(up <= track.ball.radius_m)
    last = int(down[0]) if len(down) else len(up) - 1
    places = [(float(y), float(z)) for y, z in zip(along[: last + 1], up[: last + 1], strict=True)]
    places[-1] = _between(places[-2], places[-1], up=track.ball.radius_m)
    if met_at_m is None or places[-1][0] <= met_at_m:
        return places
    kept = [place for place in places if place[0] < met_at_m]
    return [*kept, _between(kept[-1], places[len(kept)], along=met_at_m)]


def _between(
    one: Place, two: Place, *, up: float | None = None, along: float | None = None
) -> Place:
    """Where the straight line between two places is at this height, or this far along."""
    if up is not None:
        part = (one[1] - up) / (one[1] - two[1])
    else:
        part = ((along or 0.0) - one[0]) / (two[0] - one[0])
    return (one[0] + part * (two[0] - one[0]), one[1] + part * (two[1] - one[1]))


def _path(one: SideFlight) -> SidePath:
    places = _end(_track(one, np.array([one.elevation_deg])), 0, one.met_at_m)
    along = places[-1][0]
    is_met = one.met_at_m is not None and along >= one.met_at_m
    return SidePath(
        places=tuple(places),
        label=one.label,
        ours=True,
        lands_in=None if is_met else 0 < along <= HALF_LENGTH_M,
    )
