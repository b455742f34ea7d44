"""Sizes of what people add to an overhead's computed worth, in rally points where they apply.

All common practice, no source; "row" is the row of the trade's table of sizes.
"""

from __future__ import annotations

from typing import Final

from knowledge.effects import Points

OVERHEAD_SHARE: Final = 4.0
"""Row 21: in so many rallies of 100 we get an overhead."""

DOUBT: Final = 0.25
"""How far the usual scatter may be off, as a share of it."""

JUDGEMENT_SD: Final = 4.0
"""Row 21's own doubt: what the sum leaves out."""

SLOW_FEET: Final = Points(mean=4, sd=2)
STIFF: Final = Points(mean=3, sd=2)
WEAK_LOW: Final = Points(mean=3, sd=2)
DISLIKES_PACE: Final = Points(mean=3, sd=2)
JAMS: Final = Points(mean=4, sd=3)
COUNTERS_WELL: Final = Points(mean=-6, sd=3)
THEY_DO_NOT_TALK: Final = Points(mean=2, sd=1.5)
SQUEEZES: Final = Points(mean=-4, sd=3)
WAITING_FOREHAND: Final = Points(mean=-3, sd=2)
"""A deep player whose forehand is a weapon waits for just that ball."""

NOT_SET_FOR_THE_BODY: Final = Points(mean=-5, sd=3)
"""Off balance there is no pace left to jam anybody: it sits up. Row 21 wants middle or feet."""

NO_TIME_AT_THE_LINE: Final = Points(mean=4.5, sd=3)
"""One up, one back: our coach's first target, whatever the sum says of the open court."""

SLOW_FORWARD: Final = Points(mean=3, sd=2)
NO_ANGLE_BACK: Final = Points(mean=1.5, sd=1.5)

SUN_WIDENS: Final = 1.35
WIND_WIDENS: Final = 1.15
"""How much further an aim scatters that looks into the sun, or in wind."""

WILDER: Final = 1.5
"""A clear weakness scatters so much more than usual, a clear strength so much less."""
