"""Sizes behind coming in and the fourth and fifth balls, in rally points.

Common practice, no source; the rows are those of the trade's table of sizes.
"""

from __future__ import annotations

from typing import Final

from knowledge.effects import Points
from knowledge.planning.sizes import RECEIVING_CHANCE, SERVING_CHANCE

COMING_IN_CHANCE: Final = SERVING_CHANCE
FOURTH_CHANCE: Final = RECEIVING_CHANCE
MOVE_SHARE: Final = 25.0
FIFTH_SHARE: Final = 40.0
FOURTH_SHARE: Final = 40.0

WAIT_FOR_A_HIGH_ONE: Final = Points(mean=5, sd=3)
"""Row 9: wait for a ball that they must hit up, against running in on a bad third."""

GO_BEHIND_A_LOW_ONE: Final = Points(mean=5, sd=3)
"""Row 9 does not apply when the ball is below the tape already: go."""

STILL_FEET: Final = Points(mean=1, sd=1)
THIRDS_THAT_ARE_LOW: Final = 0.45
"""Where nobody says how the third came."""

QUICK_IN: Final = Points(mean=2, sd=2)
GOOD_IN_MID_COURT: Final = Points(mean=2, sd=2)
THEY_LOB: Final = Points(mean=1.5, sd=1.5)
TOO_FAR: Final = Points(mean=-2, sd=1.5)
LINE_IS_FREE: Final = Points(mean=6, sd=3)
ONE_UP_ONE_BACK: Final = Points(mean=2, sd=2)

ATTACK_A_HIGH_BALL: Final = Points(mean=8, sd=4)
ATTACK_A_LOW_BALL: Final = Points(mean=-6, sd=4)
ATTACK_A_PLAIN_BALL: Final = Points(mean=-3, sd=3)
"""Rows 14 and 15; between them half of row 15."""

AT_WEAK_HANDS_OR_KNEES: Final = Points(mean=2, sd=1.5)
INTO_A_POACHER: Final = Points(mean=-2, sd=1.5)

KEEPS_THEM_BACK: Final = Points(mean=4, sd=3)
"""A deep fourth at the feet keeps them in mid-court: as a deep return (row 1), row 22."""

LIFTED_DEEP: Final = Points(mean=-5, sd=3)
DROP_VOLLEY_LETS_THEM_IN: Final = Points(mean=-3, sd=3)
DROP_AT_SLOW_FEET: Final = Points(mean=8, sd=4)
"""Row 22: keep them deep +3; slow forward and far back, the drop volley +4 over that."""

ANGLE_MISSES: Final = Points(mean=-2, sd=2)
ANGLE_WHEN_HIGH: Final = Points(mean=4, sd=3)
"""Row 21: in balance and near, the angle."""

WEAK_IN_MID_COURT: Final = Points(mean=3, sd=2)
SLOW_FORWARD: Final = Points(mean=2, sd=1.5)
