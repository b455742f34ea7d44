"""Sizes of the rules of thumb about the serve, in rally points where they apply.

All common practice, no source; "row" is the row of the trade's table of sizes.
"""

from __future__ import annotations

from knowledge.effects import Points

DEEP = Points(mean=2.5, sd=1.5)
"""Row 5: in the last 4 ft against the middle of the box, before the misses that it costs."""

LAST_FT = 4.0
MID_BOX_FT = 7.5
"""Row 5's last feet, and the middle of the box, which is 15 ft deep (2025 edition, 2.A)."""

AIMS_FT = (2.0, 6.5)
"""What counts as a deep aim, in feet inside the baseline. Common practice, no source."""

LITTLE = 0.2
"""Rallies in 100 below which the trade's usual advice, deep, stands."""

MET_M = (0.7, 7.0)
"""Where a serve is hit: height, below the waist (2025 edition, 4.A), and distance from the net,
behind the baseline, in metres. Common practice, no source."""

WEAK_WING = Points(mean=1.5, sd=1.5)
"""Row 6 at full level: +1 +- 1 for a clearly weaker wing, which is a level of two thirds."""

ANY_BACKHAND = Points(mean=0.8, sd=1)
"""The backhand of a player of whom nothing is noted: most return worse off it."""

JAM = Points(mean=2.5, sd=1.5)
"""Row 6 at full level for the body; a note of it says more than "most backhands are worse"."""

AT_BODY = Points(mean=0.1, sd=0.7)
TWO_HANDS_DRIVE = Points(mean=-1.0, sd=1)
TWO_HANDS_WIDE = Points(mean=1.0, sd=1)
TWO_HANDS_JAMMED = Points(mean=0.6, sd=1)
"""A two-hander drives from the T, reaches poorly wide, and is cramped at the body."""

WEAK_RETURN = Points(mean=1.0, sd=1)
ANGLE = Points(mean=-0.3, sd=0.7)
GOOD_RETURNERS_ANGLE = Points(mean=-2.0, sd=1.5)
THROUGH_THE_MIDDLE = Points(mean=0.3, sd=0.7)
LONGER_RUN = Points(mean=0.4, sd=0.7)
SLOW_RUNNER_WIDE = Points(mean=1.5, sd=1)
SLOW_RUNNER_T = Points(mean=-0.7, sd=1)
"""A T serve shortens the run to the line."""

CROSSES_AFTER_A_WIDE_ONE = Points(mean=1.5, sd=1.5)
SLOW_THAT_WAY = Points(mean=1.0, sd=1)

CHANCE_OF_STACKING = 0.4
"""Where their noted side is not the court they receive in, and nobody said how they line up."""
