"""Text on a picture: the font by its file, what it can draw, its size, and how it is cut."""

from __future__ import annotations

from functools import cache, lru_cache
from pathlib import Path

import matplotlib
from matplotlib.font_manager import FontProperties, get_font

DPI = 100

LABEL_PT = 24.0
"""33 px of 900: 14 points on a phone 390 points wide."""

TITLE_PT = 29.0
SMALLEST_TITLE_PT = 24.0
TITLE_LINES = 2
PAD_PX = 9
"""Inside a label's box, on each side."""

KEPT_SIZES = 1024
"""Texts whose size is kept: a title is tried word by word, and names come back all day."""


@cache
def font_file() -> Path:
    """DejaVu Sans Bold as matplotlib ships it, so that no system font is looked for."""
    return Path(matplotlib.get_data_path()) / "fonts" / "ttf" / "DejaVuSans-Bold.ttf"


@cache
def font(points: float) -> FontProperties:
    return FontProperties(fname=str(font_file()), size=points)


def drawable(text: str) -> str:
    """The text on one line, without characters that the font has no glyph for."""
    known = _charmap()
    return " ".join("".join(c if ord(c) in known else " " for c in text).split())


@cache
def _charmap() -> frozenset[int]:
    return frozenset(get_font(str(font_file())).get_charmap())


def extent_px(text: str, points: float) -> tuple[float, float]:
    """Width and height of one line; the height is that of any line, so that boxes match."""
    return _size_px(text, points)[0], _size_px("Aglp|", points)[1]


@lru_cache(maxsize=KEPT_SIZES)
def _size_px(text: str, points: float) -> tuple[float, float]:
    """The size of the ink, which FreeType counts in 64ths of a pixel."""
    face = get_font(str(font_file()))
    face.set_size(points, DPI)
    face.set_text(text)
    width, height = face.get_width_height()
    return width / 64, height / 64


def cut(text: str, widest_px: float, points: float) -> str:
    """The text, shortened with an ellipsis until it fits."""
    if extent_px(text, points)[0] <= widest_px:
        return text
    for length in range(len(text) - 1, 0, -1):
        shorter = text[:length].rstrip() + "…"
        if extent_px(shorter, points)[0] <= widest_px:
            return shorter
    return "…"


def title_lines(text: str, widest_px: float) -> tuple[list[str], float]:
    """A title broken into at most two lines, and the size at which it fits."""
    for points in (TITLE_PT, SMALLEST_TITLE_PT):
        lines = _broken(text, widest_px, points)
        if len(lines) <= TITLE_LINES:
            return lines, points
    first, rest = lines[0], " ".join(lines[1:])
    return [first, cut(rest, widest_px, SMALLEST_TITLE_PT)], SMALLEST_TITLE_PT


def _broken(text: str, widest_px: float, points: float) -> list[str]:
    lines: list[str] = []
    for word in text.split():
        word = cut(word, widest_px, points)
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and extent_px(longer, points)[0] <= widest_px:
            lines[-1] = longer
        else:
            lines.append(word)
    return lines
