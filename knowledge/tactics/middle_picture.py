"""Who takes which ball through the middle, drawn on our half: two areas, and balls on the seam."""

from __future__ import annotations

from knowledge.court import (
    HALF_LENGTH_M,
    HALF_WIDTH_M,
    KITCHEN_DEPTH_M,
    METRES_PER_FOOT,
)
from knowledge.court_picture import Area, CourtPicture, Line, Marker
from knowledge.reach import Seam
from knowledge.tactics.middle_answer import FAST, SLOW, MiddleAnswer
from knowledge.tactics.middle_effects import Seat
from knowledge.tactics.middle_seam import LEAST_SHIFT_FT, seam_of
from knowledge.tactics.middle_times import stand, strip_half_m
from knowledge.tactics.middle_words import KIND, feet, zone_label, zone_name
from knowledge.vocabulary import BallKind, Side

NEAREST_M = 0.9
"""Where our areas begin, so that the net stays in sight. Drawing only."""

LOB_DEPTH_M = 4.9
"""From here back a ball in the middle is a lob."""

NARROWEST_M = 0.45
"""A strip is drawn no narrower to either side of the seam, for its colour to be seen."""

SHORT = {BallKind.FLOATING: "high"}
"""Words that fit between two players at the line."""

Corner = tuple[float, float]


def picture(answer: MiddleAnswer, call: str, asked: BallKind | None) -> CourtPicture:
    """Each partner's area up to the seam, and upon it whose each kind of ball is.

    A strip is as wide as both of us get to in time: there the rule decides, not the feet. While
    one of us is wide there is none: the seam alone decides.
    """
    seam = seam_of(answer, asked)
    return CourtPicture(
        title="Who takes the middle",
        alt=f"{call} {_in_words(answer, seam)}",
        markers=tuple(_marker(seat, answer) for seat in answer.seats),
        areas=(*(_area(answer, side, seam) for side in Side), *_strips(answer, seam)),
        lines=(Line(points=_run(seam, NEAREST_M, HALF_LENGTH_M)),),
    )


def _in_words(answer: MiddleAnswer, seam: Seam) -> str:
    """The picture's areas, seam and strips in a sentence or two."""
    left, right = (answer.seat(side).who.name for side in Side)
    shared = f"Left of {where(seam)} is {left}'s, right of it {right}'s."
    balls = ", ".join(label for _, _, _, label, _ in _rows(answer))
    return shared if answer.pulled_wide else f"{shared} On it: {balls}."


def where(seam: Seam) -> str:
    """The seam on average, as a place: "the middle", or so many feet to a side of it."""
    x_ft = seam.mean_x_m / METRES_PER_FOOT
    side = "right" if x_ft > 0 else "left"
    if abs(x_ft) < LEAST_SHIFT_FT:
        return "the middle"
    return f"a line {feet(x_ft)} {side} of the middle"


def _rows(answer: MiddleAnswer) -> list[tuple[float, float, BallKind, str, str]]:
    """Each strip's near and far edge from the net, its ball, what it says, and its owner."""
    front, back = KITCHEN_DEPTH_M - 1.0, (KITCHEN_DEPTH_M + LOB_DEPTH_M) / 2 - 0.5
    return [
        *_kinds(answer, front, back, SLOW, "slow"),
        *_kinds(answer, back, LOB_DEPTH_M, FAST, "fast"),
        *_kinds(answer, LOB_DEPTH_M, HALF_LENGTH_M, (BallKind.LOB,), "lob"),
    ]


def _kinds(
    answer: MiddleAnswer, near: float, far: float, kinds: tuple[BallKind, ...], word: str
) -> list[tuple[float, float, BallKind, str, str]]:
    """One strip for these balls, or one for each where their owners differ."""
    owners = [zone_name(answer, answer.of(kind)) for kind in kinds]
    if len(set(owners)) == 1:
        return [(near, far, kinds[0], zone_label(answer, kinds[0], word), owners[0])]
    depth = (far - near) / len(kinds)
    return [
        (
            near + place * depth,
            near + (place + 1) * depth,
            kind,
            zone_label(answer, kind, SHORT.get(kind, KIND[kind])),
            owner,
        )
        for place, (kind, owner) in enumerate(zip(kinds, owners, strict=True))
    ]


def _area(answer: MiddleAnswer, side: Side, seam: Seam) -> Area:
    """All on this side of the seam; the label tells of it where no strip does."""
    outside = -HALF_WIDTH_M if side is Side.LEFT else HALF_WIDTH_M
    name, wide = answer.seat(side).who.name, answer.pulled_wide
    return Area(
        corners=(
            (outside, -NEAREST_M),
            *_run(seam, NEAREST_M, HALF_LENGTH_M),
            (outside, -HALF_LENGTH_M),
        ),
        owner=name,
        label=f"all inside: {name}" if wide is not None and wide.side is not side else "",
    )


def _strips(answer: MiddleAnswer, seam: Seam) -> list[Area]:
    if answer.pulled_wide is not None:
        return []
    return [
        Area(
            corners=_band(seam, near, far, max(NARROWEST_M, strip_half_m(kind))),
            owner=owner,
            label=label,
        )
        for near, far, kind, label, owner in _rows(answer)
    ]


def _band(seam: Seam, near: float, far: float, half_m: float) -> tuple[Corner, ...]:
    """A stretch of the seam made so wide to either side, within the sidelines."""
    middle = _run(seam, near, far)
    left = [(max(-HALF_WIDTH_M, x_m - half_m), y_m) for x_m, y_m in middle]
    right = [(min(HALF_WIDTH_M, x_m + half_m), y_m) for x_m, y_m in reversed(middle)]
    return (*left, *right)


def _run(seam: Seam, near: float, far: float) -> tuple[Corner, ...]:
    """The seam between two depths, its own bends included."""
    depths = [-near, *(y_m for y_m in seam.y_m if -far < y_m < -near), -far]
    return tuple((round(seam.x_at_m(y_m), 3), round(y_m, 3)) for y_m in depths)


def _marker(seat: Seat, answer: MiddleAnswer) -> Marker:
    """A player at the line; one who was pulled wide stands past the sideline."""
    place = stand(seat.side, is_wide=answer.pulled_wide == seat)
    return Marker.at(place, seat.who.name, ours=True)
