"""The third on a court: its aim, and the change-up's, from where we hit it."""

from __future__ import annotations

from knowledge.advice import AdvisedMix
from knowledge.court import (
    HALF_LENGTH_M,
    KITCHEN_DEPTH_M,
    Point,
    at_baseline,
    at_kitchen_line,
    x_of_side_m,
)
from knowledge.court_picture import Arrow, CourtPicture
from knowledge.effects import OptionId
from knowledge.planning.thirds import Third, aim_x_m
from knowledge.situation import OnCourt, Situation
from knowledge.tactics.line_markers import line_markers
from knowledge.tactics.third_options import DRIVE, DROP, LINE, LOB, MIDDLE
from knowledge.vocabulary import Side

DEPTHS_M = {DROP: KITCHEN_DEPTH_M - 0.3, DRIVE: KITCHEN_DEPTH_M + 0.6, LOB: HALF_LENGTH_M - 0.6}
"""Where each would come down or be met: in the kitchen, at the feet, near the baseline."""

LINE_SHARE = 0.9


def picture(third: Third, mix: AdvisedMix | None, situation: Situation) -> CourtPicture | None:
    """The aims; None where the place of one is not known."""
    side = _from_side(third, situation)
    shares: dict[str, float] = {third.option: 1.0}
    if mix is not None and mix.change_up is not None:
        shares = {one.option: one.share for one in mix.shares if one.share > 0}
    arrows = [_arrow(id, share, side, third, situation) for id, share in shares.items()]
    if None in arrows:
        return None
    labels = " or ".join(_label(OptionId(id), third) for id in shares)
    return CourtPicture(
        title="The third",
        alt=f"From the back: {labels}.",
        markers=tuple(line_markers(situation.theirs, ours=False)),
        arrows=tuple(one for one in arrows if one is not None),
    )


def _from_side(third: Third, situation: Situation) -> Side:
    return situation.asked.striker_side or (third.hitter and third.hitter.side) or Side.RIGHT


def _label(option: OptionId, third: Third) -> str:
    return third.label_of(third.weighed.ranking.of(option).option)


def _arrow(
    option: str, share: float, side: Side, third: Third, situation: Situation
) -> Arrow | None:
    shot, _, where = option.partition(":")
    behind = third.goes_behind(option)
    start, x_m = at_baseline(side, ours=True), _x_m(where, side, situation, behind=behind)
    if x_m is None:
        return None
    return Arrow(
        from_x_m=start.x_m,
        from_y_m=start.y_m,
        to_x_m=x_m,
        to_y_m=DEPTHS_M[shot],
        width=share,
        label=shot,
    )


def _x_m(where: str, side: Side, situation: Situation, *, behind: bool) -> float | None:
    """Straight ahead for the line; our right court faces their left."""
    if where == MIDDLE:
        return 0.0
    if where == LINE:
        return x_of_side_m(side, ours=True, share=LINE_SHARE)
    target = next((one for one in situation.theirs if str(one.player) == where), None)
    return None if target is None else aim_x_m(target, behind=behind)


def _place(one: OnCourt) -> Point | None:
    return None if one.side is None else at_kitchen_line(one.side, ours=False)
