"""The way in as pictures: how far one gets before they hit, and where the fourth or fifth goes."""

from __future__ import annotations

from typing import Final

from knowledge.ball_facts import Depth
from knowledge.ball_places import NET_M
from knowledge.court import (
    HALF_LENGTH_M,
    KITCHEN_DEPTH_M,
    METRES_PER_FOOT,
    Point,
    at_kitchen_line,
    x_of_side_m,
)
from knowledge.court_picture import Arrow, CourtPicture, Marker
from knowledge.flight import Shot, usual_aim
from knowledge.side_view import SideFlight, SideView, first_clause
from knowledge.situation import OnCourt, Situation
from knowledge.tactics.side_figures import standing
from knowledge.tactics.third_contact import NOWHERE_SAID, contact_of
from knowledge.tactics.transition_answer import TransitionAnswer
from knowledge.tactics.transition_effects import (
    ANGLE,
    ATTACK,
    FAR_M,
    GO,
    SHORT,
    SOFT_LINE,
)
from knowledge.tactics.transition_said import Stage
from knowledge.vocabulary import Side

AT_LINE_M: Final = KITCHEN_DEPTH_M + 0.3
COMING_M: Final = 4.4
BACK_M: Final = 6.1
MID_COURT_M: Final = 4.4
SOFT_M: Final = 1.5
DEEP_M: Final = 5.4
SHORT_ANGLE: Final = Point(x_m=2.4, y_m=1.9)
DROP_SHORT: Final = Point(x_m=1.2, y_m=1.2)
LINE_SHARE: Final = 0.85
BEFORE_DEEP_M: Final = 0.2
BEFORE_SOFT_M: Final = 0.5
AIM_WIDTH: Final = 0.6
RUN_WIDTH: Final = 0.35
"""Places, how far before the feet a ball ends, and widths, as drawn. Drawing only."""

STANDS: Final = {
    Depth.AT_LINE: (AT_LINE_M, AT_LINE_M),
    Depth.ONE_BACK: (AT_LINE_M, BACK_M),
    Depth.COMING_IN: (AT_LINE_M, COMING_M),
    Depth.BOTH_BACK: (BACK_M, BACK_M),
}
"""Their left and their right player, from the net."""


def picture(
    answer: TransitionAnswer, situation: Situation, *, call: str, drop_m: float, drive_m: float
) -> CourtPicture | SideView | None:
    """What the call means, where that says more than its words; the same in words in `alt`."""
    if answer.said.stage is not Stage.MOVE:
        return _aim(answer, situation)
    from_net_m = answer.said.from_net_m or HALF_LENGTH_M
    if from_net_m >= FAR_M:
        return _behind_a_drop(from_net_m, call, drop_m=drop_m, drive_m=drive_m)
    return _run_in(answer, situation, from_net_m) if answer.best == GO else None


def _behind_a_drop(from_net_m: float, call: str, *, drop_m: float, drive_m: float) -> SideView:
    """From the side: the drop, and how far in we are when it gets there."""
    drop, drive = (round(each / METRES_PER_FOOT) for each in (drop_m, drive_m))
    met_m = contact_of(NOWHERE_SAID).height_m
    aim = usual_aim(Shot.DROP, height_m=met_m, from_net_m=from_net_m)
    far = f"When they hit it you are {drop} ft in."
    less = f"Behind a drive: {drive} ft."
    return SideView(
        title="The way in",
        alt=f"{far} {less} Split there.",
        net_m=NET_M,
        notes=(first_clause(call), far, less),
        figures=(
            standing(-from_net_m, "you", ours=True),
            standing(-(from_net_m - drop_m), "split", ours=True),
            standing(AT_LINE_M, "them", ours=False),
        ),
        flights=(
            SideFlight(
                shot=Shot.DROP.value,
                height_m=met_m,
                from_net_m=from_net_m,
                speed_mps=aim.speed_mps,
                elevation_deg=aim.elevation_deg,
                label="drop",
            ),
        ),
    )


