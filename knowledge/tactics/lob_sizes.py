"""Sizes of the rules of thumb about lobs, in rally points where they apply.

All common practice, no source; "row" is the row of the trade's table of sizes.
"""

from __future__ import annotations

from typing import Final

from knowledge.effects import Points
from knowledge.planning import sizes as plan_sizes

LOB_SHARE: Final = plan_sizes.LOB_SHARE
"""Row 23."""

COLD: Final = Points(mean=-1, sd=2)
"""A lob without any reason for it."""

INVITES: Final = Points(mean=3, sd=4)
"""Row 23: at a leaning, short or slow player."""

PUNISHES: Final = Points(mean=-5, sd=3)
"""Row 23: a quick, tall target."""

LEANS_IN: Final = Points(mean=2.5, sd=2.5)
SHORT_REACH: Final = Points(mean=3, sd=3)
LONG_REACH: Final = Points(mean=-3, sd=2)
TIRES: Final = Points(mean=1, sd=1.5)
TIRES_IN_HEAT: Final = Points(mean=2.5, sd=2)

NO_DISGUISE: Final = Points(mean=-5, sd=3)
"""Row 23: seen coming; from a stretch or on the run everybody sees it."""

HIGH_BALL_WASTED: Final = Points(mean=-6, sd=3)
"""A ball above the net is worth +8 sped up (row 14): a lob gives that away."""

BACK_ALREADY: Final = Points(mean=-6, sd=3)
ONE_IS_BACK: Final = Points(mean=-3, sd=2)
JUST_MOVED_IN: Final = Points(mean=2.5, sd=2.5)

WIND_BEHIND_10_MPH: Final = Points(mean=-5, sd=3)
"""Row 23 for 10 mph behind; less and more in proportion."""

WIND_ACROSS_10_MPH: Final = Points(mean=-2, sd=2)
WIND_ANY_10_MPH: Final = Points(mean=-1.5, sd=2)
TOO_STRONG_AGAINST: Final = Points(mean=-4, sd=3)
INTO_WIND_HOLDS: Final = Points(mean=1, sd=1.5)
SUN_IN_THEIR_EYES: Final = Points(mean=2.5, sd=2)
OWN_LOB: Final = Points(mean=2, sd=2)

SHORT_OR_TALL: Final = 0.15
"""How many players count as short, and as tall, where nobody said."""

USUAL_WIND_MPH: Final = 10.0
"""A wind that is only said to blow: felt at the court from about here on."""

HOLDS_BELOW_MPH: Final = 15.0
"""Into a stronger wind no lob is safe."""

STRONGEST_MPH: Final = 40.0
"""No stronger wind is played in; what is more counts as this."""

GUESSED_LOB: Final = 0.08
GUESSED_DINK: Final = 0.01
"""Chance lost when they wait for it: a lob they hang back for is an overhead, a dink they lean
in on only a little worse."""

DEAD_DINKS_SHARE: Final = 15.0
"""In so many rallies of 100 we stand over a dead dink."""

TWICE_A_GAME: Final = 2.0
"""Grooving: more lobs than this and the surprise, which is the shot, is gone."""

HIGH_LOB_TIME: Final = Points(mean=3, sd=2)
SOFT_WHEN_REACHED: Final = Points(mean=2, sd=2)
SOFT_ON_THE_RUN: Final = Points(mean=-4, sd=3)
THEIR_OVERHEAD: Final = Points(mean=-3, sd=2)
OWN_TOUCH: Final = Points(mean=2, sd=2)

DRIVE_FROM_BACK: Final = Points(mean=-6, sd=3)
"""Moving away from the net a drive sits up for two set volleys."""

BACK_BUYS_TIME: Final = Points(mean=0.8, sd=1.5)
DROP_AT_RUNNER: Final = Points(mean=3, sd=2)
"""At the feet of whoever follows their own lob in."""
