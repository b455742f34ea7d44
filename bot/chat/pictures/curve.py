"""Draws a chance curve: two sides, the line between them, the heavy rallies and the games."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from types import MappingProxyType

from matplotlib.axes import Axes
from matplotlib.figure import Figure
from matplotlib.lines import Line2D
from matplotlib.patches import Circle, Patch, Polygon, Rectangle

from bot.chat.pictures.curve_layout import (
    CHART,
    EVEN_X_PX,
    MARGIN,
    NOTE_GAP_PX,
    WIDEST_NOTE_PX,
    chance_x_px,
    note_height_px,
    notes_that_fit,
    row_edges_px,
    spread,
)
from bot.chat.pictures.frame import FIELD, Box
from bot.chat.pictures.lettering import PAD_PX, TITLE_PT
from bot.chat.pictures.palette import INK, OUR_SIDE, OURS, PAPER, THEIR_SIDE, THEIRS, Colour
from bot.chat.pictures.sheet import (
    PT_PER_PX,
    blank,
    measured,
    rectangle,
    write,
    write_label,
    write_title,
)
from knowledge.advice import ChanceCurve, CurveMark
from knowledge.dataclass import dataclass

_EDGES: Mapping[bool | None, Colour] = MappingProxyType({True: OURS, False: THEIRS, None: INK})

TICKS = ((0.1, "1 in 10"), (0.5, "even"), (0.9, "9 in 10"))
SIDES = ((0.25, "theirs"), (0.75, "ours"))
HEAVY = "heavy rallies"
MISSED = "otherwise"
SIDES_ABOVE_PX = 78
TICKS_ABOVE_PX = 28
SIDE_SYMBOL_PX = 26
SYMBOL_GAP_PX = 5

EVEN_LINE_PX = 4
TICK_LINE_PX = 2
GAME_LINE_PX = 4
LEADER_PX = 3
THINNEST_LINE_PX = 2.5
THICKEST_LINE_PX = 9.0
LINE_OF_ROW = 0.35
"""So much of a row's height, so that single rallies never run together."""

STAKE_PX = 7
MARK_PX = 26
MISSED_PX = 18
SQUARE_SHARE = 0.92
"""Of a circle's breadth: a square of the same breadth looks larger."""
NOW_GAP_PX = 22


@dataclass(frozen=True, slots=True, kw_only=True)
class _Note:
    """A note in the margin: its text, the place it speaks of, and its edge's colour."""

    text: str
    x: float
    y: float
    edge: Colour


def figure_of(curve: ChanceCurve) -> Figure:
    """The curve as a figure whose data coordinates are pixels."""
    figure, axes = blank()
    edges = row_edges_px(curve)
    _sides(axes)
    _line(axes, curve, edges)
    for game in curve.games:
        _stroke(axes, [(CHART.x0, edges[game.point + 1]), (CHART.x1, edges[game.point + 1])], 4.5)
    for mark in curve.marks:
        _mark(axes, curve, mark, edges[mark.point])
    if curve.marks:
        _heavy_heading(axes)
    _notes(axes, _noted(curve, edges))
    _now(axes, curve, edges[-1])
    write_title(axes, curve.title)
    return figure


def _sides(axes: Axes) -> None:
    """Both sides by place, word, shape and colour, and what the lines down the page mean."""
    left = Box(x0=CHART.x0, y0=CHART.y0, x1=EVEN_X_PX, y1=CHART.y1)
    right = Box(x0=EVEN_X_PX, y0=CHART.y0, x1=CHART.x1, y1=CHART.y1)
    rectangle(axes, left, THEIR_SIDE, 0)
    rectangle(axes, right, OUR_SIDE, 0)
    for (chance, word), ours in zip(SIDES, (False, True), strict=True):
        x, y = chance_x_px(chance), CHART.y1 + SIDES_ABOVE_PX
        text, (width, _) = measured(word, WIDEST_NOTE_PX, TITLE_PT)
        write(axes, x + SIDE_SYMBOL_PX / 2, y, text, TITLE_PT)
        axes.add_patch(_symbol(x - width / 2, y, SIDE_SYMBOL_PX, ours=ours))
    for chance, word in TICKS:
        x = chance_x_px(chance)
        write(axes, x, CHART.y1 + TICKS_ABOVE_PX, word)
        _stroke(axes, [(x, CHART.y0), (x, CHART.y1)], 3, TICK_LINE_PX)


def _heavy_heading(axes: Axes) -> None:
    """Over the margin: what its notes are, and what a hollow end stands for."""
    text, (width, _) = measured(HEAVY, WIDEST_NOTE_PX)
    write(axes, MARGIN.x0 + width / 2, CHART.y1 + SIDES_ABOVE_PX, text)
    x, y = MARGIN.x0 + PAD_PX, CHART.y1 + TICKS_ABOVE_PX
    for ours in (False, True):
        axes.add_patch(_symbol(x + MISSED_PX / 2, y, MISSED_PX, ours=ours, hollow=True))
        x += MISSED_PX + SYMBOL_GAP_PX
    text, (width, _) = measured(MISSED, WIDEST_NOTE_PX)
    write(axes, x + width / 2, y, text)


