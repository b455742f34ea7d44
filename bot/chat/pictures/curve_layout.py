"""Where a chance curve's rows, places and margin notes lie, in pixels.

Time runs down the page as on a sheet that is filled in, and a rally pulls the line sideways:
to the right towards us, to the left towards them. So the page is as long as a match is, every
note has the whole margin beside its rally, and a side is a side and not a height.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import accumulate

from bot.chat.pictures.frame import FIELD, Box
from bot.chat.pictures.lettering import LABEL_PT, PAD_PX, extent_px
from knowledge.advice import ChanceCurve

HEADING_PX = 104
"""Above the chart: whose side is which, and how much the lines mean."""

CHART = Box(x0=36, y0=FIELD.y0 + 96, x1=556, y1=FIELD.y1 - HEADING_PX)
"""Across, 0 to 1; down, from the first rally to the last. Below it the last chance in words."""

MARGIN = Box(x0=588, y0=FIELD.y0, x1=FIELD.x1, y1=CHART.y1)
"""The notes' column."""

WIDEST_NOTE_PX = MARGIN.x1 - MARGIN.x0 - 2 * PAD_PX
NOTE_GAP_PX = 6

TALLEST_ROW_PX = 32.0
"""So that a match just begun leaves the page open for what is to come."""

MARKED_ROW_PX = 30.0
"""Rows beside a heavy rally are at least so tall, so that neighbours stay apart."""


def chance_x_px(chance: float) -> float:
    """Where a chance lies across the chart."""
    return CHART.x0 + chance * (CHART.x1 - CHART.x0)


EVEN_X_PX = chance_x_px(0.5)


def row_edges_px(curve: ChanceCurve) -> tuple[float, ...]:
    """Downwards, the top of each point's row and the foot of the last one."""
    return tuple(accumulate((-tall for tall in _heights_px(curve)), initial=CHART.y1))


def _heights_px(curve: ChanceCurve) -> Sequence[float]:
    count, room = len(curve.points), CHART.y1 - CHART.y0
    even = min(TALLEST_ROW_PX, room / max(1, count))
    marked = _rows_beside_marks(curve)
    wanted = MARKED_ROW_PX * len(marked)
    if even >= MARKED_ROW_PX or not marked or wanted > room / 2:
        return [even] * count
    rest = min(even, (room - wanted) / max(1, count - len(marked)))
    return [MARKED_ROW_PX if place in marked else rest for place in range(count)]


def _rows_beside_marks(curve: ChanceCurve) -> frozenset[int]:
    beside = {place for mark in curve.marks for place in (mark.point - 1, mark.point)}
    return frozenset(beside & set(range(len(curve.points))))


def note_height_px() -> float:
    return extent_px("", LABEL_PT)[1] + 2 * PAD_PX


def notes_that_fit() -> int:
    """More notes than this have no room in the margin; a match has eight at most."""
    return int((MARGIN.y1 - MARGIN.y0 + NOTE_GAP_PX) // (note_height_px() + NOTE_GAP_PX))


def spread(wanted: Sequence[float], *, step: float, low: float, high: float) -> tuple[float, ...]:
    """Places at least `step` apart and within limits, as near as can be to the wanted ones.

    The wanted ones rise. With `step` times the place taken off, this is isotonic least squares
    (Barlow, Bartholomew, Bremner and Brunk, Statistical Inference under Order Restrictions,
    1972): 1. pool neighbours that would overlap at their mean, 2. clamp the pools. As long as
    all fit between the limits, all are kept.
    """
    pools: list[tuple[float, int]] = []
    for place, value in enumerate(wanted):
        mean, count = value - place * step, 1
        while pools and pools[-1][0] > mean:
            before, many = pools.pop()
            mean, count = (many * before + count * mean) / (many + count), many + count
        pools.append((mean, count))
    highest = high - (len(wanted) - 1) * step
    levels = [max(low, min(mean, highest)) for mean, count in pools for _ in range(count)]
    return tuple(level + place * step for place, level in enumerate(levels))
