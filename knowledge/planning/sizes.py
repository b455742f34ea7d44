"""Sizes and shares of the rules of thumb behind a plan's lines. All common practice, no source.

Points are rally points where the rule applies, with the doubt of one standard deviation; a
share is rallies in 100 in which the choice arises, between good club and tournament players.
"""

from __future__ import annotations

from typing import Final

from knowledge.engine import Points
from knowledge.vocabulary import RallyChance

SERVING_CHANCE: Final = RallyChance(0.44)
RECEIVING_CHANCE: Final = RallyChance(0.56)
EVEN_CHANCE: Final = RallyChance(0.50)
ATTACKING_CHANCE: Final = RallyChance(0.58)
"""Usual rally chance once the situation has arisen; attacking: a ball above the net is worth +8."""

SERVE_SHARE: Final = 50.0
RETURN_SHARE: Final = 50.0
THIRD_SHARE: Final = 40.0
DINK_SHARE: Final = 35.0
HANDS_SHARE: Final = 25.0
LOB_SHARE: Final = 5.0

THIRD_AT_LATE_ONE: Final = Points(mean=2, sd=1.5)
THIRD_AT_WEAK_VOLLEY: Final = Points(mean=2, sd=1.5)
THIRD_AWAY_FROM_POACHER: Final = Points(mean=2, sd=1.5)
DRIVE_OFF_SHORT_RETURN: Final = Points(mean=4, sd=3)
DRIVE_AT_ONE_WHO_DISLIKES_PACE: Final = Points(mean=4, sd=3)
DRIVE_AT_SET_COUNTER: Final = Points(mean=-4, sd=3)
DRIVE_AT_SET_PAIR: Final = Points(mean=-2, sd=2)
"""Half of "drop off a deep return": how the return will come is not known before the rally."""

OUR_BETTER_SHOT: Final = Points(mean=2, sd=2)

BODY_SPOT: Final = Points(mean=5, sd=3)
JAMS_AT_BODY: Final = Points(mean=3, sd=2)
WEAK_COUNTER: Final = Points(mean=3, sd=2)
SET_COUNTER: Final = Points(mean=-6, sd=3)
MISS_INTO_SEAM: Final = Points(mean=1, sd=1)
MISS_GOES_WIDE: Final = Points(mean=-1, sd=1)

WAITS_ON_BACKHAND: Final = 0.7
"""How many players wait with the backhand in front, where nobody has looked."""
