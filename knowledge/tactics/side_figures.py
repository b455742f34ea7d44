"""A player in a picture seen from the side."""

from __future__ import annotations

from knowledge.reach.body import DEFAULT_STATURE_M
from knowledge.side_view import SideFigure


def standing(along_m: float, label: str, *, ours: bool) -> SideFigure:
    """Somebody of usual height that far along the court."""
    return SideFigure(along_m=along_m, stature_m=DEFAULT_STATURE_M, label=label, ours=ours)
