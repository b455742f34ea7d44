"""Any picture as a figure and as PNG bytes."""

from __future__ import annotations

from io import BytesIO

from matplotlib.figure import Figure

from bot.chat.pictures import court, curve, side
from bot.chat.pictures.lettering import DPI
from knowledge.advice import ChanceCurve, CourtPicture, Picture


def png_of(picture: Picture) -> bytes:
    """The picture as PNG bytes without metadata, so that equal pictures are equal bytes."""
    out = BytesIO()
    figure_of(picture).savefig(out, format="png", dpi=DPI, metadata={"Software": None})
    return out.getvalue()


def figure_of(picture: Picture) -> Figure:
    """The picture as a figure whose data coordinates are pixels."""
    if isinstance(picture, CourtPicture):
        return court.figure_of(picture)
    if isinstance(picture, ChanceCurve):
        return curve.figure_of(picture)
    return side.figure_of(picture)
