"""Arrows as polygons: a ball's lane with its share as width, a player's move as dashes."""

from __future__ import annotations

import math

from bot.chat.pictures.frame import Frame
from knowledge.court_picture import Arrow
from knowledge.dataclass import dataclass

Place = tuple[float, float]
"""A pixel."""

THINNEST_PX = 9.0
THICKEST_PX = 28.0
MOVE_PX = 9.0
START_GAP_PX = 34.0
"""A lane starts clear of the player who hits it."""

HEAD_BASE_PX = 14.0
HEAD_PER_WIDTH = 1.25
"""Half the head's breadth: a base plus this times the shaft's width."""

HEAD_LENGTH = 1.6
"""Of half the head's breadth."""

DASH_PX = 16.0
DASH_GAP_PX = 10.0


def is_move(arrow: Arrow) -> bool:
    """A lane that stays on one side of the net is a player's move, not a ball."""
    return arrow.from_y_m * arrow.to_y_m > 0


def width_px(arrow: Arrow) -> float:
    """Thickness of the shaft: the arrow's share of the balls."""
    if is_move(arrow):
        return MOVE_PX
    return THINNEST_PX + min(1.0, max(0.0, arrow.width)) * (THICKEST_PX - THINNEST_PX)


def ends(frame: Frame, arrow: Arrow) -> tuple[Place, Place]:
    """Start and tip in pixels."""
    return (
        frame.px(arrow.from_x_m, arrow.from_y_m),
        frame.px(arrow.to_x_m, arrow.to_y_m),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Along:
    """Coordinates along an arrow: pixels from its start, and to its left."""

    start: Place
    dx: float
    dy: float
    length: float

    def at(self, along: float, left: float) -> Place:
        x, y = self.start
        return x + along * self.dx - left * self.dy, y + along * self.dy + left * self.dx


def polygons(frame: Frame, arrow: Arrow) -> list[list[Place]]:
    """The arrow's outlines: one for a ball; dashes and a head for a move; none without length."""
    start, end = ends(frame, arrow)
    length = math.dist(start, end)
    if length == 0:
        return []
    along = _Along(
        start=start,
        dx=(end[0] - start[0]) / length,
        dy=(end[1] - start[1]) / length,
        length=length,
    )
    half = width_px(arrow) / 2
    head = HEAD_BASE_PX + HEAD_PER_WIDTH * half
    neck = max(0.0, length - HEAD_LENGTH * head)
    first = min(START_GAP_PX, neck)
    if is_move(arrow):
        return [*_dashes(along, first, neck, half), _head(along, neck, head)]
    shaft_left = [along.at(first, half), along.at(neck, half)]
    shaft_right = [along.at(neck, -half), along.at(first, -half)]
    return [[*shaft_left, *_head(along, neck, head), *shaft_right]]


def _head(along: _Along, neck: float, head: float) -> list[Place]:
    return [along.at(neck, head), along.at(along.length, 0), along.at(neck, -head)]


def _dashes(along: _Along, first: float, neck: float, half: float) -> list[list[Place]]:
    dashes = []
    at = first
    while at < neck:
        to = min(at + DASH_PX, neck)
        corners = ((at, half), (to, half), (to, -half), (at, -half))
        dashes.append([along.at(*corner) for corner in corners])
        at += DASH_PX + DASH_GAP_PX
    return dashes
