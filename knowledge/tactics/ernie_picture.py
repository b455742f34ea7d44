"""The corner and the post on a court: the wide dink and the jump, or the lane round the post."""

from __future__ import annotations

from knowledge.court import (
    HALF_LENGTH_M,
    HALF_WIDTH_M,
    KITCHEN_DEPTH_M,
    METRES_PER_FOOT,
    at_kitchen_line,
    x_of_side_m,
)
from knowledge.court_picture import Arrow, CourtPicture, Marker, Zone
from knowledge.situation import OnCourt
from knowledge.tactics.ernie_effects import Corner
from knowledge.tactics.ernie_geometry import (
    TARGET_INSIDE_M,
    TARGET_SHORT_M,
    least_past_sideline_m,
)
from knowledge.vocabulary import Side

JUMP_WIDE_M = 1.5 * METRES_PER_FOOT
"""How far outside the sideline a jumper lands. Common practice."""

JUMP_FROM_NET_M = 2.5 * METRES_PER_FOOT
PARTNER_SHARE = 0.25
"""Where the partner covers from: of the way from the centre line to the jumper's sideline."""

SEEN_TO_PASS_M = 1.5 * METRES_PER_FOOT
"""Wider than the narrowest lane, which on a phone would lie on the post."""


def jump_picture(corner: Corner, ours: tuple[OnCourt, ...]) -> CourtPicture | None:
    """The wide dink, the line dink it waits for, and the gap that partner takes."""
    side = corner.side
    if side is None:
        return None
    start = at_kitchen_line(side, ours=True)
    wide_x = x_of_side_m(side, ours=True, share=0.85)
    post_x = x_of_side_m(side, ours=True, share=1.0)
    jump_x = post_x + (JUMP_WIDE_M if post_x > 0 else -JUMP_WIDE_M)
    jumper = corner.jumper.name if corner.jumper else "jumper"
    partner = next((one.name for one in ours if one != corner.jumper), "partner")
    cover_x = x_of_side_m(side, ours=True, share=PARTNER_SHARE)
    return CourtPicture(
        title="The Ernie, shown once",
        alt=f"Dink wide in front of you; {jumper} jumps the corner, {partner} takes the middle.",
        markers=(
            Marker(x_m=jump_x, y_m=-JUMP_FROM_NET_M, label=jumper, ours=True),
            Marker(x_m=cover_x, y_m=-KITCHEN_DEPTH_M, label=partner, ours=True),
        ),
        arrows=(
            Arrow(
                from_x_m=start.x_m,
                from_y_m=start.y_m,
                to_x_m=wide_x,
                to_y_m=KITCHEN_DEPTH_M,
                width=0.7,
                label="your dink",
            ),
            Arrow(
                from_x_m=wide_x,
                from_y_m=KITCHEN_DEPTH_M,
                to_x_m=jump_x,
                to_y_m=-JUMP_FROM_NET_M,
                width=0.4,
                label="their line",
            ),
        ),
        zones=(
            Zone(
                x0_m=-HALF_WIDTH_M,
                y0_m=-HALF_LENGTH_M,
                x1_m=HALF_WIDTH_M,
                y1_m=-KITCHEN_DEPTH_M,
                label=partner,
            ),
        ),
    )


def post_picture(side: Side, from_net_m: float) -> CourtPicture:
    """A lane round the post on this side of ours to the deep corner, seen to pass it."""
    out = 1.0 if side is Side.RIGHT else -1.0
    met_x = out * (HALF_WIDTH_M + least_past_sideline_m(from_net_m) + SEEN_TO_PASS_M)
    return CourtPicture(
        title="Round the post",
        alt="Meet it past the sideline; low, outside the post, to the deep corner.",
        arrows=(
            Arrow(
                from_x_m=met_x,
                from_y_m=-from_net_m,
                to_x_m=out * (HALF_WIDTH_M - TARGET_INSIDE_M),
                to_y_m=HALF_LENGTH_M - TARGET_SHORT_M,
                width=1.0,
                label="round the post",
            ),
        ),
    )
