"""Sizes of the rules of thumb about the return, in rally points where they apply.

All common practice, no source; "row" is the row of the trade's table of sizes.
"""

from __future__ import annotations

from knowledge.effects import Points

DEEP = Points(mean=5, sd=2)
"""Row 1: in the last 5 ft against mid-court, before the misses that it costs; double below 4.0."""

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

TIME_TO_THE_LINE = Points(mean=3, sd=2)
"""Row 2 is +6 for being still at the line: half a second is about half of that."""

SLOW_RUNNER = Points(mean=-4, sd=2)
"""Row 1: not hard and flat with a slow returner."""

PACE_HURTS = Points(mean=1, sd=1.5)
DISLIKES_PACE = Points(mean=3.5, sd=2)
LIKES_PACE = Points(mean=-2, sd=2)
QUICK_RUNNER = Points(mean=2, sd=1.5)
HATES_BENDING = Points(mean=5, sd=3)
SLICE_RISK = Points(mean=-1, sd=1.5)
STEP_IN = Points(mean=5, sd=3)
"""A short serve is a chance: row 8 the other way round."""


THIRD_GAP = 0.15
"""A third is the better one of the two if it lies this far above the partner's."""
