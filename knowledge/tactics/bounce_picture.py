"""A soft ball from the side: where it can be taken in the air, and where it is met off the bounce.

Closed forms, as in bounce_time: nothing is integrated.
"""

from __future__ import annotations

from typing import Final

from knowledge.ball_places import NET_M
from knowledge.court import METRES_PER_FOOT
from knowledge.reach.body import DEFAULT_STATURE_M
from knowledge.side_view import Place, SideFigure, SideLevel, SidePath, SideView
from knowledge.tactics.bounce_time import BALL_RADIUS_M, FEET_FROM_NET_M, Dink

STEPS: Final = 24
THEIR_CONTACT_M: Final = 0.3
"""They dink it from shin height. Drawing only."""

FARTHEST_M: Final = 3.0
THEY_STAND_M: Final = 0.35
"""Behind the ball they hit. Drawing only."""


def bounce_view(dink: Dink, call: str, *, is_dead: bool) -> SideView:
    """The ball to the top of its bounce, and the two places to meet it."""
    bounce = dink.bounce
    lands = dink.from_net_m + bounce.lands_after_m
    top = dink.from_net_m + bounce.ground_m
    back_ft, up_ft = (round(each / METRES_PER_FOOT, 1) for each in (bounce.ground_m, bounce.top_m))
    way = "nearer to you" if is_dead else "further back"
    off = f"Off the bounce: {bounce.time_s:.1f} s later, {back_ft:.0f} ft {way}."
    height = f"There it is {up_ft:.1f} ft high, the net {NET_M / METRES_PER_FOOT:.1f} ft."
    return SideView(
        title="In the air or off the bounce",
        alt=f"{off} {height}",
        net_m=NET_M,
        notes=(call, off, height),
        paths=(
            SidePath(places=_in_the_air(dink, lands), label="their ball", ours=False),
            SidePath(places=_off_the_bounce(lands, top, bounce.top_m), label="", ours=False),
        ),
        figures=(
            SideFigure(
                along_m=-max(FEET_FROM_NET_M, dink.from_net_m + 0.2),
                stature_m=DEFAULT_STATURE_M,
                label="you",
                ours=True,
            ),
            SideFigure(
                along_m=_their_m(dink) + THEY_STAND_M,
                stature_m=DEFAULT_STATURE_M,
                label="them",
                ours=False,
            ),
        ),
        levels=(
            SideLevel(along_m=-dink.from_net_m, height_m=dink.height_m, label="air"),
            SideLevel(along_m=-top, height_m=bounce.top_m, label="bounce"),
        ),
    )


def _their_m(dink: Dink) -> float:
    """How far behind the net, on their side, the ball was as high as they hit it."""
    for step in range(1, 101):
        away = FARTHEST_M * step / 100
        if dink.height_at_m(-away) <= THEIR_CONTACT_M:
            return away
    return FARTHEST_M


def _in_the_air(dink: Dink, lands_m: float) -> tuple[Place, ...]:
    start = -_their_m(dink)
    ways = [start + (lands_m - start) * step / STEPS for step in range(STEPS + 1)]
    return tuple((-way, max(BALL_RADIUS_M, dink.height_at_m(way))) for way in ways)


def _off_the_bounce(lands_m: float, top_m: float, height_m: float) -> tuple[Place, ...]:
    """Up to the top: half a parabola."""
    shares = [step / STEPS for step in range(STEPS + 1)]
    return tuple(
        (
            -(lands_m + share * (top_m - lands_m)),
            BALL_RADIUS_M + (height_m - BALL_RADIUS_M) * share * (2 - share),
        )
        for share in shares
    )
