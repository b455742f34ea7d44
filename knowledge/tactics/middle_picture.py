"""Who takes which ball through the middle, drawn on our half."""

from __future__ import annotations

from knowledge.advice import CourtPicture, Marker, Zone
from knowledge.court import HALF_LENGTH_M, KITCHEN_DEPTH_M, at_kitchen_line, x_of_side_m
from knowledge.tactics.middle_answer import FAST, SLOW, MiddleAnswer
from knowledge.tactics.middle_effects import Seat
from knowledge.tactics.middle_words import KIND, zone_label
from knowledge.vocabulary import BallKind

SEAM_HALF_WIDTH_M = 0.9
"""Half the width of the strip either of us could take: a step and a reach. Common practice."""

WIDE_SHARE = 1.1
"""Where a player pulled wide is drawn: a step past the sideline. Drawing only."""

LOB_DEPTH_M = 4.9
"""From here back a ball in the middle is a lob."""


def _rows(answer: MiddleAnswer) -> tuple[tuple[float, float, str], ...]:
    """Each zone's near and far edge from the net, and what it says."""
    front, back = KITCHEN_DEPTH_M - 1.0, (KITCHEN_DEPTH_M + LOB_DEPTH_M) / 2 - 0.5
    return (
        *_zones(answer, front, back, SLOW, "slow"),
        *_zones(answer, back, LOB_DEPTH_M, FAST, "fast"),
        *_zones(answer, LOB_DEPTH_M, HALF_LENGTH_M, (BallKind.LOB,), "lob"),
    )


def _zones(
    answer: MiddleAnswer, near: float, far: float, kinds: tuple[BallKind, ...], word: str
) -> list[tuple[float, float, str]]:
    """One zone for these balls, or one for each where their owners differ."""
    if len({answer.of(kind).owner for kind in kinds}) == 1:
        return [(near, far, zone_label(answer, kinds[0], word))]
    depth = (far - near) / len(kinds)
    return [
        (near + place * depth, near + (place + 1) * depth, zone_label(answer, kind, KIND[kind]))
        for place, kind in enumerate(kinds)
    ]


def _marker(seat: Seat, *, is_wide: bool) -> Marker:
    """A player at the line; one who was pulled wide stands past the sideline."""
    place = at_kitchen_line(seat.side, ours=True)
    x_m = x_of_side_m(seat.side, ours=True, share=WIDE_SHARE) if is_wide else place.x_m
    return Marker(x_m=x_m, y_m=place.y_m, label=seat.who.name, ours=True)


def picture(answer: MiddleAnswer, call: str) -> CourtPicture:
    """The seam from the net back: slow, fast, lob; dink and floater apart if owners differ."""
    return CourtPicture(
        title="The middle",
        alt=call,
        markers=tuple(_marker(seat, is_wide=answer.pulled_wide == seat) for seat in answer.seats),
        zones=tuple(
            Zone(
                x0_m=-SEAM_HALF_WIDTH_M,
                y0_m=-far,
                x1_m=SEAM_HALF_WIDTH_M,
                y1_m=-near,
                label=label,
            )
            for near, far, label in _rows(answer)
        ),
    )
