"""Where a serve can go in the box: wide, down the T or into the body, and which wing is there."""

from __future__ import annotations

from enum import StrEnum

from knowledge.court import (
    HALF_LENGTH_M,
    HALF_WIDTH_M,
    METRES_PER_FOOT,
    Point,
    at_baseline,
    at_kitchen_line,
    x_of_side_m,
)
from knowledge.effects import Condition
from knowledge.situation import OnCourt
from knowledge.tactics.conditions import right_handed
from knowledge.tactics.serve_scatter import LINE_AIM_FT
from knowledge.vocabulary import Hand, Side, Trait, Wing


class Lane(StrEnum):
    """A serve's lane; the ids are what a rally log writes too."""

    WIDE = "wide"
    T = "t"
    BODY = "body"


def wing_at(lane: Lane, receiver: OnCourt, court: Side) -> Wing | None:
    """The wing that a serve down a lane meets; None for the body, or where the hand isn't known."""
    if lane is Lane.BODY or receiver.hand not in (Hand.LEFT, Hand.RIGHT):
        return None
    to_their_left = (court is Side.RIGHT) is (lane is Lane.T)
    backhand_is_left = receiver.hand is Hand.RIGHT
    return Wing.BACKHAND if to_their_left is backhand_is_left else Wing.FOREHAND


def backhand_at(lane: Lane, receiver: OnCourt, court: Side) -> Condition:
    """Whether the backhand meets it: of a right-hander at the T in the right court, else wide."""
    right = right_handed(receiver)
    return right if (court is Side.RIGHT) is (lane is Lane.T) else ~right


def way_to(lane: Lane, court: Side) -> Trait | None:
    """Which way the receiver moves for it; None for the body."""
    if lane is Lane.BODY:
        return None
    to_their_left = (court is Side.RIGHT) is (lane is Lane.T)
    return Trait.MOVES_LEFT if to_their_left else Trait.MOVES_RIGHT


def landing(lane: Lane, court: Side, *, inside_ft: float) -> Point:
    """Where the serve is aimed, so far inside the baseline of the receiver's court."""
    half_ft = HALF_WIDTH_M / METRES_PER_FOOT
    share = {
        Lane.T: LINE_AIM_FT / half_ft,
        Lane.WIDE: 1 - LINE_AIM_FT / half_ft,
        Lane.BODY: 0.5,
    }[lane]
    return Point(
        x_m=x_of_side_m(court, ours=False, share=share),
        y_m=HALF_LENGTH_M - inside_ft * METRES_PER_FOOT,
    )


def run_ft(lane: Lane, court: Side, *, to: Side) -> float:
    """How far the receiver then runs from behind the baseline to the line in front of `to`."""
    start = Point(x_m=landing(lane, court, inside_ft=0).x_m, y_m=at_baseline(court, ours=False).y_m)
    return start.distance_m(at_kitchen_line(to, ours=False)) / METRES_PER_FOOT
