"""A lob on a court: from our half over one of them, beyond the shoulder that can't reach it."""

from __future__ import annotations

from typing import Final

from knowledge.court import at_kitchen_line
from knowledge.court_picture import Arrow, CourtPicture, Marker
from knowledge.situation import OnCourt, Situation
from knowledge.tactics.lob_answer import LobAnswer
from knowledge.tactics.lob_lanes import landing_over
from knowledge.tactics.lob_words import shoulder
from knowledge.vocabulary import Side

LOB_WIDTH: Final = 0.6
"""A change-up is a thin arrow, but it is the one the picture is about. Common practice."""


def picture(answer: LobAnswer, situation: Situation) -> CourtPicture | None:
    """The lob's aim; None without a target whose side is known."""
    target = answer.target
    if target is None or target.side is None:
        return None
    from_side = answer.question.striker_side or target.side
    start = at_kitchen_line(from_side, ours=True)
    end = landing_over(target.side, target.hand)
    return CourtPicture(
        title=f"Lob {target.name}".strip(),
        alt=f"Lob over {target.name}'s {shoulder(target)}, deep, from our {from_side}.",
        markers=(*_markers(situation.ours, ours=True), *_markers(situation.theirs, ours=False)),
        arrows=(Arrow.between(start, end, width=LOB_WIDTH, label="lob"),),
    )


def _markers(pair: tuple[OnCourt, ...], *, ours: bool) -> list[Marker]:
    """Both, at the line; where only one side is known the partner has the other."""
    found = []
    for one in pair:
        partner = next((each for each in pair if each != one), None)
        side = one.side or (partner.side.other if partner and partner.side else None)
        if side is not None:
            place = at_kitchen_line(Side(side), ours=ours)
            found.append(Marker.at(place, one.name, ours=ours))
    return found
