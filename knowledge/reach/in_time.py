"""From time to spare to the chance of being there, and to rally points."""

from __future__ import annotations

from typing import Final

from knowledge.normal import logit, normal_cdf
from knowledge.reach.body import Floats
from knowledge.vocabulary import LOGIT_PER_POINT

SPREAD_S: Final = 0.060
"""How much a player's time to the ball varies from one ball to the next. Common practice."""

LATE_SHARE: Final = 0.2
"""What a rally is still worth to who is late, as a share: a stab comes back at times. Our guess."""


def chance_in_time(slack_s: float, *, spread_s: float = SPREAD_S) -> float:
    """The chance to be there with the ball, for this much time to spare on average."""
    return normal_cdf(slack_s / spread_s)


def mean_chance(slacks_s: Floats, *, spread_s: float = SPREAD_S) -> float:
    """The same over several balls that are equally likely."""
    chances = [chance_in_time(float(each), spread_s=spread_s) for each in slacks_s.ravel()]
    return sum(chances) / len(chances)


def points_in_time(chance: float, *, worth: float, late_share: float = LATE_SHARE) -> float:
    """What being in time that often comes to, against always, in rally points.

    In time the rally is worth v, late a share s of it: x = (c + (1 - c) s) v, and points are
    (logit x - logit v) / LOGIT_PER_POINT.
    """
    reached = chance + (1 - chance) * late_share
    return (logit(reached * worth) - logit(worth)) / LOGIT_PER_POINT
