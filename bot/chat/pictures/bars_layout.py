"""Where the rows of a sheet of bars lie, in pixels.

A row is two lines: what is said of whom, and under it the bar with what stands behind it. The
even line is in the middle of all bars; to the right of it lies what helps us, as on the curve
of a match.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import groupby

from bot.chat.pictures.frame import FIELD, Box
from bot.chat.pictures.lettering import LABEL_PT, extent_px
from knowledge.dataclass import dataclass
from knowledge.trait_bars import BarGroup, TraitBar, TraitBars

LEFT_PX = FIELD.x0 + 24
TRACK_X0_PX = LEFT_PX
TRACK_X1_PX = 520.0
EVEN_PX = (TRACK_X0_PX + TRACK_X1_PX) / 2
COUNTS_X0_PX = TRACK_X1_PX + 26
"""Right of a bar: how many notes and rallies stand behind it."""

RIGHT_PX = FIELD.x1 - 12

FACT_LINE_PX = 40
SIDES_PX = 50
FOOT_PX = 44
HEADING_PX = 50
TALLEST_ROW_PX = 104.0
TRACK_PX = 26
LABEL_ABOVE_PX = 7
"""Between a label's foot and its bar: nearer than to the bar before."""

UNDER_TRACK_PX = 12

LINE_PX = 40
"""Of what is not known there is only the name."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """A bar of the sheet and the middle of its track, its label above; or only a line of words."""

    bar: TraitBar
    y: float
    is_line: bool = False

    @property
    def track(self) -> Box:
        return Box(
            x0=TRACK_X0_PX, y0=self.y - TRACK_PX / 2, x1=TRACK_X1_PX, y1=self.y + TRACK_PX / 2
        )

    @property
    def label_y(self) -> float:
        if self.is_line:
            return self.y
        return self.track.y1 + LABEL_ABOVE_PX + extent_px("", LABEL_PT)[1] / 2


@dataclass(frozen=True, slots=True, kw_only=True)
class Heading:
    """The name of a group and the middle of its line."""

    group: BarGroup
    y: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Layout:
    """Everything of a sheet in its place, from the top."""

    facts_y: tuple[float, ...]
    sides_y: float
    headings: tuple[Heading, ...]
    rows: tuple[Row, ...]
    foot_y: float


def layout_of(sheet: TraitBars) -> Layout:
    """The rows as tall as there is room for, but no taller than reads as one sheet."""
    top = FIELD.y1
    facts_y = tuple(top - FACT_LINE_PX * (n + 0.5) for n in range(len(sheet.facts)))
    top -= FACT_LINE_PX * len(sheet.facts)
    sides_y = top - SIDES_PX / 2
    top -= SIDES_PX
    groups = [(group, list(bars)) for group, bars in groupby(sheet.bars, lambda one: one.group)]
    room = top - FIELD.y0 - FOOT_PX - HEADING_PX * len(groups)
    lines = sum(_is_line(bar) for bar in sheet.bars)
    tall = min(TALLEST_ROW_PX, (room - lines * LINE_PX) / max(1, len(sheet.bars) - lines))
    headings, rows = _placed(groups, top, tall)
    return Layout(
        facts_y=facts_y,
        sides_y=sides_y,
        headings=headings,
        rows=rows,
        foot_y=FIELD.y0 + FOOT_PX / 2,
    )


def _placed(
    groups: list[tuple[BarGroup, list[TraitBar]]], top: float, tall: float
) -> tuple[tuple[Heading, ...], tuple[Row, ...]]:
    headings, rows = [], []
    for group, bars in groups:
        headings.append(Heading(group=group, y=top - HEADING_PX / 2))
        top -= HEADING_PX
        for bar in bars:
            top -= LINE_PX if _is_line(bar) else tall
            y = top + (LINE_PX / 2 if _is_line(bar) else UNDER_TRACK_PX + TRACK_PX / 2)
            rows.append(Row(bar=bar, y=y, is_line=_is_line(bar)))
    return tuple(headings), tuple(rows)


def _is_line(bar: TraitBar) -> bool:
    return bar.group is BarGroup.UNKNOWN


def level_px(level: float) -> float:
    """Where a level lies across a track."""
    return EVEN_PX + level * (TRACK_X1_PX - TRACK_X0_PX) / 2


def pieces(bar: TraitBar) -> Iterator[tuple[float, float, bool]]:
    """The range from its lower end: what of it hurts us, and what helps (True)."""
    if bar.low < 0:
        yield level_px(bar.low), level_px(min(0.0, bar.high)), False
    if bar.high > 0:
        yield level_px(max(0.0, bar.low)), level_px(bar.high), True
