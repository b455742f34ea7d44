"""Sizes of the rules of thumb behind a third whose ball is known: their pair, the line, the wing.

Common practice, no source; the rows are those of the trade's table of sizes. What the
ball itself asks for (rows 7 and 8) is computed in third_success. What a plan knows before the
rally, and the sizes of traits, stand in knowledge.planning.sizes.
"""

from __future__ import annotations

from typing import Final

from knowledge.effects import Points

AT_THE_LATE_ONE: Final = Points(mean=2, sd=1.5)
"""Row 10: to the late one; of the fifth and a fourth too."""

DOWN_THE_LINE: Final = Points(mean=-2, sd=1.5)
"""Row 10: the line against the middle; of the fifth too."""

LINE_LEFT_OPEN: Final = Points(mean=5, sd=3)
"""Row 10 does not apply when the line player is asleep."""

DRIVE_KEEPS_THEM_BACK: Final = Points(mean=4, sd=3)
DRIVE_AT_ONE_WHO_CANNOT_RESET: Final = Points(mean=3, sd=2)
"""Who can't take the pace off floats the block, as off a speed-up (`attack_sizes`)."""

DRIVE_OFF_A_BACKHAND: Final = Points(mean=-3, sd=2)
"""A backhand third is dropped, unless with two hands."""

DROPS_SAIL: Final = Points(mean=-2, sd=1.5)
DROPS_DIE: Final = Points(mean=-1.5, sd=1.5)
DRIVES_DIP: Final = Points(mean=1.5, sd=1.5)

CRASH_BEHIND_A_LOW_DRIVE: Final = Points(mean=3, sd=2)
CRASH_BEHIND_A_HIGH_DRIVE: Final = Points(mean=-5, sd=3)
CRASH_BEFORE_IT_IS_KNOWN: Final = Points(mean=1, sd=2)
"""Runners-up of the table: our partner crashes; a drive off a deep low ball comes up high."""

LOB_WITHOUT_DISGUISE: Final = Points(mean=-5, sd=3)
LOB_AT_WEAK_DEFENCE: Final = Points(mean=4, sd=4)
LOB_AT_QUICK_FEET: Final = Points(mean=-3, sd=3)
LOB_BUYS_TIME: Final = Points(mean=3, sd=3)
LOB_AT_DEEP_PAIR: Final = Points(mean=-5, sd=3)
"""Row 23 off a third: there is no disguise; it buys time where we are off balance."""
