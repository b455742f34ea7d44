"""A blank picture in pixels, and what every picture is made of: boxes, labels and a title."""

from __future__ import annotations

from matplotlib.axes import Axes
from matplotlib.figure import Figure
from matplotlib.lines import Line2D
from matplotlib.patches import FancyBboxPatch, Patch, Rectangle

from bot.chat.pictures.frame import FIELD, HEIGHT_PX, TITLE_PX, WIDTH_PX, Box
from bot.chat.pictures.lettering import (
    DPI,
    LABEL_PT,
    PAD_PX,
    cut,
    drawable,
    extent_px,
    font,
    title_lines,
)
from bot.chat.pictures.palette import INK, PAPER, Colour

PT_PER_PX = 72 / DPI

LABEL_Z = 9


class _Page(Axes):
    """Axes of fixed limits: what is added moves none, so nothing is measured to find new ones."""

    def add_patch(self, p: Patch) -> Patch:
        self.add_artist(p)
        return p

    def add_line(self, line: Line2D) -> Line2D:
        self.add_artist(line)
        return line


def blank() -> tuple[Figure, Axes]:
    """A figure of a phone's shape whose data coordinates are pixels, y upwards."""
    figure = Figure(figsize=(WIDTH_PX / DPI, HEIGHT_PX / DPI), dpi=DPI, facecolor=PAPER)
    axes = figure.add_axes(_Page(figure, (0.0, 0.0, 1.0, 1.0)))
    axes.set_xlim(0, WIDTH_PX)
    axes.set_ylim(0, HEIGHT_PX)
    axes.set_axis_off()
    return figure, axes


def rectangle(axes: Axes, box: Box, colour: Colour, z: float) -> Rectangle:
    """A filled box without an edge."""
    patch = Rectangle(
        (box.x0, box.y0),
        box.x1 - box.x0,
        box.y1 - box.y0,
        facecolor=colour,
        edgecolor="none",
        zorder=z,
    )
    axes.add_patch(patch)
    return patch


def measured(
    label: str, widest_px: float, points: float = LABEL_PT
) -> tuple[str, tuple[float, float]]:
    """What is written, cut where it is wider, and the size of its box."""
    text = cut(drawable(label), widest_px, points)
    width, height = extent_px(text, points)
    return text, (width + 2 * PAD_PX, height + 2 * PAD_PX)


def write_label(axes: Axes, text: str, box: Box, edge: Colour, points: float = LABEL_PT) -> None:
    """A label in a box of its own, so that what lies under it never weakens its contrast."""
    axes.add_patch(
        FancyBboxPatch(
            (box.x0, box.y0),
            box.x1 - box.x0,
            box.y1 - box.y0,
            boxstyle="round,pad=0,rounding_size=9",
            facecolor=PAPER,
            edgecolor=edge,
            linewidth=3 * PT_PER_PX,
            zorder=LABEL_Z,
        )
    )
    write(axes, (box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2, text, points)


def write(axes: Axes, x: float, y: float, text: str, points: float = LABEL_PT) -> None:
    """Text centred on a place."""
    axes.text(
        x,
        y,
        text,
        fontproperties=font(points),
        color=INK,
        ha="center",
        va="center",
        zorder=LABEL_Z + 1,
        parse_math=False,
    )


def write_title(axes: Axes, title: str) -> None:
    """At most two lines in the band at the top."""
    widest = FIELD.x1 - FIELD.x0 - 2 * PAD_PX
    lines, points = title_lines(drawable(title), widest)
    step = TITLE_PX / (len(lines) + 1) if lines else 0
    for place, line in enumerate(lines, start=1):
        write(axes, WIDTH_PX / 2, HEIGHT_PX - place * step, line, points)
