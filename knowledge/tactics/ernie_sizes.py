"""Sizes behind a jump at the corner and a ball round the post, in rally points.

Common practice, no source; "an Ernie shown once" and "the ball itself" are the runners-up of the
coaching review's table of effects, "three of four go line" its section on this shot.
"""

from __future__ import annotations

from typing import Final

from knowledge.effects import Points
from knowledge.normal import logit
from knowledge.vocabulary import LOGIT_PER_POINT, RallyChance

NEUTRAL: Final = RallyChance(0.5)

ERNIE_SHARE: Final = 6.0
"""Rallies of 100 with a dink of ours that would set one up, between good pairs."""

POST_SHARE: Final = 2.0
"""Rallies of 100 in which a ball is met past the sideline."""

SHOWN_ONCE: Final = Points(mean=1, sd=1.5)
"""Overall: once shown, their line dink disappears for a while."""

BALL_ITSELF: Final = Points(mean=15, sd=8)
"""A ball met in balance over the corner, against a dink."""

GAP_OPEN: Final = Points(mean=-20, sd=8)
GAP_COVERED: Final = Points(mean=-8, sd=5)
"""They go middle after we went: one of us has the whole court, or has moved over in time."""

LINE_OFF_THE_SET_UP: Final = 0.75
LINE_OTHERWISE: Final = 0.3
LINE_ONCE_EXPECTED: Final = 0.35
"""How often the dink goes down the line: off a wide one with the head down; off any other; when
they have seen the jump twice."""

PARTNER_COVERS: Final = 0.6
"""How often the partner takes the middle where nobody says."""

QUICK_FEET: Final = Points(mean=3, sd=2)
BETTER_VOLLEY: Final = Points(mean=3, sd=2.5)
KITCHEN_FAULTS: Final = Points(mean=-8, sd=4)
WEAK_WIDE_DINK: Final = Points(mean=2, sd=2)
WIDE_IS_BACKHAND: Final = Points(mean=1.5, sd=1.5)
THEY_LOB: Final = Points(mean=-1.5, sd=1.5)

LINE_AT_A_JUMPER: Final = Points(mean=-7, sd=4)
"""Half of the ball itself: of our line dinks they jump at about one in two."""

JUMPS_OFTEN: Final = Points(mean=-5, sd=3)
LINE_DINK: Final = Points(mean=-2, sd=1.5)
"""Row 12: down the line against across or middle."""

ANGLE_BACK: Final = Points(mean=-1, sd=1)
WIDE_FEEDS_THE_POST: Final = Points(mean=-5, sd=3)
GOES_ROUND_OFTEN: Final = Points(mean=-4, sd=3)
MIDDLE_FEEDS_NOBODY: Final = Points(mean=2, sd=1.5)
BEHIND_THE_JUMPER: Final = Points(mean=12, sd=6)
"""The jumper has left the court: the middle behind is open."""

PAST_THE_SIDELINE: Final = 0.7
"""How often a ball asked about is past the sideline, where nobody says."""

LINE_IS_GUARDED: Final = 0.2
"""How often their line player waits for it, where nobody says."""

ROUND_WINS: Final = 0.55
ROUND_MISSES: Final = 0.2
"""A ball round the post that is past the sideline: how often it wins outright and misses."""

FORCED_WINS: Final = 0.1
FORCED_MISSES: Final = 0.6
"""The same tried from inside the sideline: post and net are in the way."""

GUARDED: Final = Points(mean=-9, sd=4)
QUICK_LINE_PLAYER: Final = Points(mean=-3, sd=2)
ROUND_OFF_BALANCE: Final = Points(mean=-6, sd=3)
SHOT_SD: Final = 8.0


def shot_points(wins: float, misses: float, *, otherwise: float = NEUTRAL) -> float:
    """Points of a shot that wins w, misses e and else leaves a rally worth v, over that rally.

    x = w + (1 - w - e) v, on the log-odds scale of the engine.
    """
    chance = wins + (1 - wins - misses) * otherwise
    return (logit(chance) - logit(otherwise)) / LOGIT_PER_POINT


def line_share_that_pays(*, covered: bool) -> float:
    """How often they must go line for the jump to pay: b q = g (1 - q), so q = g / (b + g)."""
    gap = -(GAP_COVERED if covered else GAP_OPEN).mean
    return gap / (BALL_ITSELF.mean + gap)