def _symbol(x: float, y: float, size: float, *, ours: bool, hollow: bool = False) -> Patch:
    """Ours round, theirs square, as on the court; hollow for what did not happen."""
    half = size * SQUARE_SHARE / 2
    shape: Patch = (
        Circle((x, y), size / 2) if ours else Rectangle((x - half, y - half), 2 * half, 2 * half)
    )
    full = OURS if ours else THEIRS
    shape.set(facecolor=PAPER if hollow else full, edgecolor=INK, linewidth=3 * PT_PER_PX, zorder=8)
    return shape


def _stroke(
    axes: Axes,
    places: Sequence[tuple[float, float]],
    z: float,
    width_px: float = GAME_LINE_PX,
    colour: Colour = INK,
) -> None:
    axes.add_line(
        Line2D(
            [x for x, _ in places],
            [y for _, y in places],
            color=colour,
            linewidth=width_px * PT_PER_PX,
            solid_capstyle="butt",
            solid_joinstyle="miter",
            zorder=z,
        )
    )


def _line(axes: Axes, curve: ChanceCurve, edges: Sequence[float]) -> None:
    """The steps, filled to the even line in the colour of the side they lie on."""
    _stroke(axes, [(EVEN_X_PX, CHART.y0), (EVEN_X_PX, CHART.y1)], 3.5, EVEN_LINE_PX)
    steps = [
        (chance_x_px(chance), y)
        for place, chance in enumerate(curve.points)
        for y in edges[place : place + 2]
    ]
    if not steps:
        return
    for colour, limit in ((THEIRS, min), (OURS, max)):
        side = [(limit(x, EVEN_X_PX), y) for x, y in steps]
        corners = [(EVEN_X_PX, edges[0]), *side, (EVEN_X_PX, edges[-1])]
        axes.add_patch(Polygon(corners, closed=True, facecolor=colour, edgecolor="none", zorder=2))
    _stroke(axes, steps, 4, _line_px(edges))


def _line_px(edges: Sequence[float]) -> float:
    row = (edges[0] - edges[-1]) / (len(edges) - 1)
    return max(THINNEST_LINE_PX, min(LINE_OF_ROW * row, THICKEST_LINE_PX))


def _mark(axes: Axes, curve: ChanceCurve, mark: CurveMark, y: float) -> None:
    """What was at stake, from end to end: full where the rally led, hollow where it might have."""
    happened, missed = chance_x_px(curve.points[mark.point]), chance_x_px(mark.otherwise)
    _stroke(axes, [(missed, y), (happened, y)], 6, STAKE_PX + 6, PAPER)
    _stroke(axes, [(missed, y), (happened, y)], 6.5, STAKE_PX)
    axes.add_patch(_symbol(missed, y, MISSED_PX, ours=not mark.won_by_us, hollow=True))
    axes.add_patch(_symbol(happened, y, MARK_PX, ours=mark.won_by_us))


def _noted(curve: ChanceCurve, edges: Sequence[float]) -> list[_Note]:
    """The notes, from the lowest upwards; heavy rallies come before games where room is short."""
    marks = [
        _Note(
            text=mark.label,
            x=max(chance_x_px(curve.points[mark.point]), chance_x_px(mark.otherwise)),
            y=edges[mark.point],
            edge=_EDGES[mark.won_by_us],
        )
        for mark in curve.marks
    ]
    games = [
        _Note(text=game.label, x=CHART.x1, y=edges[game.point + 1], edge=_EDGES[game.won_by_us])
        for game in curve.games
    ]
    return sorted([*marks, *games][: notes_that_fit()], key=lambda note: note.y)


def _notes(axes: Axes, notes: Sequence[_Note]) -> None:
    height = note_height_px()
    low, high = MARGIN.y0 + height / 2, MARGIN.y1 - height / 2
    step = height + NOTE_GAP_PX
    middles = spread([note.y for note in notes], step=step, low=low, high=high)
    for note, middle in zip(notes, middles, strict=True):
        text, (width, _) = measured(note.text, WIDEST_NOTE_PX)
        _stroke(axes, [(note.x, note.y), (CHART.x1, note.y), (MARGIN.x0, middle)], 5, LEADER_PX)
        box = Box(
            x0=MARGIN.x0, y0=middle - height / 2, x1=MARGIN.x0 + width, y1=middle + height / 2
        )
        write_label(axes, text, box, note.edge)


def _now(axes: Axes, curve: ChanceCurve, foot: float) -> None:
    """The last of it, in large words under the end of the line."""
    x = chance_x_px(curve.points[-1]) if curve.points else EVEN_X_PX
    text, (width, height) = measured(curve.now, CHART.x1 - CHART.x0, TITLE_PT)
    if not text:
        return
    left = max(FIELD.x0, min(x - width / 2, MARGIN.x0 - NOTE_GAP_PX - width))
    top = foot - NOW_GAP_PX
    box = Box(x0=left, y0=top - height, x1=left + width, y1=top)
    _stroke(axes, [(x, foot), (x, top)], 5)
    write_label(axes, text, box, INK, TITLE_PT)
