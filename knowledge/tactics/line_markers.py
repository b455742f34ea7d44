"""Players at the kitchen line, as a court picture marks them."""

from __future__ import annotations

from collections.abc import Sequence

from knowledge.court import at_kitchen_line
from knowledge.court_picture import Marker
from knowledge.situation import OnCourt


def line_markers(pair: Sequence[OnCourt], *, ours: bool) -> list[Marker]:
    """Those of the pair whose side is known, each in the middle of it at the line."""
    return [
        Marker.at(place, one.name, ours=ours)
        for one in pair
        if one.side is not None
        for place in (at_kitchen_line(one.side, ours=ours),)
    ]
