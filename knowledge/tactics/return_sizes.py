"""Sizes of the rules of thumb about the return, in rally points where they apply.

All common practice, no source; "row" is the row of the trade's table of sizes.
"""

from __future__ import annotations

from types import MappingProxyType

from knowledge.ball_facts import Footing
from knowledge.effects import Points
from knowledge.vocabulary import BallQuality

DEEP = Points(mean=5, sd=2)
"""Row 1: in the last 5 ft against mid-court, before the misses that it costs; double below 4.0."""

LAST_FT = 5.0
MID_COURT_FT = 11.0
"""Row 1's last feet, and the middle of their half: 22 ft from net to baseline (2025, 2.A)."""

AIMS_FT = (3.0, 8.0)
"""What counts as a deep aim, in feet inside the baseline. Common practice, no source."""

MET = MappingProxyType(
    {
        BallQuality.NEUTRAL: (0.7, 7.2),
        BallQuality.EASY: (1.0, 5.5),
        BallQuality.STRETCHED: (0.4, 7.4),
    }
)
"""Where a serve is met: height, and distance from the net (6.7 m is the baseline), in metres.
Common practice, no source."""

HEAD_START_S = MappingProxyType(
    {BallQuality.NEUTRAL: 0.0, BallQuality.EASY: 0.4, BallQuality.STRETCHED: -0.2}
)
MOVING_S = MappingProxyType(
    {Footing.FORWARD: 0.25, Footing.SIDEWAYS: -0.15, Footing.BACKWARD: -0.3, Footing.STILL: 0.0}
)
"""How much sooner or later the run to the line starts: who steps in on a short serve is running
already. Our guess."""

WILDER = MappingProxyType(
    {BallQuality.NEUTRAL: 1.0, BallQuality.EASY: 0.9, BallQuality.STRETCHED: 1.4}
)
"""Our scatter off such a ball against the usual. Our guess."""

LITTLE = 0.2
"""Rallies in 100 below which the trade's usual advice, deep, stands."""

WORSE_THIRD = Points(mean=4.5, sd=3)
"""Row 3 at full level: +3 +- 2 for the clearly worse third, which is a level of two thirds."""

CRASHER_MUST_HIT = Points(mean=6, sd=4.5)
"""Row 4 at full level: +4 +- 3."""

PARTNER_CRASHES = Points(mean=-2, sd=2)
"""Row 3 wants nobody crashing off that third."""

CROSSING = Points(mean=2, sd=2)
"""They stack: at the one who crosses, into the lane that they left."""

SERVER_INSIDE = Points(mean=3, sd=2)
"""A server who stands inside the baseline has it at the feet."""

SLOW_FORWARD = Points(mean=2, sd=2)
DEEP_MIDDLE = Points(mean=1, sd=1)
THEY_DO_NOT_TALK = Points(mean=2, sd=1.5)
FACING_THE_THIRD = Points(mean=-1, sd=1.5)
"""Down the line we arrive right in front of the third."""

LONGER_LANE = Points(mean=0.5, sd=1)
NEEDS_OUR_AIM = Points(mean=-2, sd=2)
CROSS_WIND = Points(mean=-1, sd=1)

AT_THE_LINE = Points(mean=6, sd=3)
"""Row 2: at the line and still, against still on the way. How often that is, is computed."""

PACE_HURTS = Points(mean=1, sd=1.5)
DISLIKES_PACE = Points(mean=3.5, sd=2)
LIKES_PACE = Points(mean=-2, sd=2)
HATES_BENDING = Points(mean=5, sd=3)
SLICE_RISK = Points(mean=-1, sd=1.5)
STEP_IN = Points(mean=5, sd=3)
"""A short serve is a chance: row 8 the other way round."""


THIRD_GAP = 0.15
"""A third is the better one of the two if it lies this far above the partner's."""
