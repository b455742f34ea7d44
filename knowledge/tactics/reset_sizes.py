"""Sizes of the rules of thumb about a ball sped up at us, in rally points where they apply.

All common practice, no source; "row" is the row of the trade's table of sizes. Leaving a ball is
computed outright (reset_flight).
"""

from __future__ import annotations

from typing import Final

from knowledge.ball_places import NET_M
from knowledge.effects import Points
from knowledge.vocabulary import RallyChance

ATTACKED_SHARE: Final = 15.0
"""Row 18: rallies of 100 in which a ball is sped up at us."""

NEUTRAL: Final = RallyChance(0.5)

WAIST_UP: Final = Points(mean=4, sd=4)
"""Row 18: waist up, at the line, balanced: the counter."""

BELOW_THE_NET: Final = Points(mean=-6, sd=3)
IN_MID_COURT: Final = Points(mean=-6, sd=3)
"""Row 18: there the reset is worth 6."""

MOVING: Final = Points(mean=-5, sd=3)
"""Off balance the second ball is lost."""

STILL_LEANING: Final = Points(mean=4, sd=3)
"""An attacker who still leans in has his paddle low and forward: at his hip or feet."""

PARTNER_ASLEEP: Final = Points(mean=3, sd=3)

OWN_COUNTER: Final = Points(mean=4, sd=2)
OWN_RESET: Final = Points(mean=3, sd=2)
OWN_PACE: Final = Points(mean=2, sd=2)

WAIST_M: Final = NET_M
"""The net is about as high as a hip: 0.93 m up, at 0.53 of our usual stature."""

OFTEN_WAIST_UP: Final = 0.5
"""How many of the balls sped up at us come at the waist or higher, where nobody says."""

MID_COURT_FROM_M: Final = 3.4
"""From 4 ft behind our kitchen line on it is mid-court."""
