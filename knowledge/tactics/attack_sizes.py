"""Sizes of the rules of thumb about the speed-up, in rally points where they apply.

All common practice, no source; "row" is the row of the trade's table of sizes. What the plan also
uses (body spots, jams, counters, misses) stands in `knowledge.planning.sizes`.
"""

from __future__ import annotations

from typing import Final

from knowledge.ball_places import HeightName, height_m
from knowledge.engine import Points
from knowledge.vocabulary import RallyChance

ATTACKABLE_SHARE: Final = 15.0
"""Row 14: rallies of 100 in which we have a ball that could be sped up."""

DINKING_CHANCE: Final = RallyChance(0.5)

# Where: beside both hips, against the plain chest-high ball.

FEET: Final = Points(mean=1, sd=2)
"""At a set player the feet are a hard ball to hit: it has to dip."""

FEET_ON_THE_WAY: Final = Points(mean=5, sd=3)
"""Row 9 from our side: on the way in they must hit up from the feet."""

SLOW_DOWN: Final = Points(mean=2, sd=2)
WEAK_IN_MID_COURT: Final = Points(mean=3, sd=2)

SEAM: Final = Points(mean=1.5, sd=2)
"""Nobody's ball, and no line near; but a set player may meet it with an open paddle."""

TALK_LITTLE: Final = Points(mean=3, sd=2)
SEAM_IS_GUARDED: Final = Points(mean=-3, sd=2)

SHOULDER_OF_ONE_LEANING: Final = Points(mean=6, sd=3)
"""Only while they lean in: the paddle is low and forward then."""

TWO_HANDS_JAMMED: Final = Points(mean=1, sd=1)
DISLIKES_PACE: Final = Points(mean=2, sd=2)
CANNOT_RESET: Final = Points(mean=3, sd=2)
"""Who can't take the pace off floats the block: `worth`'s 4 points in 12 of 100 rallies, in 15."""

CROSS_TO_NO_PARTNER: Final = Points(mean=-4, sd=3)
CROSS_TO_A_READY_PARTNER: Final = Points(mean=1, sd=3)
"""Row 17: the counter of a cross ball goes straight ahead, to our partner."""

STRAIGHT_BACK_AT_US: Final = Points(mean=-2, sd=2)
"""The counter of a straight ball comes back at whoever hit it, who is not balanced."""

PARTNER_NOT_READY: Final = 0.35
"""How often our partner is not ready, where nobody says."""

# Whether: the speed-up against one more dink.

ABOVE_THE_NET: Final = Points(mean=8, sd=4)
"""Row 14."""

ROLLED: Final = Points(mean=3, sd=4)
ROLLED_BELOW_4_5: Final = Points(mean=-3, sd=3)
"""Off the bounce at the net or a little below it, with topspin: from 4.5 on most are this ball."""

LOW_IN_THE_AIR: Final = Points(mean=-3, sd=3)
"""Below the net out of the air there is no swing that brings it down again."""

TOO_LOW: Final = Points(mean=-6, sd=4)
STRETCHED: Final = Points(mean=-6, sd=4)
"""Row 15."""

THEY_ARE_OUT_OF_PLACE: Final = Points(mean=6, sd=4)
"""Row 15: late, leaning or moving opponents make it about even."""

SET_COUNTER: Final = Points(mean=-8, sd=4)
"""Row 14: a set target who counters well takes it all away."""

OWN_SPEED_UP: Final = Points(mean=3, sd=2)
OWN_TOPSPIN: Final = Points(mean=2, sd=2)

TIME_COUNTS: Final = 0.2
"""Share of the balls for which somebody is late that are won outright."""

HANDS_NEED_S: Final = 0.30
"""From the hit to a paddle that is there: simple reaction (0.213 s, Woods et al. 2015) and a short
move of the arm. Most guess from the shoulder, so it is a mean with a wide spread."""

HANDS_SPREAD_S: Final = 0.06
DISGUISE_S: Final = 0.06
"""What the bounce hides: about the time that the longer way gives away (the air takes 70 ms)."""

BELOW_NET_BAND_M: Final = 0.3
"""How far below the net "a bit below" reaches."""

KNEE_M: Final = height_m(HeightName.KNEE)

MID_COURT_FROM_M: Final = 3.8
"""From here on back, 5.5 ft behind the line, it is a drive from mid-court, no speed-up at it."""
