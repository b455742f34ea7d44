"""Draws balls from the side: ground and lines, net, players, the window, the paths, labels."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from matplotlib.axes import Axes
from matplotlib.figure import Figure
from matplotlib.lines import Line2D
from matplotlib.patches import Circle, Polygon

from bot.chat.pictures.frame import FIELD, Box
from bot.chat.pictures.palette import GREEN, INK, OURS, PAPER, THEIRS, Colour, mixed
from bot.chat.pictures.placement import Taken
from bot.chat.pictures.sheet import (
    PT_PER_PX,
    blank,
    measured,
    rectangle,
    write,
    write_title,
)
from bot.chat.pictures.side_labels import (
    FIGURE_PX,
    PATH_PX,
    WIDEST_LABEL_PX,
    SideSheet,
    along_paths,
    body_px,
    pixels,
    write_labels,
)
from bot.chat.pictures.side_layout import (
    AIR,
    MOST_NOTES,
    NOTE_STEP_PX,
    SideFrame,
    side_frame_of,
)
from knowledge.court import HALF_LENGTH_M, KITCHEN_DEPTH_M
from knowledge.side_flights import flown
from knowledge.side_view import SideFigure, SideLevel, SidePath, SideView

GROUND = mixed(INK, 0.10)
KITCHEN = mixed(INK, 0.24)
WINDOW = mixed(GREEN, 0.28)
FIGURE_SHARE = 0.45

LANDING_PX = 28
GROUND_LINE_PX = 6
NET_PX = 12
WINDOW_EDGE_PX = 4
LEVEL_PX = 5
TICK_PX = 14
NAMES_APART_PX = 16

DASHES: Sequence[tuple[float, ...]] = ((), (3.0, 1.6), (1.0, 1.4))
"""Of each path in turn, in widths of the line: told apart without colour."""

LINES = (
    (-HALF_LENGTH_M, "baseline"),
    (-KITCHEN_DEPTH_M, "our line"),
    (0.0, "net"),
    (KITCHEN_DEPTH_M, "their line"),
    (HALF_LENGTH_M, "baseline"),
)
"""Names under the ground; a line that lies outside the picture is not named."""

STRETCH_SAID_FROM = 1.2


def figure_of(view: SideView) -> Figure:
    """The view as a figure whose data coordinates are pixels; flights are worked out here."""
    view = flown(view)
    figure, axes = blank()
    frame = side_frame_of(view)
    sheet = SideSheet(axes=axes, frame=frame, taken=_taken(view, frame))
    _ground(sheet)
    _window(sheet, view)
    for one in view.figures:
        _player(sheet, one)
    _net(sheet, view.net_m)
    for place, path in enumerate(view.paths):
        _path(sheet, path, DASHES[place % len(DASHES)])
    for level in view.levels:
        _level(sheet, level)
    write_labels(sheet, view)
    _notes(axes, view.notes)
    write_title(axes, view.title)
    return figure


def _taken(view: SideView, frame: SideFrame) -> Taken:
    return Taken(
        players=(
            *(body_px(frame, one) for one in view.figures),
            *(Box.around(*pixels(frame, path)[-1], LANDING_PX, LANDING_PX) for path in view.paths),
        ),
        arrows=along_paths(frame, view.paths),
    )


def _ground(sheet: SideSheet) -> None:
    """The ground, the kitchen darker, and what the lines on it are called."""
    frame, low = sheet.frame, AIR.y0 - 26
    rectangle(sheet.axes, Box(x0=FIELD.x0, y0=low, x1=FIELD.x1, y1=AIR.y0), GROUND, 0)
    left, right = (
        min(max(frame.px(side * KITCHEN_DEPTH_M, 0)[0], FIELD.x0), FIELD.x1) for side in (-1, 1)
    )
    rectangle(sheet.axes, Box(x0=left, y0=low, x1=right, y1=AIR.y0), KITCHEN, 1)
    _stroke(sheet.axes, [(FIELD.x0, AIR.y0), (FIELD.x1, AIR.y0)], GROUND_LINE_PX, 4)
    for along, _name in _shown(frame):
        x, _ = frame.px(along, 0)
        _stroke(sheet.axes, [(x, low - TICK_PX), (x, AIR.y0)], GROUND_LINE_PX, 4)
    for x, height, text in _line_names(frame):
        write(sheet.axes, x, low - TICK_PX - height / 2, text)
    if frame.stretch >= STRETCH_SAID_FROM:
        said = f"heights drawn {frame.stretch:.1f} times".replace(".0 ", " ")
        _, (_, height) = measured(said, WIDEST_LABEL_PX)
        write(sheet.axes, (FIELD.x0 + FIELD.x1) / 2, FIELD.y0 + height / 2, said)


def _shown(frame: SideFrame) -> list[tuple[float, str]]:
    return [(along, name) for along, name in LINES if frame.from_m < along < frame.to_m]


def _line_names(frame: SideFrame) -> Iterator[tuple[float, float, str]]:
    """Where each name stands: under its line, or as far out from the net's as keeps them apart."""
    for side in (-1, 1):
        free_from = -math.inf
        for along, name in sorted(_shown(frame), key=lambda one: abs(one[0])):
            if along * side < 0:
                continue
            text, (width, height) = measured(name, WIDEST_LABEL_PX)
            x = min(max(frame.px(along, 0)[0], FIELD.x0 + width / 2), FIELD.x1 - width / 2)
            x = side * max(side * x, free_from + width / 2)
            free_from = side * x + width / 2 + NAMES_APART_PX
            if along or side > 0:
                yield x, height, text


