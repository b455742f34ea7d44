"""The court picture of a formation: where both stand on serve and on return, and who goes where."""

from __future__ import annotations

from knowledge.court import Point, at_baseline, at_kitchen_line, x_of_side_m
from knowledge.court_picture import Arrow, CourtPicture, Marker
from knowledge.situation import OnCourt
from knowledge.tactics.stack_formations import Keep, Plan
from knowledge.tactics.standing_picture import IN_AFTER_SERVE_M, MOVE_WIDTH, OUTSIDE_M
from knowledge.vocabulary import Side

BOUND_COURT = Side.RIGHT
"""The court of the case that is drawn: the score has both on the wrong side."""

TITLES = {
    Keep.SCORE: "by the score",
    Keep.HOME: "stacked",
    Keep.SIGNAL: "on a signal",
    Keep.SWAP: "swapped",
}


def picture_of(plan: Plan, pair: tuple[OnCourt, OnCourt]) -> CourtPicture:
    """The score has the left one right: who serves or returns there, and where the other waits."""
    bound, partner = (plan.left, plan.right) if plan.left and plan.right else pair
    serve, back = (plan.keep(we_serve=serves) for serves in (True, False))
    start = at_baseline(BOUND_COURT, ours=True)
    waits = {True: _waits(serve, we_serve=True), False: _waits(back, we_serve=False)}
    markers = [Marker.at(start, bound.name, ours=True)]
    markers += [
        Marker.at(waits[True], f"{partner.name}: serve", ours=True),
        Marker.at(waits[False], f"{partner.name}: return", ours=True),
    ]
    arrows = [
        arrow
        for serves, keep in ((True, serve), (False, back))
        for arrow in _moves(start, waits[serves], keep, we_serve=serves)
    ]
    return CourtPicture(
        title=f"Serve {TITLES[serve]}, return {TITLES[back]}",
        alt=_in_words(plan, bound, partner),
        markers=tuple(markers),
        arrows=tuple(arrows),
    )


def _waits(keep: Keep, *, we_serve: bool) -> Point:
    """The partner's place: the other court, or outside the bound one's sideline to slip in."""
    place = at_baseline if we_serve else at_kitchen_line
    if keep in (Keep.SCORE, Keep.SWAP):
        return place(BOUND_COURT.other, ours=True)
    outward = x_of_side_m(BOUND_COURT, ours=True, share=1.0)
    return Point(x_m=outward + OUTSIDE_M, y_m=place(BOUND_COURT, ours=True).y_m)


def _moves(bound: Point, partner: Point, keep: Keep, *, we_serve: bool) -> list[Arrow]:
    """Where both go after the shot; by the score on serve nobody moves."""
    if keep is Keep.SCORE and we_serve:
        return []
    ends = BOUND_COURT if keep is Keep.SCORE else BOUND_COURT.other
    found = [_arrow(bound, _place(ends, we_serve=we_serve), "serve" if we_serve else "return")]
    if keep is not Keep.SCORE:
        found.append(_arrow(partner, _place(ends.other, we_serve=we_serve), ""))
    return found


def _place(side: Side, *, we_serve: bool) -> Point:
    if we_serve:
        return at_baseline(side, ours=True, behind_m=-IN_AFTER_SERVE_M)
    return at_kitchen_line(side, ours=True)


def _arrow(start: Point, end: Point, label: str) -> Arrow:
    return Arrow.between(start, end, width=MOVE_WIDTH, label=label)


def _in_words(plan: Plan, bound: OnCourt, partner: OnCourt) -> str:
    serve, back = (plan.keep(we_serve=serves) for serves in (True, False))
    parts = [
        _half("serves", serve, bound.name, partner.name),
        _half("returns", back, bound.name, partner.name),
    ]
    return " ".join(parts)


def _half(does: str, keep: Keep, bound: str, partner: str) -> str:
    if keep is Keep.SCORE:
        return f"{bound} {does} on the right and stays there; {partner} is on the left."
    if keep is Keep.SWAP:
        return f"{bound} {does} on the right; then both cross."
    sign = "On the sign, " if keep is Keep.SIGNAL else ""
    first = f"{sign}{bound} {does} on the right, {partner} waits outside the right sideline"
    return f"{first}; then {bound} plays left, {partner} right."
