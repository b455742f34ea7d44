"""The overhead on a court: where we meet it, where they stand, the aim and its change-up."""

from __future__ import annotations

from typing import Final

from knowledge.court import Point
from knowledge.court_picture import Arrow, CourtPicture, Marker
from knowledge.situation import OnCourt
from knowledge.tactics.overhead_answer import OverheadAnswer, label
from knowledge.tactics.overhead_effects import Aim
from knowledge.tactics.overhead_outcomes import OUR_X_M, Spot, stands, target_of
from knowledge.tactics.overhead_words import SHORT
from knowledge.vocabulary import Side

DEFAULT_SHARE: Final = 0.7
"""Widths of the arrows where no mix says better. Common practice."""

BESIDE_THE_FEET_M: Final = 0.25
"""So that an arrow ends beside the marker it is meant for, not under it."""


def picture(answer: OverheadAnswer, change: Aim | None, shares: dict[str, float]) -> CourtPicture:
    """The aims from where we meet it; a lob that bounces is drawn with its aim after that."""
    places = _places(answer)
    arrows = [_arrow(answer, answer.best, places, shares, SHORT[answer.best.spot])]
    if change is not None:
        arrows.append(_arrow(answer, change, places, shares, "change"))
    contact = _contact(answer)
    hitter = answer.hitter.name if answer.hitter else "us"
    return CourtPicture(
        title="Overhead",
        alt=f"Overhead {label(answer.best)}" + (f"; change: {label(change)}." if change else "."),
        markers=(
            Marker.at(contact, hitter, ours=True),
            *(Marker.at(place, name, ours=False) for name, place in places.values()),
        ),
        arrows=tuple(arrows),
    )


def _is_from_left(answer: OverheadAnswer) -> bool:
    return answer.hitter is not None and answer.hitter.side is Side.LEFT


def _contact(answer: OverheadAnswer) -> Point:
    x_m = -OUR_X_M if _is_from_left(answer) else OUR_X_M
    return Point(x_m=x_m, y_m=-answer.question.contact.from_net_m)


def _places(answer: OverheadAnswer) -> dict[int, tuple[str, Point]]:
    """Name and place of each opponent by number; nobody known is "them" twice.

    Whom we aim at stands where the near one stands.
    """
    pair = answer.question.pair
    near, other = stands(answer.question.theirs)
    target = answer.best.target
    people = sorted(pair, key=lambda one: one != target) if target else list(pair)
    if len(people) < 2:
        names = [one.name for one in people] or ["them"]
        numbers = [int(one.player) for one in people] or [-1]
        return {
            number: (name, place)
            for number, name, place in zip(
                [*numbers, -2], [*names, "them"], (near, other), strict=False
            )
        }
    first = people[0]
    left = _sign_of(first, people[1])
    return {
        int(one.player): (one.name, Point(x_m=sign * abs(place.x_m), y_m=place.y_m))
        for one, place, sign in zip(people, (near, other), (left, -left), strict=False)
    }


def _sign_of(one: OnCourt, partner: OnCourt) -> int:
    """Which half of the picture a player stands in: their left court is on our right."""
    side = one.side or (partner.side.other if partner.side else Side.LEFT)
    return 1 if side is Side.LEFT else -1


def _arrow(
    answer: OverheadAnswer,
    aim: Aim,
    places: dict[int, tuple[str, Point]],
    shares: dict[str, float],
    text: str,
) -> Arrow:
    start, end = _contact(answer), _end(answer, aim, places)
    usual = DEFAULT_SHARE if aim is answer.best else 1 - DEFAULT_SHARE
    return Arrow.between(start, end, width=shares.get(aim.id, usual), label=text)


def _end(answer: OverheadAnswer, aim: Aim, places: dict[int, tuple[str, Point]]) -> Point:
    if aim.spot in (Spot.FEET, Spot.HIP):
        number = next(iter(places)) if aim.target is None else int(aim.target.player)
        _, place = places[number]
        inside = -BESIDE_THE_FEET_M if place.x_m > 0 else BESIDE_THE_FEET_M
        return Point(x_m=place.x_m + inside, y_m=place.y_m)
    plain = target_of(aim.spot, answer.question.theirs)
    return Point(x_m=-plain.x_m, y_m=plain.y_m) if _is_from_left(answer) else plain
