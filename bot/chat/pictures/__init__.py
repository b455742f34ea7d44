"""Court pictures as PNG for a phone: portrait, our side at the bottom, readable in sunlight.

matplotlib is loaded when the first picture is drawn; `warm` does that in the background.
"""

from __future__ import annotations

from functools import lru_cache
from threading import Lock

from knowledge.advice import Picture
from knowledge.court_picture import CourtPicture, Marker

CACHED_PICTURES = 64
"""Pictures kept in memory, about 50 kB each."""

_DRAWING = Lock()


@lru_cache(maxsize=CACHED_PICTURES)
def draw(picture: Picture) -> bytes:
    """The picture as PNG, `frame.WIDTH_PX` by `frame.HEIGHT_PX`; equal input, equal bytes."""
    from bot.chat.pictures.drawing import png_of

    with _DRAWING:  # matplotlib's font caches are not made for several threads at once
        return png_of(picture)


def warm() -> None:
    """Load matplotlib and its font by drawing once; to be called off the path of a reply."""
    player = Marker(x_m=0.0, y_m=-2.5, label="us", ours=True)
    draw(CourtPicture(title="warm", alt="", markers=(player,)))


__all__ = ["CACHED_PICTURES", "draw", "warm"]
