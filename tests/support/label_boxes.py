"""Where the labels of a drawn picture stand, for tests that look for overlaps."""

from __future__ import annotations

from matplotlib.figure import Figure
from matplotlib.patches import FancyBboxPatch

from bot.chat.pictures.frame import Box


def label_boxes(figure: Figure) -> list[Box]:
    """The box behind every label, in the picture's own units."""
    return [
        Box(
            x0=patch.get_x(),
            y0=patch.get_y(),
            x1=patch.get_x() + patch.get_width(),
            y1=patch.get_y() + patch.get_height(),
        )
        for patch in figure.axes[0].patches
        if isinstance(patch, FancyBboxPatch)
    ]
