"""From metres along the court and up to pixels of a portrait picture, heights drawn larger."""

from __future__ import annotations

import math
from collections.abc import Iterator

from bot.chat.pictures.frame import FIELD, Box
from knowledge.court import HALF_LENGTH_M
from knowledge.dataclass import dataclass
from knowledge.side_view import SideView

GROUND_PX = 146.0
"""Under the ground: the names of the lines, and how much larger heights are drawn."""

ABOVE_PX = 70.0
"""For the name over the tallest player."""

NOTE_STEP_PX = 52.0
MOST_NOTES = 5

AIR = Box(
    x0=FIELD.x0 + 24,
    y0=FIELD.y0 + GROUND_PX,
    x1=FIELD.x1 - 24,
    y1=FIELD.y1 - ABOVE_PX - MOST_NOTES * NOTE_STEP_PX,
)
"""Where balls and players are drawn, under as many notes as there may be."""

BEYOND_M = 0.6
"""Shown behind whatever lies furthest out."""

LEVEL_ROOM_M = 2.0
"""For the name of a height, beyond the player that it is marked on."""

LOWEST_TOP_M = 2.0
LARGEST_STRETCH = 5.0
"""Heights are drawn at most so many times larger, so that a path still looks like one."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SideFrame:
    """Two scales, and the places at the picture's two ends."""

    from_m: float
    to_m: float
    px_per_m: float
    up_px_per_m: float

    @property
    def stretch(self) -> float:
        """How many times larger heights are drawn than lengths."""
        return self.up_px_per_m / self.px_per_m

    def px(self, along_m: float, height_m: float) -> tuple[float, float]:
        """Pixel of a place in the air."""
        return (
            AIR.x0 + (along_m - self.from_m) * self.px_per_m,
            AIR.y0 + height_m * self.up_px_per_m,
        )


def side_frame_of(view: SideView) -> SideFrame:
    """As much of the court as anything happens on, with the net always in sight."""
    along = [0.0, *_alongs_m(view)]
    edge = HALF_LENGTH_M + 2.5
    from_m = max(-edge, min(along)) - BEYOND_M
    to_m = min(edge, max(along)) + BEYOND_M
    scale = (AIR.x1 - AIR.x0) / (to_m - from_m)
    top = max(LOWEST_TOP_M, view.net_m, *_heights_m(view), 0.0)
    up = min((AIR.y1 - AIR.y0) / top, LARGEST_STRETCH * scale)
    return SideFrame(from_m=from_m, to_m=to_m, px_per_m=scale, up_px_per_m=up)


def _alongs_m(view: SideView) -> Iterator[float]:
    for path in view.paths:
        yield from (along for along, _ in path.places)
    yield from (figure.along_m for figure in view.figures)
    for level in view.levels:
        yield level.along_m
        yield level.along_m + math.copysign(LEVEL_ROOM_M, level.along_m)
    yield from (along for along, _, _ in view.window)


def _heights_m(view: SideView) -> Iterator[float]:
    for path in view.paths:
        yield from (height for _, height in path.places)
    yield from (figure.stature_m for figure in view.figures)
    yield from (level.height_m for level in view.levels)
    yield from (high for _, _, high in view.window)
