"""Puts the labels of a picture from the side: where each may stand, and what it keeps off."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from matplotlib.axes import Axes

from bot.chat.pictures.frame import Box
from bot.chat.pictures.palette import GREEN, INK, OURS, THEIRS, Colour
from bot.chat.pictures.placement import GAP_PX, Taken, best_place
from bot.chat.pictures.sheet import measured, write_label
from bot.chat.pictures.side_layout import SideFrame
from knowledge.dataclass import dataclass
from knowledge.side_view import SideFigure, SidePath, SideView

PATH_PX = 8
FIGURE_PX = 34
WIDEST_LABEL_PX = 380

WINDOW_LABEL_SHARE = 0.28
"""How far below the window's upper edge its label sits."""

_ALONG_A_PATH = (0.75, 0.65, 0.85, 0.55, 0.45, 0.35, 0.25, 0.15)
"""Where along a path its label may sit: first near the end, where paths lie furthest apart."""


@dataclass(slots=True, kw_only=True)
class SideSheet:
    """The picture being drawn and what later labels must keep off."""

    axes: Axes
    frame: SideFrame
    taken: Taken


def along_paths(frame: SideFrame, paths: Sequence[SidePath]) -> tuple[Box, ...]:
    """Small boxes that stand for the paths."""
    places = (place for path in paths for place in pixels(frame, path))
    return tuple(Box.around(x, y, PATH_PX, PATH_PX) for x, y in places)


def pixels(frame: SideFrame, path: SidePath) -> list[tuple[float, float]]:
    return [frame.px(along, max(0.0, height)) for along, height in path.places]


def body_px(frame: SideFrame, one: SideFigure) -> Box:
    x, foot = frame.px(one.along_m, 0)
    _, head = frame.px(one.along_m, one.stature_m)
    return Box(x0=x - FIGURE_PX / 2, y0=foot, x1=x + FIGURE_PX / 2, y1=head)


def write_labels(sheet: SideSheet, view: SideView) -> None:
    """Levels first, as theirs have the fewest places, then the window, players and paths."""
    for level in view.levels:
        text, size = measured(level.label, WIDEST_LABEL_PX)
        place = sheet.frame.px(level.along_m, level.height_m)
        off_paths = replace(sheet.taken, arrows=())  # a height is named where it is
        outwards = 1 if level.along_m > 0 else -1
        box = best_place(_beside(place, size, outwards=outwards), off_paths)
        _write(sheet, text, iter([box]), INK)
    if view.window and view.window_label:
        text, size = measured(view.window_label, WIDEST_LABEL_PX)
        _write(sheet, text, _within(sheet.frame, view.window, size), GREEN)
    for one in view.figures:
        text, size = measured(one.label, WIDEST_LABEL_PX)
        box = body_px(sheet.frame, one)
        _write(sheet, text, _above((box.x0 + box.x1) / 2, box.y1, size), _edge(ours=one.ours))
    for path in view.paths:
        text, size = measured(path.label, WIDEST_LABEL_PX)
        others = [one for one in view.paths if one is not path]
        sheet.taken = replace(sheet.taken, arrows=along_paths(sheet.frame, others))
        _write(sheet, text, _upon(sheet.frame, path, size), _edge(ours=path.ours))


def _edge(*, ours: bool) -> Colour:
    return OURS if ours else THEIRS


def _beside(
    place: tuple[float, float], size: tuple[float, float], *, outwards: int
) -> Iterator[Box]:
    """To either side of a place, away from the net first: there the fewest balls fly."""
    aside = FIGURE_PX + GAP_PX + size[0] / 2
    for up in (0.0, 1.0, -1.0):
        for side in (1, -1):
            yield Box.around(place[0] + side * outwards * aside, place[1] + up * size[1], *size)


def _above(x: float, top: float, size: tuple[float, float]) -> Iterator[Box]:
    for step in (0.5, 1.6):
        y = top + GAP_PX + step * size[1]
        yield Box.around(x, y, *size)
        for side in (-1, 1):
            yield Box.around(x + side * size[0] / 2, y, *size)


def _within(
    frame: SideFrame, window: Sequence[tuple[float, float, float]], size: tuple[float, float]
) -> Iterator[Box]:
    """In the upper part of the band, first where it is widest."""
    for along, low, high in sorted(window, key=lambda row: row[1] - row[2]):
        yield Box.around(*frame.px(along, high - WINDOW_LABEL_SHARE * (high - low)), *size)


def _upon(frame: SideFrame, path: SidePath, size: tuple[float, float]) -> Iterator[Box]:
    """Upon the path itself, as heights stand on a map: then no two paths share a label."""
    places = pixels(frame, path)
    for share in _ALONG_A_PATH:
        yield Box.around(*places[round(share * (len(places) - 1))], *size)


def _write(sheet: SideSheet, text: str, places: Iterator[Box], edge: Colour) -> None:
    """The label, if there is one; later ones keep off it."""
    if not text:
        return
    box = best_place(places, sheet.taken)
    write_label(sheet.axes, text, box, edge)
    sheet.taken = sheet.taken.with_label(box)
