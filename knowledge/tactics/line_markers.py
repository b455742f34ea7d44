"""Players at the kitchen line, as a court picture marks them."""

from __future__ import annotations

from collections.abc import Sequence

from knowledge.advice import Marker
from knowledge.court import at_kitchen_line
from knowledge.situation import OnCourt


def line_markers(pair: Sequence[OnCourt], *, ours: bool) -> list[Marker]:
    """Those of the pair whose side is known, each in the middle of it at the line."""
    return [
        Marker(x_m=place.x_m, y_m=place.y_m, label=one.name, ours=ours)
        for one in pair
        if one.side is not None
        for place in (at_kitchen_line(one.side, ours=ours),)
    ]
