"""The court picture of a pair that slides with the ball, and of depth before the third shot."""

from __future__ import annotations

from knowledge.court import (
    HALF_WIDTH_M,
    KITCHEN_DEPTH_M,
    Point,
    at_baseline,
    at_kitchen_line,
    x_of_side_m,
)
from knowledge.court_picture import Arrow, CourtPicture, Marker, Zone
from knowledge.situation import Situation
from knowledge.vocabulary import Side

SLIDE_M = 0.7
"""How far a pair slides with a wide ball. Common practice, no source."""


RECEIVES_BEHIND_M = 0.9
"""How far behind the baseline a deep serve is awaited. Common practice, no source."""


def before_third(*, we_serve: bool, call: str, behind_m: float = RECEIVES_BEHIND_M) -> CourtPicture:
    """Depth before the third shot, the receiver `behind_m` metres behind the baseline; courts drawn
    right and right, as at an even score.
    """
    spots = {
        ("server", we_serve): at_baseline(Side.RIGHT, ours=we_serve),
        ("partner", we_serve): at_baseline(Side.LEFT, ours=we_serve),
        ("receiver", not we_serve): at_baseline(Side.RIGHT, ours=not we_serve, behind_m=behind_m),
        ("partner", not we_serve): at_kitchen_line(Side.LEFT, ours=not we_serve),
    }
    return CourtPicture(
        title=call.rstrip("."),
        alt=f"{call} The receiver's partner is at the kitchen line, the rest are back.",
        markers=tuple(Marker.at(spot, label, ours=ours) for (label, ours), spot in spots.items()),
    )


def in_play(situation: Situation, *, off_line_m: float) -> CourtPicture:
    """Their hitter, our two slid towards the ball, the zones they cover and the one they give."""
    hitter_side = situation.asked.hitter_side or Side.RIGHT
    ball = at_kitchen_line(hitter_side, ours=False)
    ball = Point(x_m=x_of_side_m(hitter_side, ours=False, share=0.7), y_m=ball.y_m)
    towards = 1.0 if ball.x_m > 0 else -1.0
    y_m = -(KITCHEN_DEPTH_M + 0.3 + off_line_m)
    near, far = towards * (HALF_WIDTH_M / 2 + SLIDE_M / 2), towards * (SLIDE_M - HALF_WIDTH_M / 2)
    near_side = Side.RIGHT if towards > 0 else Side.LEFT
    return CourtPicture(
        title="Follow the ball",
        alt=(
            f"The ball is on their {hitter_side}. Our {near_side} player covers the line, the "
            f"{near_side.other} player the middle; the sharp cross is left open."
        ),
        markers=(
            Marker.at(ball, "hitter", ours=False),
            Marker(x_m=near, y_m=y_m, label=_ours(situation, near_side), ours=True),
            Marker(x_m=far, y_m=y_m, label=_ours(situation, near_side.other), ours=True),
        ),
        arrows=(_aim(ball, near, y_m, 0.5), _aim(ball, far, y_m, 0.5)),
        zones=_zones(towards, y_m),
    )


def _ours(situation: Situation, side: Side) -> str:
    return next((one.name for one in situation.ours if one.side is side), f"our {side}")


def _aim(ball: Point, x_m: float, y_m: float, width: float) -> Arrow:
    return Arrow(
        from_x_m=ball.x_m,
        from_y_m=ball.y_m,
        to_x_m=x_m,
        to_y_m=y_m + 0.5,
        width=width * 0.5,
        label="",
    )


def _zones(towards: float, y_m: float) -> tuple[Zone, ...]:
    given = -towards * HALF_WIDTH_M
    edge = given + towards * 1.2
    return (
        Zone(
            x0_m=min(given, edge),
            y0_m=-KITCHEN_DEPTH_M,
            x1_m=max(given, edge),
            y1_m=0.0,
            label="give",
            ours=False,
        ),
        Zone(
            x0_m=min(edge, towards * HALF_WIDTH_M),
            y0_m=y_m - 1.2,
            x1_m=max(edge, towards * HALF_WIDTH_M),
            y1_m=y_m + 0.3,
            label="cover",
        ),
    )
