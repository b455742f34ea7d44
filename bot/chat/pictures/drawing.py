"""Any picture as a figure and as PNG bytes."""

from __future__ import annotations

import zlib
from functools import cache
from io import BytesIO
from typing import Any

from matplotlib.backends.backend_agg import RendererAgg
from matplotlib.figure import Figure
from PIL import Image

from bot.chat.pictures import bars, court, curve, side
from bot.chat.pictures.frame import HEIGHT_PX, WIDTH_PX
from bot.chat.pictures.lettering import DPI
from knowledge.advice import ChanceCurve, Picture
from knowledge.court_picture import CourtPicture
from knowledge.trait_bars import TraitBars


def png_of(picture: Picture) -> bytes:
    """The picture as PNG bytes without metadata, so that equal pictures are equal bytes.

    Only runs are packed (RFC 1951 by zlib's Z_RLE): flat colours need little more, and it takes
    half the time. The paper is opaque, so a fourth channel would be packed for nothing. To be
    called by one thread at a time, as all pictures are drawn upon the same canvas.
    """
    canvas = _canvas()
    canvas.clear()
    figure_of(picture).draw(canvas)
    size = (WIDTH_PX, HEIGHT_PX)
    drawn = Image.frombuffer("RGBA", size, canvas.buffer_rgba(), "raw", "RGBA", 0, 1)
    out = BytesIO()
    drawn.convert("RGB").save(out, "png", compress_type=zlib.Z_RLE)
    return out.getvalue()


@cache
def _canvas() -> Any:  # a RendererAgg, whose methods have no types
    """One for all: with it matplotlib keeps how large each text is."""
    return RendererAgg(WIDTH_PX, HEIGHT_PX, DPI)  # type: ignore[no-untyped-call]


def figure_of(picture: Picture) -> Figure:
    """The picture as a figure whose data coordinates are pixels."""
    if isinstance(picture, CourtPicture):
        return court.figure_of(picture)
    if isinstance(picture, ChanceCurve):
        return curve.figure_of(picture)
    if isinstance(picture, TraitBars):
        return bars.figure_of(picture)
    return side.figure_of(picture)
