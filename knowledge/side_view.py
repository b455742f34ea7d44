"""A ball's path from the side: net, lines, a player's height, and the window it must pass."""

from __future__ import annotations

import math
import re

from knowledge.dataclass import dataclass

Place = tuple[float, float]
"""How far along the court (metres from the net, ours negative) and how high (metres)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SidePath:
    """One ball's places in flight order. `ours` says who hit it, `lands_in` where it ends.

    `lands_in` None leaves its end open. ValueError for fewer than two places.
    """

    places: tuple[Place, ...]
    label: str
    ours: bool
    lands_in: bool | None = None

    def __post_init__(self) -> None:
        if len(self.places) < 2:
            raise ValueError(f"a path has two places or more, not {len(self.places)}")
        if not all(math.isfinite(each) for place in self.places for each in place):
            raise ValueError("a path's places are finite")


@dataclass(frozen=True, slots=True, kw_only=True)
class SideFigure:
    """A player from the side, by stature."""

    along_m: float
    stature_m: float
    label: str
    ours: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class SideLevel:
    """A height that matters at one place, as "belt" is at our line."""

    along_m: float
    height_m: float
    label: str


@dataclass(frozen=True, slots=True, kw_only=True)
class SideFlight:
    """A ball of ours whose path is worked out when it is drawn (knowledge.side_flights).

    `shot` is a knowledge.flight.Shot. `met_at_m` is where whoever waits there meets it, from the
    net; None lets it land. `has_window` draws the band of such balls that do what is meant.
    """

    shot: str
    height_m: float
    from_net_m: float
    speed_mps: float
    elevation_deg: float
    label: str
    wind_mps: float = 0.0
    met_at_m: float | None = None
    has_window: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class SideView:
    """Paths against net and lines; `alt` is the same in words.

    `notes` are lines over the picture, the call among them. `window` is the room between the
    lowest and the highest path that work, as (along, low, high) in metres. `net_m` is the net's
    height where the ball crosses it. `flights` are paths still to be worked out; `window_label`
    names the window.
    """

    title: str
    alt: str
    net_m: float
    notes: tuple[str, ...] = ()
    paths: tuple[SidePath, ...] = ()
    figures: tuple[SideFigure, ...] = ()
    levels: tuple[SideLevel, ...] = ()
    window: tuple[tuple[float, float, float], ...] = ()
    window_label: str = ""
    flights: tuple[SideFlight, ...] = ()


def first_clause(call: str) -> str:
    """A call up to its first pause: a picture's line is shorter than a phone's."""
    return f"{re.split('[,;:]', call)[0].rstrip('.')}."