def _run_in(answer: TransitionAnswer, situation: Situation, from_net_m: float) -> CourtPicture:
    return CourtPicture(
        title="The way in",
        alt="Both go to the line, level.",
        markers=(*_ours(situation, from_net_m), *_theirs(answer, situation)),
        arrows=tuple(_run(side, from_net_m) for side in Side),
    )


def _run(side: Side, from_net_m: float) -> Arrow:
    x = at_kitchen_line(side, ours=True).x_m
    return Arrow(
        from_x_m=x,
        from_y_m=-from_net_m,
        to_x_m=x,
        to_y_m=-min(AT_LINE_M, from_net_m),
        width=RUN_WIDTH,
        label="run in",
    )


def _aim(answer: TransitionAnswer, situation: Situation) -> CourtPicture:
    is_fourth = answer.said.stage is Stage.FOURTH
    from_net_m = AT_LINE_M if is_fourth else answer.said.from_net_m or MID_COURT_M
    side = situation.asked.striker_side or (answer.striker and answer.striker.side) or Side.RIGHT
    start, end = at_kitchen_line(side, ours=True), _target(answer, situation, side)
    label = "fourth" if is_fourth else "fifth"
    return CourtPicture(
        title=f"The {label}",
        alt=f"The {label}: {answer.ranking.best.option.label}.",
        markers=(*_ours(situation, from_net_m), *_theirs(answer, situation)),
        arrows=(
            Arrow(
                from_x_m=start.x_m,
                from_y_m=-from_net_m,
                to_x_m=end.x_m,
                to_y_m=end.y_m,
                width=AIM_WIDTH,
                label=label,
            ),
        ),
    )


def _target(answer: TransitionAnswer, situation: Situation, side: Side) -> Point:
    best, (left_m, right_m) = answer.best, _depths_m(answer)
    if best == SOFT_LINE:
        return Point(x_m=x_of_side_m(side, ours=True, share=LINE_SHARE), y_m=SOFT_M)
    if best == ANGLE:
        return SHORT_ANGLE
    if best == SHORT:
        return DROP_SHORT
    if best == ATTACK:
        return Point(x_m=0.0, y_m=max(left_m, right_m))
    shot, _, where = best.partition(":")
    is_deep = shot == "deep"
    target = next((one for one in situation.theirs if str(one.player) == where), None)
    at = Side.RIGHT if where == "late" else target.side if target else None
    if at is None:
        return Point(x_m=0.0, y_m=DEEP_M if is_deep else SOFT_M)
    depth_m = left_m if at is Side.LEFT else right_m
    before_m = BEFORE_DEEP_M if is_deep else BEFORE_SOFT_M
    return Point(x_m=at_kitchen_line(at, ours=False).x_m, y_m=depth_m - before_m)


def _depths_m(answer: TransitionAnswer) -> tuple[float, float]:
    told = answer.said.theirs
    if told is None:
        back = answer.said.stage is Stage.FOURTH
        return (BACK_M, BACK_M) if back else (AT_LINE_M, AT_LINE_M)
    return STANDS[told]


def _ours(situation: Situation, from_net_m: float) -> tuple[Marker, ...]:
    return tuple(
        Marker(
            x_m=at_kitchen_line(side, ours=True).x_m,
            y_m=-from_net_m,
            label=_name(situation.ours, side) or ("you" if side is Side.RIGHT else "partner"),
            ours=True,
        )
        for side in Side
    )


def _theirs(answer: TransitionAnswer, situation: Situation) -> tuple[Marker, ...]:
    left_m, right_m = _depths_m(answer)
    return tuple(
        Marker(
            x_m=at_kitchen_line(side, ours=False).x_m,
            y_m=depth_m,
            label=_name(situation.theirs, side) or "",
            ours=False,
        )
        for side, depth_m in ((Side.LEFT, left_m), (Side.RIGHT, right_m))
    )


def _name(pair: tuple[OnCourt, ...], side: Side) -> str | None:
    return next((one.name for one in pair if one.side is side), None)
