"""The return on a court: who stands where, the aim and its change-up."""

from __future__ import annotations

from knowledge.court import (
    HALF_LENGTH_M,
    METRES_PER_FOOT,
    Point,
    at_baseline,
    at_kitchen_line,
    x_of_side_m,
)
from knowledge.court_picture import Arrow, CourtPicture, Marker
from knowledge.effects import OptionId
from knowledge.situation import OnCourt
from knowledge.tactics.return_answer import ReturnAnswer
from knowledge.tactics.return_question import MIDDLE, ReturnQuestion, player_at
from knowledge.tactics.return_words import mix_call
from knowledge.vocabulary import Side

DEFAULT_SHARE = 0.7


def picture(answer: ReturnAnswer, change: OptionId | None) -> CourtPicture | None:
    """The aim from our court; None where a side that it needs is not known."""
    side = answer.question.returner_side
    end = None if side is None else _end(answer.option, answer)
    if side is None or end is None:
        return None
    arrows = [_arrow(side, end, DEFAULT_SHARE, "return")]
    other = None if change is None else _end(change, answer)
    if other is not None:
        arrows.append(_arrow(side, other, 1 - DEFAULT_SHARE, "change"))
    return CourtPicture(
        title=mix_call(answer.option, answer.question.theirs).rstrip("."),
        alt=mix_call(answer.option, answer.question.theirs),
        markers=tuple(_markers(answer.question, side)),
        arrows=tuple(arrows),
    )


def arrow_at(target: OnCourt, *, inside_ft: float, start: Side | None = None) -> Arrow | None:
    """The arrow at one of them; across, where we don't know from which court."""
    if target.side is None:
        return None
    return _arrow(start or target.side, _deep(target.side, inside_ft), 1.0, "return")


def _end(option: OptionId, answer: ReturnAnswer) -> Point | None:
    if option == MIDDLE:
        return Point(x_m=0.0, y_m=_deep(Side.LEFT, answer.aim_ft).y_m)
    target = player_at(option, answer.question.theirs)
    if target is None or target.side is None:
        return None
    return _deep(target.side, answer.aim_ft)


def _deep(side: Side, inside_ft: float) -> Point:
    y_m = HALF_LENGTH_M - inside_ft * METRES_PER_FOOT
    return Point(x_m=x_of_side_m(side, ours=False), y_m=y_m)


def _arrow(start: Side, end: Point, width: float, label: str) -> Arrow:
    place = at_baseline(start, ours=True)
    return Arrow.between(place, end, width=width, label=label)


def _markers(question: ReturnQuestion, side: Side) -> list[Marker]:
    """Their pair at the baseline, our returner there too, our partner at the line."""
    returner = question.returner
    places = [(at_baseline(side, ours=True), returner.name if returner else "us", True)]
    partner = next((one for one in question.ours if returner and one != returner), None)
    if partner is not None:
        places.append((at_kitchen_line(side.other, ours=True), partner.name, True))
    places += [
        (at_baseline(one.side, ours=False), one.name, False)
        for one in question.theirs
        if one.side is not None
    ]
    return [Marker.at(place, name, ours=ours) for place, name, ours in places]
