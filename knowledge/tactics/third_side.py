"""The third from the side: the ball as it is aimed, and the band of balls that still work."""

from __future__ import annotations

from typing import Final

from knowledge.ball_places import NET_M
from knowledge.court import KITCHEN_DEPTH_M, METRES_PER_FOOT
from knowledge.flight import FORMS, Shot
from knowledge.side_view import SideFigure, SideFlight, SideLevel, SideView, first_clause
from knowledge.tactics.shot_success import OurScatter, of_ten
from knowledge.tactics.side_figures import standing
from knowledge.tactics.third_contact import contact_words
from knowledge.tactics.third_success import SHOTS, STAND_M, ThirdBall

AT_LINE_M: Final = STAND_M
COMING_M: Final = 4.2
BACK_M: Final = 6.4
"""Where they stand, from the net; who comes in is two steps behind the line. Drawing only."""

BEHIND_BALL_M: Final = 0.4

MARKS: Final = {
    Shot.DROP: "hit up",
    Shot.DRIVE: "chest",
    Shot.LOB: "their reach",
}
"""What the height at their line is called that the shot is meant to stay under; a lob, over."""

MEANT: Final = {
    Shot.DROP: "low at their line, so they hit up",
    Shot.DRIVE: "in, and no higher than their chest",
    Shot.LOB: "over their reach, and in",
}


def side_picture(
    shot: str, ball: ThirdBall, scatters: dict[str, OurScatter], *, call: str, moving: bool
) -> SideView:
    """The shot of the call with its window, and beside another shot the drop."""
    chosen = SHOTS[shot]
    works = of_ten(ball.aimed(chosen, scatters[shot]).meant)
    others = [other for other in ("drop",) if other != shot and other in scatters]
    band = f"In the band: {shot}s that work, {works} of 10."
    return SideView(
        title=f"The {shot}, from the side",
        alt=_alt(shot, ball, scatters[shot], works),
        net_m=NET_M,
        notes=(first_clause(call), band, f"They are {MEANT[chosen]}."),
        figures=_figures(ball, moving=moving),
        levels=(_level(chosen),) if not ball.both_back else (),
        window_label="works",
        flights=(
            _flight(shot, ball, scatters[shot], has_window=True),
            *(_flight(other, ball, scatters[other], has_window=False) for other in others),
        ),
    )


def _alt(shot: str, ball: ThirdBall, scatter: OurScatter, works: int) -> str:
    """The same in words."""
    aim = ball.aimed(SHOTS[shot], scatter)
    over_ft = aim.clearance_m / METRES_PER_FOOT
    return (
        f"From {contact_words(ball.contact)}: aim the {shot} {over_ft:.1f} ft over the net. "
        f"Of 10, {works} are {MEANT[SHOTS[shot]]}."
    )


def _flight(shot: str, ball: ThirdBall, scatter: OurScatter, *, has_window: bool) -> SideFlight:
    aim = ball.aimed(SHOTS[shot], scatter)
    return SideFlight(
        shot=SHOTS[shot].value,
        height_m=ball.contact.height_m,
        from_net_m=ball.contact.from_net_m,
        speed_mps=aim.speed_mps,
        elevation_deg=aim.elevation_deg,
        label=shot,
        wind_mps=ball.wind_mps,
        met_at_m=AT_LINE_M if SHOTS[shot] is Shot.DRIVE and not ball.both_back else None,
        has_window=has_window,
    )


def _figures(ball: ThirdBall, *, moving: bool) -> tuple[SideFigure, ...]:
    we = standing(-ball.contact.from_net_m - BEHIND_BALL_M, "you", ours=True)
    if ball.both_back:
        return (we, standing(BACK_M, "them", ours=False))
    if moving:
        return (we, standing(AT_LINE_M, "", ours=False), standing(COMING_M, "late", ours=False))
    return (we, standing(AT_LINE_M, "them", ours=False))


def _level(shot: Shot) -> SideLevel:
    """The height at their line that the window is bounded by."""
    low, high = FORMS[shot].meant.at_line_m
    height = low if shot is Shot.LOB else high
    return SideLevel(along_m=KITCHEN_DEPTH_M, height_m=height, label=MARKS[shot])
