"""The speed-up on a court: who stands where, and the spots with arrows as wide as their share."""

from __future__ import annotations

from dataclasses import replace

from knowledge.advice import AdvisedMix
from knowledge.court import KITCHEN_DEPTH_M, Point, at_kitchen_line
from knowledge.court_picture import Arrow, CourtPicture
from knowledge.effects import OptionId
from knowledge.situation import Situation
from knowledge.tactics.attack_answer import Aimed
from knowledge.tactics.attack_spots import SEAM_ID, place_of
from knowledge.tactics.line_markers import line_markers
from knowledge.vocabulary import Side

MOST_ARROWS = 2
"""The call and its change-up: more hips than that cannot be told apart on a phone."""

LEAST_WIDTH = 0.3
"""The thinnest arrow that still shows in sunlight."""

_SEAM = Point(x_m=0.0, y_m=KITCHEN_DEPTH_M)


def picture(
    found: Aimed, mix: AdvisedMix | None, situation: Situation, *, call: str
) -> CourtPicture | None:
    """The aims from our hitter's court; straight ahead where nothing says from where.

    None while it isn't known on which side the target plays.
    """
    best = OptionId(found.weighed.best)
    shares = {best: 1.0}
    if mix is not None:
        shares = {OptionId(one.option): one.share for one in mix.shares if one.share > 0}
    first = [best, *(one for one in shares if one != best)][:MOST_ARROWS]
    top = max(shares.get(one, 0.0) for one in first) or 1.0
    drawn = [_arrow(one, found, shares.get(one, 0.0) / top) for one in first]
    if drawn[0] is None:
        return None
    arrows = [drawn[0]]
    arrows += [
        replace(one, label="change")
        for one in drawn[1:]
        if one is not None and (one.to_x_m, one.to_y_m) != (drawn[0].to_x_m, drawn[0].to_y_m)
    ]
    change = mix.change_up if mix is not None and len(arrows) > 1 else None
    return CourtPicture(
        title="Where to speed up",
        alt=call if change is None else f"{call} Change: {change.label}.",
        markers=(
            *line_markers(situation.ours, ours=True),
            *line_markers(situation.theirs, ours=False),
        ),
        arrows=tuple(arrows),
    )


def _arrow(option: OptionId, found: Aimed, width: float) -> Arrow | None:
    spot = found.spot_of(option)
    end = _SEAM if option == SEAM_ID else None if spot is None else place_of(spot)
    if end is None:
        return None
    in_front = Side.LEFT if spot is None or spot.target.side is None else spot.target.side.other
    start = at_kitchen_line(found.question.striker_side or in_front, ours=True)
    return Arrow.between(
        start, end, width=max(LEAST_WIDTH, width), label="seam" if spot is None else spot.label
    )
