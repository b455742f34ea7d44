"""Sizes behind the page on stacking: rally points in the rallies where they apply.

All common practice, no source, unless said. Of two courts the difference is twice the size: being
on the right one gains as much as the wrong one loses.
"""

from __future__ import annotations

from typing import Final

from knowledge.engine import Points
from knowledge.tactics import return_sizes

SHARE: Final = 100.0
"""A formation is there in every rally."""

FOREHANDS_INSIDE: Final = Points(mean=2, sd=2)
"""Both forehands in the middle, against one of each; both backhands there lose as much."""

MIDDLE_BALLS: Final = Points(mean=2, sd=1.5)
"""The forehand in the middle gets some ten balls in a hundred more: a clearly better player's,
against an average one's. A fifth part of "70 of 100 balls to the weaker one" is worth 4."""

WEAK_WING_WIDE: Final = Points(mean=1, sd=0.75)
"""A weak backhand at the sideline, where nobody helps; in the middle beside our forehand it is
hidden, and gains as much."""

TWO_HANDED_WIDE: Final = Points(mean=0.75, sd=0.75)
"""A two-hander reaches less when pulled wide: 3 points in the quarter of rallies that do it."""

USUAL_SIDE: Final = Points(mean=1, sd=1)
"""Whoever always plays one side knows its balls."""

HIT_AT_CROSSER: Final = Points(mean=-2, sd=2)
"""They return at the one who is crossing, or into the lane that is left."""

HOW_MANY_HIT_AT_CROSSER: Final = 0.3
"""Opponents who look for that, where nobody says."""

RETURN_THEN_CROSS: Final = Points(mean=-1, sd=1)
"""A return hit by one who must cross at once: shorter, or missed now and then."""

MUDDLE: Final = Points(mean=-2, sd=1)
"""First time together, or a stack never done: two of a hundred lost to muddle where it is done."""

MUDDLE_ON_RETURN: Final = 1.5
"""On return it is more to think of, while the serve is in the air. Our guess."""

NEW_PAIRS: Final = 0.2
"""Pairs that play together for the first time, where nobody says."""

HAVE_NEVER_DONE_IT: Final = 0.2
"""Pairs that never did, where nobody says."""

HABIT: Final = Points(mean=1, sd=1)
"""What a pair does anyway costs no thought."""

SIGNS: Final = Points(mean=-0.5, sd=0.5)
"""A sign before every return: seen late or not at all once in a while."""

UNREAD: Final = Points(mean=0.5, sd=0.75)
"""With a sign they cannot know who will be where."""

NOBODY_OUTSIDE: Final = Points(mean=-1, sd=1)
"""Both cross the court at once, through each other."""

BREAKS_PATTERN: Final = Points(mean=1, sd=1.5)
"""Well behind, anything new makes them think: for some rallies."""

BEHIND_BY: Final = 4
"""Points behind from which a pattern is worth breaking."""

EXTRA_RUN_IN_HEAT: Final = Points(mean=-1, sd=1)
"""A longer run on every other return, in the heat or on heavy legs."""

AT_THE_LINE: Final = return_sizes.AT_THE_LINE.mean
"""At the line and still before the third arrives, against on the way: row 2."""

RUN_SPREAD_S: Final = 0.15
"""How much the time of a run over five metres varies. Our guess: a reach varies by 0.06 s."""
