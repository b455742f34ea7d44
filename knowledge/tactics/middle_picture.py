"""Who takes which ball through the middle, drawn on our half."""

from __future__ import annotations

from knowledge.advice import CourtPicture, Marker, Zone
from knowledge.court import HALF_LENGTH_M, KITCHEN_DEPTH_M, at_kitchen_line
from knowledge.tactics.middle_answer import FAST, SLOW, MiddleAnswer
from knowledge.tactics.middle_words import zone_label
from knowledge.vocabulary import BallKind

SEAM_HALF_WIDTH_M = 0.9
"""Half the width of the strip either of us could take: a step and a reach. Common practice."""

LOB_DEPTH_M = 4.9
"""From here back a ball in the middle is a lob."""


def picture(answer: MiddleAnswer, call: str) -> CourtPicture:
    """The seam in three zones from the net back: slow, fast, lob."""
    front, back = KITCHEN_DEPTH_M, (KITCHEN_DEPTH_M + LOB_DEPTH_M) / 2
    rows = (
        (front - 1.0, back - 0.5, zone_label(answer, SLOW, "slow")),
        (back - 0.5, LOB_DEPTH_M, zone_label(answer, FAST, "fast")),
        (LOB_DEPTH_M, HALF_LENGTH_M, zone_label(answer, (BallKind.LOB,), "lob")),
    )
    return CourtPicture(
        title="The middle",
        alt=call,
        markers=tuple(
            Marker(x_m=place.x_m, y_m=place.y_m, label=seat.who.name, ours=True)
            for seat in answer.seats
            for place in (at_kitchen_line(seat.side, ours=True),)
        ),
        zones=tuple(
            Zone(
                x0_m=-SEAM_HALF_WIDTH_M,
                y0_m=-far,
                x1_m=SEAM_HALF_WIDTH_M,
                y1_m=-near,
                label=label,
            )
            for near, far, label in rows
        ),
    )