def _stroke(
    axes: Axes,
    places: Sequence[tuple[float, float]],
    width_px: float,
    z: float,
    colour: Colour = INK,
    dashes: tuple[float, ...] = (),
) -> None:
    line = Line2D(
        [x for x, _ in places],
        [y for _, y in places],
        color=colour,
        linewidth=width_px * PT_PER_PX,
        zorder=z,
        solid_capstyle="butt",
        dash_capstyle="butt",
    )
    if dashes:
        line.set_dashes(list(dashes))
    axes.add_line(line)


def _window(sheet: SideSheet, view: SideView) -> None:
    """The room between the lowest and the highest ball that work."""
    if not view.window:
        return
    low = [sheet.frame.px(along, max(0.0, low)) for along, low, _ in view.window]
    high = [sheet.frame.px(along, max(0.0, high)) for along, _, high in view.window]
    sheet.axes.add_patch(
        Polygon(low + high[::-1], closed=True, facecolor=WINDOW, edgecolor="none", zorder=2)
    )
    for edge in (low, high):
        _stroke(sheet.axes, edge, WINDOW_EDGE_PX, 2.5, GREEN)


def _net(sheet: SideSheet, net_m: float) -> None:
    x, top = sheet.frame.px(0, net_m)
    box = Box(x0=x - NET_PX / 2, y0=AIR.y0, x1=x + NET_PX / 2, y1=top)
    rectangle(sheet.axes, box, INK, 5)


def _player(sheet: SideSheet, one: SideFigure) -> None:
    """A plain body, no wider than it is clear: ours round at the head, theirs square."""
    box, colour = body_px(sheet.frame, one), OURS if one.ours else THEIRS
    tint, edge = mixed(colour, FIGURE_SHARE), 3 * PT_PER_PX
    head = Box(x0=box.x0, y0=box.y1 - FIGURE_PX, x1=box.x1, y1=box.y1)
    body = Box(x0=box.x0 + 4, y0=box.y0, x1=box.x1 - 4, y1=head.y0 - 4)
    rectangle(sheet.axes, body, tint, 3).set(edgecolor=INK, linewidth=edge)
    if one.ours:
        centre = ((head.x0 + head.x1) / 2, (head.y0 + head.y1) / 2)
        sheet.axes.add_patch(
            Circle(centre, FIGURE_PX / 2, facecolor=tint, edgecolor=INK, linewidth=edge, zorder=3)
        )
    else:
        rectangle(sheet.axes, head, tint, 3).set(edgecolor=INK, linewidth=edge)


def _path(sheet: SideSheet, path: SidePath, dashes: tuple[float, ...]) -> None:
    colour = OURS if path.ours else THEIRS
    places = pixels(sheet.frame, path)
    _stroke(sheet.axes, places, PATH_PX + 5, 6, PAPER)
    _stroke(sheet.axes, places, PATH_PX, 6.5, colour, dashes)
    if path.lands_in is not None:
        _landing(sheet, places[-1], colour, lands_in=path.lands_in)


def _landing(
    sheet: SideSheet, place: tuple[float, float], colour: Colour, *, lands_in: bool
) -> None:
    """In: a full disc; out: a cross."""
    x, y = place
    half = LANDING_PX / 2
    if lands_in:
        disc = Circle(place, half, facecolor=colour, edgecolor=INK, zorder=7)
        disc.set_linewidth(3 * PT_PER_PX)
        sheet.axes.add_patch(disc)
        return
    for sign in (1, -1):
        ends = [(x - half, y - sign * half), (x + half, y + sign * half)]
        _stroke(sheet.axes, ends, 12, 7, PAPER)
        _stroke(sheet.axes, ends, 7, 7.5, INK)


def _level(sheet: SideSheet, level: SideLevel) -> None:
    x, y = sheet.frame.px(level.along_m, level.height_m)
    _stroke(sheet.axes, [(x - FIGURE_PX, y), (x + FIGURE_PX, y)], LEVEL_PX, 7)


def _notes(axes: Axes, notes: Sequence[str]) -> None:
    for place, note in enumerate(notes[:MOST_NOTES]):
        text, _ = measured(note, FIELD.x1 - FIELD.x0)
        write(axes, (FIELD.x0 + FIELD.x1) / 2, FIELD.y1 - (place + 0.5) * NOTE_STEP_PX, text)
