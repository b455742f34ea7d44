"""From time to spare to the chance of being there, and to rally points."""

from __future__ import annotations

from typing import Final

from knowledge.normal import logit, normal_cdf
from knowledge.reach.body import Floats
from knowledge.vocabulary import LOGIT_PER_POINT

SPREAD_S: Final = 0.060
"""How much a player's time to the ball varies from one ball to the next. Common practice."""


def chance_in_time(slack_s: float, *, spread_s: float = SPREAD_S) -> float:
    """The chance to be there with the ball, for this much time to spare on average."""
    return normal_cdf(slack_s / spread_s)


def mean_chance(slacks_s: Floats, *, spread_s: float = SPREAD_S) -> float:
    """The same over several balls that are equally likely."""
    chances = [chance_in_time(float(each), spread_s=spread_s) for each in slacks_s.ravel()]
    return sum(chances) / len(chances)


def points_in_time(chance: float, *, worth: float) -> float:
    """What being in time that often comes to: who is late loses a rally worth `worth`, in points.

    Our chance is (1 - e) v: points = (logit((1 - e) v) - logit v) / LOGIT_PER_POINT.
    """
    return (logit(chance * worth) - logit(worth)) / LOGIT_PER_POINT
