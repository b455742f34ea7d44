"""The seam between our two for balls down the middle: where it runs, and what moves it."""

from __future__ import annotations

from knowledge.reach import Placed, Seam, mover_of, reaction_s, seam
from knowledge.tactics.middle_answer import MiddleAnswer
from knowledge.tactics.middle_balls import FLIGHTS, shot_of
from knowledge.tactics.middle_effects import Seat
from knowledge.tactics.middle_times import stand
from knowledge.vocabulary import BallKind, Side

SEAM_BALL = BallKind.DRIVE
"""The ball that the seam is told for where none is asked about; others hardly move it."""

BODY_M = 0.4
"""What a player's own body takes up to the inside. Common practice, no source."""

LEAST_SHIFT_FT = 0.5
"""A seam closer to the centre line than this is called the middle."""


def seam_of(answer: MiddleAnswer, asked: BallKind | None, *, both_set: bool = False) -> Seam:
    """Where both are equally early, but never past a body: whose body and line it is, owns them.

    `both_set` as if nobody were pulled wide.
    """
    kind = asked or SEAM_BALL
    wide = None if both_set else answer.pulled_wide
    left, right = (
        _placed(answer.seat(side), kind, is_wide=wide is not None and wide.side is side)
        for side in Side
    )
    found = seam(left, right, shot_of(kind, answer.hitter_side))
    low, high = left.at.x_m + BODY_M, right.at.x_m - BODY_M
    return Seam(y_m=found.y_m, x_m=tuple(min(high, max(low, each)) for each in found.x_m))


def shift_ft(answer: MiddleAnswer, asked: BallKind | None) -> float:
    """How far to the right the seam moves because one of us is pulled wide; 0 if nobody is."""
    if answer.pulled_wide is None:
        return 0.0
    return seam_of(answer, asked).moved_ft(seam_of(answer, asked, both_set=True))


def _placed(seat: Seat, kind: BallKind, *, is_wide: bool) -> Placed:
    reaction = reaction_s(anticipation=FLIGHTS[kind].anticipation)
    return Placed(
        mover=mover_of(seat.who.profile, reaction=reaction), at=stand(seat.side, is_wide=is_wide)
    )
