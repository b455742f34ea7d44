"""The dink on a court: who stands where, the aim and its change-up."""

from __future__ import annotations

from knowledge.court import at_kitchen_line
from knowledge.court_picture import Arrow, CourtPicture
from knowledge.situation import OnCourt
from knowledge.tactics.dink_aims import Aim
from knowledge.tactics.dink_lanes import spot_point
from knowledge.tactics.dink_words import places
from knowledge.tactics.line_markers import line_markers
from knowledge.vocabulary import Side

DEFAULT_SHARE = 0.7
"""More than seven in ten to one spot and they groove it (row 11). Common practice."""


def picture(
    aim: Aim,
    change: Aim | None,
    *,
    ours: tuple[OnCourt, ...],
    theirs: tuple[OnCourt, ...],
    striker_side: Side | None,
) -> CourtPicture | None:
    """The aims from our striker's court; None where a side is not known."""
    if striker_side is None or aim.target.side is None:
        return None
    arrows = [_arrow(aim, striker_side, DEFAULT_SHARE, "dink")]
    if change is not None and change.target.side is not None:
        arrows.append(_arrow(change, striker_side, 1 - DEFAULT_SHARE, "change"))
    return CourtPicture(
        title=f"Dink {aim.target.name}".strip(),
        alt=_alt(aim, change),
        markers=(*line_markers(ours, ours=True), *line_markers(theirs, ours=False)),
        arrows=tuple(arrows),
    )


def _alt(aim: Aim, change: Aim | None) -> str:
    said = f"Dink {places(aim)[0]}"
    return said + ("." if change is None else f"; now and then {places(change)[0]}.")


def _arrow(aim: Aim, striker_side: Side, width: float, label: str) -> Arrow:
    assert aim.target.side is not None
    start = at_kitchen_line(striker_side, ours=True)
    end = spot_point(aim.target.side, aim.spot)
    return Arrow.between(start, end, width=width, label=label)
