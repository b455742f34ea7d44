"""Sizes behind taking a ball in the air or letting it bounce, in rally points.

Common practice, no source; "take it if in balance" and "must lunge" are row 20 of the coaching
review's table of effects.
"""

from __future__ import annotations

from typing import Final

from knowledge.effects import Points
from knowledge.planning import sizes as plan_sizes
from knowledge.vocabulary import RallyChance

NEUTRAL: Final = RallyChance(0.5)
SHARE: Final = 30.0
"""Row 20: rallies of 100 with a soft ball that could be taken either way."""

IN_BALANCE: Final = Points(mean=2, sd=2)
LUNGE: Final = Points(mean=-6, sd=3)
"""Row 20."""

DEAD_IN_FRONT: Final = Points(mean=5, sd=3)
"""A dead short ball stands up off its bounce: step in and attack it."""

AT_THE_FEET: Final = Points(mean=-3, sd=2)
"""Let go by it must be half volleyed, or the line given up."""

HIGH: Final = Points(mean=4, sd=3)
TOPSPIN_KICKS: Final = Points(mean=1.5, sd=1.5)
BETTER_VOLLEY: Final = Points(mean=3, sd=2.5)
LONG_REACH: Final = Points(mean=1.5, sd=1.5)
HALF_VOLLEYS_WELL: Final = Points(mean=2, sd=2)
DRAGGED_IN: Final = Points(mean=-4, sd=3)

DEAD_USUALLY: Final = 0.15
FEET_USUALLY: Final = 0.4
HIGH_USUALLY: Final = 0.15
TOPSPIN_USUALLY: Final = 0.3
"""How often, of soft balls, where nobody says."""

LOB_IN_BALANCE: Final = Points(mean=6, sd=4)
LOB_GOING_BACK: Final = Points(mean=-7, sd=4)
BETTER_OVERHEAD: Final = Points(mean=3, sd=2.5)
LOB_SHARE: Final = plan_sizes.LOB_SHARE
"""A lob: an overhead in balance keeps the line; on the way back a bounce buys the turn."""
