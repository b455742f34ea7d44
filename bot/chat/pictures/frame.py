"""From metres on the court to pixels of a portrait phone picture, close up where that suffices."""

from __future__ import annotations

from collections.abc import Iterator

from knowledge.court import HALF_LENGTH_M
from knowledge.court_picture import CourtPicture
from knowledge.dataclass import dataclass

WIDTH_PX = 900
HEIGHT_PX = 1200
TITLE_PX = 130
"""Band at the top that holds the title."""

EDGE_PX = 12
"""Nothing is written closer to the edge than this."""

CLOSE_HALF_M = 4.8
"""Half the length shown close up: kitchen, the players at it and the middle of the court."""

CLOSE_REACH_M = 4.3
"""A picture whose contents all lie this near the net is drawn close up."""

BEYOND_NET_M = 1.0
BEHIND_M = 0.95
"""Shown beside a half that is shared out: beyond the net, and behind the baseline. With these a
player a step past the sideline is still on the picture."""

FULL_HALF_M = HALF_LENGTH_M + 1.35
"""Half the length shown of a whole court, with room behind the baselines."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Box:
    """A rectangle in pixels, y upwards."""

    x0: float
    y0: float
    x1: float
    y1: float

    def overlap(self, other: Box) -> float:
        """Shared area in square pixels, 0 if apart."""
        if (  # most are apart, and many are asked about
            self.x1 <= other.x0 or other.x1 <= self.x0 or self.y1 <= other.y0 or other.y1 <= self.y0
        ):
            return 0.0
        width = min(self.x1, other.x1) - max(self.x0, other.x0)
        return width * (min(self.y1, other.y1) - max(self.y0, other.y0))

    def is_inside(self, other: Box) -> bool:
        return (
            self.x0 >= other.x0
            and self.x1 <= other.x1
            and self.y0 >= other.y0
            and self.y1 <= other.y1
        )

    @classmethod
    def around(cls, x: float, y: float, width: float, height: float) -> Box:
        """The box of that size centred on a point."""
        return cls(x0=x - width / 2, y0=y - height / 2, x1=x + width / 2, y1=y + height / 2)


FIELD = Box(x0=EDGE_PX, y0=EDGE_PX, x1=WIDTH_PX - EDGE_PX, y1=HEIGHT_PX - TITLE_PX)
"""Where court, players and labels may be drawn."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Frame:
    """One scale for both directions; `middle_m` along the court is in the middle of the field."""

    px_per_m: float
    middle_m: float = 0.0

    def px(self, x_m: float, y_m: float) -> tuple[float, float]:
        """Pixel of a place on the court."""
        centre_y = (FIELD.y0 + FIELD.y1) / 2
        return WIDTH_PX / 2 + self.px_per_m * x_m, centre_y + self.px_per_m * (y_m - self.middle_m)


def frame_of(picture: CourtPicture) -> Frame:
    """Close up if everything happens near the net; our half where it is shared out; else all."""
    if picture.areas and all(y <= 0 for y in _lengths_m(picture)):
        scale = (FIELD.y1 - FIELD.y0) / (HALF_LENGTH_M + BEYOND_NET_M + BEHIND_M)
        return Frame(px_per_m=scale, middle_m=(BEYOND_NET_M - HALF_LENGTH_M - BEHIND_M) / 2)
    furthest = max((abs(y) for y in _lengths_m(picture)), default=HALF_LENGTH_M)
    half_m = CLOSE_HALF_M if furthest <= CLOSE_REACH_M else FULL_HALF_M
    return Frame(px_per_m=(FIELD.y1 - FIELD.y0) / (2 * half_m))


def _lengths_m(picture: CourtPicture) -> Iterator[float]:
    for marker in picture.markers:
        yield marker.y_m
    for arrow in picture.arrows:
        yield arrow.from_y_m
        yield arrow.to_y_m
    for zone in picture.zones:
        yield zone.y0_m
        yield zone.y1_m
    for area in picture.areas:
        yield from (y for _, y in area.corners)
    for line in picture.lines:
        yield from (y for _, y in line.points)
