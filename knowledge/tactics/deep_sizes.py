"""Sizes of what people add to a ball against a deep pair, in rally points where they apply.

All common practice, no source; "row" is the row of the trade's table of sizes.
"""

from __future__ import annotations

from typing import Final

from knowledge.effects import Points

DEEP_SHARE: Final = 5.0
"""Row 22: in so many rallies of 100 they are back and we are at the line."""

JUDGEMENT_SD: Final = 3.0
"""Row 22's own doubt, about: what the sums leave out."""

WILDER: Final = 1.6
"""A clear weakness in touch misses so much more, a clear strength so much less."""

SAID_LEVEL: Final = 0.6
"""Who is called slow or quick in the question counts as noted three times."""

SLOWER_ONE: Final = Points(mean=2, sd=2)
WEAK_LOW: Final = Points(mean=3, sd=2)
DRIVES_WELL: Final = Points(mean=-3, sd=2)
"""A deep ball to a driver's waiting forehand comes back hard."""

DISLIKES_SLOW_BALLS: Final = Points(mean=2, sd=2)
TIRES: Final = Points(mean=2, sd=2)

WIND_BEHIND_DROP: Final = Points(mean=-4, sd=3)
"""With the wind behind a drop sails (computed elsewhere: 3.5 ft at 10 mph)."""
