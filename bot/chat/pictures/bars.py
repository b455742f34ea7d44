"""Draws a sheet of bars: what of a player helps us, what hurts us, and how sure we are."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from types import MappingProxyType

from matplotlib.axes import Axes
from matplotlib.figure import Figure
from matplotlib.lines import Line2D
from matplotlib.patches import Circle, Patch, Rectangle

from bot.chat.pictures.bars_layout import (
    COUNTS_X0_PX,
    EVEN_PX,
    LEFT_PX,
    RIGHT_PX,
    TRACK_PX,
    TRACK_X0_PX,
    TRACK_X1_PX,
    Heading,
    Row,
    layout_of,
    level_px,
    pieces,
)
from bot.chat.pictures.frame import Box
from bot.chat.pictures.lettering import LABEL_PT, PAD_PX, TITLE_PT, cut, drawable, extent_px
from bot.chat.pictures.palette import (
    INK,
    OUR_SIDE,
    OURS,
    PAPER,
    THEIR_SIDE,
    THEIRS,
    YELLOW,
    Colour,
)
from bot.chat.pictures.quick_text import write_left
from bot.chat.pictures.sheet import (
    PT_PER_PX,
    blank,
    measured,
    rectangle,
    write_title,
)
from knowledge.trait_bars import BarGroup, SheetFact, TraitBar, TraitBars

HEADINGS: Mapping[BarGroup, str] = MappingProxyType(
    {
        BarGroup.HELPS: "Use this, best first",
        BarGroup.HURTS: "Respect this, worst first",
        BarGroup.UNKNOWN: "Not known yet",
    }
)
HURTS = "hurts us"
HELPS = "helps us"

EVEN_LINE_PX = 4
RULE_PX = 3
EDGE_PX = 3
MARK_PX = 36
SQUARE_SHARE = 0.88
"""Of a circle's breadth: a square of the same breadth looks larger."""
SIDE_SYMBOL_PX = 26
TAG_PX = 40


def figure_of(sheet: TraitBars) -> Figure:
    """The sheet as a figure whose data coordinates are pixels."""
    figure, axes = blank()
    layout = layout_of(sheet)
    for fact, y in zip(sheet.facts, layout.facts_y, strict=True):
        _fact(axes, fact, y)
    _sides(axes, layout.sides_y)
    for heading in layout.headings:
        _heading(axes, heading)
    for row in layout.rows:
        _row(axes, row)
    _write_left(axes, LEFT_PX, layout.foot_y, sheet.range_words, RIGHT_PX - LEFT_PX)
    write_title(axes, sheet.title)
    return figure


def _fact(axes: Axes, fact: SheetFact, y: float) -> None:
    write = _tagged if fact.contradicted else _write_left
    write(axes, LEFT_PX, y, fact.words, RIGHT_PX - LEFT_PX)


def _sides(axes: Axes, y: float) -> None:
    """What lies to the left and to the right, by place, word, shape and colour."""
    for x, word, helps in (
        ((TRACK_X0_PX + EVEN_PX) / 2, HURTS, False),
        ((EVEN_PX + TRACK_X1_PX) / 2, HELPS, True),
    ):
        text, (width, _) = measured(word, EVEN_PX - TRACK_X0_PX - SIDE_SYMBOL_PX)
        write_left(axes, x + (SIDE_SYMBOL_PX - width) / 2 + PAD_PX, y, text)
        axes.add_patch(_symbol(x - width / 2, y, SIDE_SYMBOL_PX, helps=helps))


def _heading(axes: Axes, heading: Heading) -> None:
    """A group's name, and a rule up to the edge."""
    width = _write_left(
        axes, LEFT_PX, heading.y, HEADINGS[heading.group], RIGHT_PX - LEFT_PX, TITLE_PT
    )
    _stroke(axes, [(LEFT_PX + width + 2 * PAD_PX, heading.y), (RIGHT_PX, heading.y)], 2, RULE_PX)


def _row(axes: Axes, row: Row) -> None:
    _write_left(axes, LEFT_PX, row.label_y, _label(row.bar), RIGHT_PX - LEFT_PX)
    if row.is_line:
        return
    _track(axes, row)
    _range(axes, row)
    _mark(axes, row)
    write = _tagged if row.bar.contradicted else _write_left
    write(axes, COUNTS_X0_PX, row.y, _counts(row.bar), RIGHT_PX - COUNTS_X0_PX)


