"""The way round the post: how wide a ball must be met so that a straight lane passes outside it.

Places in metres as in knowledge.court, mirrored to one side: x out from the centre line, y = 0 at
the net. Posts stand 22 ft apart (national rulebook, 2025 edition, 2.C). Lanes are straight lines
seen from above: a ball that curves in with sidespin needs less room.
"""

from __future__ import annotations

from knowledge.court import (
    HALF_LENGTH_M,
    HALF_WIDTH_M,
    METRES_PER_FOOT,
    POST_FROM_CENTRE_M,
)
from knowledge.flight import OUTDOOR
from knowledge.sources import computed

POST_X_M = POST_FROM_CENTRE_M
BALL_RADIUS_M = OUTDOOR.radius_m

TARGET_INSIDE_M = 1.0 * METRES_PER_FOOT
TARGET_SHORT_M = 3.0 * METRES_PER_FOOT
"""The aim: a foot inside the sideline, three short of the baseline. Common practice."""

ROUND_THE_POST = computed("straight lane past a post 11 ft from the centre")


def least_past_sideline_m(
    from_net_m: float,
    *,
    inside_m: float = TARGET_INSIDE_M,
    short_m: float = TARGET_SHORT_M,
) -> float:
    """How far past the sideline the ball must be met for a lane outside the post to the aim.

    The aim is `inside_m` inside the sideline and `short_m` short of the baseline. By similar
    triangles: from the aim to the post's outside the lane spreads w over the length L to the
    net, so at d behind the net it has spread w (L + d) / L. ValueError off our half.
    """
    if from_net_m <= 0:
        raise ValueError(f"met behind the net, at more than 0 m from it, not {from_net_m}")
    aim_x_m, length_m = HALF_WIDTH_M - inside_m, HALF_LENGTH_M - short_m
    spread_m = POST_X_M + BALL_RADIUS_M - aim_x_m
    return aim_x_m + spread_m * (length_m + from_net_m) / length_m - HALF_WIDTH_M


def nearest_landing_m(from_net_m: float, past_sideline_m: float) -> float | None:
    """How far beyond the net the lane just outside the post comes over their sideline.

    Nearer to the net nothing is open from there; None if the lane never comes in before their
    baseline. ValueError if it is not met behind the net.
    """
    if from_net_m <= 0:
        raise ValueError(f"met behind the net, at more than 0 m from it, not {from_net_m}")
    outside_m = POST_X_M + BALL_RADIUS_M - HALF_WIDTH_M
    closing_m = past_sideline_m - outside_m
    if closing_m <= 0:
        return None
    landing_m = from_net_m * outside_m / closing_m
    return landing_m if landing_m <= HALF_LENGTH_M else None
