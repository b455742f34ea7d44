"""Sizes of the rules of thumb about dinks, in rally points where they apply.

All common practice, no source; "row" is the row of the trade's table of sizes.
"""

from __future__ import annotations

from knowledge.effects import Points

WEAK_WING = Points(mean=4.5, sd=3)
"""Row 11 at full level: +3 +- 2 for a clearly weaker wing, which is a level of two thirds."""

LINE_KEEPS = 0.5
"""Row 11 wants a safe lane: down the line a weak wing is worth this much of it."""

ANY_BACKHAND = Points(mean=1.5, sd=1.5)
FOREHAND_IN_THE_MIDDLE = Points(mean=-1, sd=1)
TWO_HANDED_IN_THE_MIDDLE = Points(mean=-2, sd=1.5)
TWO_HANDED_WIDE = Points(mean=3, sd=2)
"""A two-hander rolls from the middle and reaches poorly: +3 +- 2 when pulled wide."""

BETWEEN_THEM = Points(mean=1, sd=1)
THEY_DO_NOT_TALK = Points(mean=2, sd=1.5)

LINE_IS_JUMPED = Points(mean=-2, sd=1.5)
"""Row 12, across or middle against down the line. How often a neutral dink comes off is next to
none of it: +0.5 for the middle, -0.6 for wide (computed, `dink_chances`). The short way back and
the corner that can be jumped are the rest."""

ERNIE = Points(mean=-6, sd=4)
ANGLE_BACK = Points(mean=-1.5, sd=1.5)
OFF_THE_COURT = Points(mean=1, sd=1.5)
ROUND_THE_POST_WIDE = Points(mean=-4, sd=3)
ROUND_THE_POST_LINE = Points(mean=-2, sd=2)
PARTNER_POACHES = Points(mean=-4, sd=3)
PARTNER_SQUEEZES = Points(mean=-2, sd=2)
BEHIND_THE_SQUEEZER = Points(mean=3, sd=2)
SLOW_DOWN_LOW = Points(mean=1.5, sd=1.5)
SLOW_THAT_WAY = Points(mean=3, sd=2)
QUICK_THAT_WAY = Points(mean=-1.5, sd=1.5)
KITCHEN_FAULTS = Points(mean=2, sd=1.5)
IMPATIENT = Points(mean=2, sd=1.5)
PATIENT = Points(mean=-1, sd=1)
LONG_REACH = Points(mean=-1.5, sd=1.5)

NO_PRESSURE = Points(mean=-1, sd=1)
"""What a soft ball at nobody gives away while we could aim."""

STRETCHED_LINE = Points(mean=-3, sd=2)
TIME_TO_RECOVER = Points(mean=3, sd=2)

SPEED_UP_EASY = Points(mean=8, sd=4)
"""Row 14: a ball above the net, in balance."""

SET_COUNTER = Points(mean=-9, sd=4)
"""Row 14: about nothing is left against a player who is set and counters well, straight ahead
neither: all of SPEED_UP_EASY and STRAIGHT_AHEAD."""

WEAK_HANDS = Points(mean=3, sd=2)
STRAIGHT_AHEAD = Points(mean=1, sd=1.5)
"""Row 17 where nobody says whether our partner is set: the counter comes straight back."""