def _label(bar: TraitBar) -> str:
    """Whose trait it is; where that is too wide, the name is cut and not what is said."""
    widest = RIGHT_PX - LEFT_PX
    told = replace(bar, who=drawable(bar.who), words=drawable(bar.words))
    if not told.who or extent_px(told.in_full, LABEL_PT)[0] <= widest:
        return told.in_full
    room = widest - extent_px(f": {told.words}", LABEL_PT)[0]
    return replace(told, who=cut(told.who, room, LABEL_PT)).in_full


def _track(axes: Axes, row: Row) -> None:
    """The ground of a bar: all levels there are, hurting to the left, helping to the right."""
    track = row.track
    rectangle(axes, Box(x0=track.x0, y0=track.y0, x1=EVEN_PX, y1=track.y1), THEIR_SIDE, 0)
    rectangle(axes, Box(x0=EVEN_PX, y0=track.y0, x1=track.x1, y1=track.y1), OUR_SIDE, 0)
    _stroke(axes, [(EVEN_PX, track.y0 - 5), (EVEN_PX, track.y1 + 5)], 6, EVEN_LINE_PX)


def _range(axes: Axes, row: Row) -> None:
    """How far it may lie: in full where something rests on it, else only its outline."""
    for x0, x1, helps in pieces(row.bar):
        full = OURS if helps else THEIRS
        axes.add_patch(
            Rectangle(
                (x0, row.track.y0),
                x1 - x0,
                TRACK_PX,
                facecolor=full if row.bar.settles else PAPER,
                edgecolor=INK,
                linewidth=EDGE_PX * PT_PER_PX,
                linestyle="solid" if row.bar.settles else (0, (3, 2)),
                zorder=4,
            )
        )


def _mark(axes: Axes, row: Row) -> None:
    """Where it most likely lies: round on our side, square on theirs."""
    helps = row.bar.group is BarGroup.HELPS
    symbol = _symbol(level_px(row.bar.level), row.y, MARK_PX, helps=helps)
    symbol.set(facecolor=PAPER, zorder=8, linewidth=5 * PT_PER_PX)
    axes.add_patch(symbol)


def _counts(bar: TraitBar) -> str:
    """What stands behind it, in the fullest form that there is room for."""
    widest = RIGHT_PX - COUNTS_X0_PX - (2 * PAD_PX if bar.contradicted else 0)
    counts = [drawable(text) for text in bar.counts]
    fitting = (text for text in counts if extent_px(text, LABEL_PT)[0] <= widest)
    return next(fitting, counts[-1] if counts else "")


def _tagged(axes: Axes, x0: float, y: float, text: str, widest_px: float) -> None:
    """Notes that contradict each other: in a tag that nobody overlooks."""
    shown, (width, _) = measured(text, widest_px - 2 * PAD_PX)
    tag = Box(x0=x0, y0=y - TAG_PX / 2, x1=x0 + width, y1=y + TAG_PX / 2)
    rectangle(axes, tag, YELLOW, 4).set(edgecolor=INK, linewidth=EDGE_PX * PT_PER_PX)
    write_left(axes, x0 + PAD_PX, y, shown)


def _write_left(
    axes: Axes, x0: float, y: float, text: str, widest_px: float, points: float = LABEL_PT
) -> float:
    """Text that begins at a place, cut where it is wider; its width comes back."""
    shown, _ = measured(text, widest_px, points)
    width = extent_px(shown, points)[0]
    if shown:
        write_left(axes, x0, y, shown, points)
    return width


def _symbol(x: float, y: float, size: float, *, helps: bool) -> Patch:
    """What helps us is round, what hurts is square, as our side and theirs on the court."""
    half = size * SQUARE_SHARE / 2
    shape: Patch = (
        Circle((x, y), size / 2) if helps else Rectangle((x - half, y - half), 2 * half, 2 * half)
    )
    shape.set(
        facecolor=OURS if helps else THEIRS,
        edgecolor=INK,
        linewidth=EDGE_PX * PT_PER_PX,
        zorder=8,
    )
    return shape


def _stroke(
    axes: Axes,
    places: Sequence[tuple[float, float]],
    z: float,
    width_px: float,
    colour: Colour = INK,
) -> None:
    axes.add_line(
        Line2D(
            [x for x, _ in places],
            [y for _, y in places],
            color=colour,
            linewidth=width_px * PT_PER_PX,
            solid_capstyle="butt",
            zorder=z,
        )
    )
