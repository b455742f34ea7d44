"""Text that is drawn a line at a time: a page full of words costs a fifth of drawing each letter.

The drawing library renders letter by letter, several hundred calls for a sheet; Pillow renders a
line in one. Font, size and place are the same.
"""

from __future__ import annotations

from functools import cache
from typing import Any

import numpy as np
from matplotlib.axes import Axes
from matplotlib.text import Text
from PIL import ImageFont

from bot.chat.pictures.lettering import DPI, LABEL_PT, font, font_file
from bot.chat.pictures.palette import INK, Colour
from bot.chat.pictures.sheet import LABEL_Z

POINTS_PER_INCH = 72


class QuickText(Text):
    """A line of text in pixels of the page, from its left end, centred in height."""

    def draw(self, renderer: Any) -> None:
        """Upon the canvas that all pictures share (pictures.drawing)."""
        text, (x, y) = self.get_text(), self.get_position()
        face = _face(float(self.get_fontsize()))
        mask, (left, top) = face.getmask2(text, mode="L", anchor="ls")
        width, height = mask.size
        if not width or not height:
            return
        letters = np.frombuffer(bytearray(bytes(mask)), dtype=np.uint8).reshape(height, width)
        baseline = renderer.height - y - _middle_px(float(self.get_fontsize()))
        gc = renderer.new_gc()
        gc.set_foreground(self.get_color())
        place = (round(x + left), round(baseline + top + height))
        renderer._renderer.draw_text_image(letters, *place, 0, gc)
        gc.restore()


def write_left(
    axes: Axes, x: float, y: float, text: str, points: float = LABEL_PT, colour: Colour = INK
) -> None:
    """Text from its left end, centred in height."""
    line = QuickText(
        x,
        y,
        text,
        fontproperties=font(points),
        color=colour,
        ha="left",
        va="center",
        zorder=LABEL_Z + 1,
        parse_math=False,
    )
    axes._add_text(line)  # type: ignore[attr-defined]  # Axes.text makes letters, not lines


@cache
def _face(points: float) -> ImageFont.FreeTypeFont:
    size_px = points * DPI / POINTS_PER_INCH
    return ImageFont.truetype(str(font_file()), size_px, layout_engine=ImageFont.Layout.BASIC)


@cache
def _middle_px(points: float) -> float:
    """Downwards from the baseline to the middle of a line with ascenders and descenders."""
    _, top, _, foot = _face(points).getbbox("lp", anchor="ls")
    return (top + foot) / 2
