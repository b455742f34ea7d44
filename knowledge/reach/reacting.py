"""How long after the opponent's contact a player starts to move."""

from __future__ import annotations

import math
from typing import Final

SIMPLE_REACTION_S: Final = 0.213
"""One stimulus, one answer, hardware delay taken out: Woods et al. 2015, Frontiers in Human
Neuroscience 9:131 (231 ms as measured, 213 ms corrected)."""

SIMPLE_PER_YEAR_S: Final = 0.00055
CHOICE_PER_YEAR_S: Final = 0.00280
"""Slowing per year of age, of one answer and of a choice: Woods et al. 2015, 9:131 and 9:193."""

REFERENCE_AGE_YEARS: Final = 40.0
"""The age that the figures above are taken at. Our guess at the middle of those tested."""

HICK_PER_BIT_S: Final = 0.150
"""An unpractised choice costs about this per bit: Hick 1952, Quarterly Journal of Experimental
Psychology 4:11."""

TRAINED_SHARE: Final = 0.4
"""What is left of the choice cost after thousands of balls. From memory: much less; our guess."""

CLUB_ANTICIPATION: Final = 0.2
"""Share of the reaction that reading the swing saves. Our guess; expert returners, who move 177 ms
after contact (Aviles et al. 2021, Journal of Sports Sciences), save about 0.3 by this model."""

NO_SPLIT_STEP_S: Final = 0.868 - 0.764
"""What a player loses who did not split: step and reach 764 ms with, 868 ms without a split step
(Uzu et al. 2009, Journal of Sports Sciences 27:1233)."""


def choice_cost_s(choices: int, *, practised: float = TRAINED_SHARE) -> float:
    """Time that choosing among so many answers adds: Hick's b log2(n + 1), counted from n = 1."""
    if choices < 1:
        raise ValueError(f"a player has at least one answer to choose from, not {choices}")
    return practised * HICK_PER_BIT_S * (math.log2(choices + 1) - 1)


def reaction_s(
    *,
    choices: int = 2,
    practised: float = TRAINED_SHARE,
    anticipation: float = CLUB_ANTICIPATION,
    age_years: float | None = None,
    is_split: bool = True,
) -> float:
    """Seconds from their contact to our first move.

    `choices` are the answers to choose from, two for forehand or backhand; `anticipation` runs
    from 0, nothing read, to 1, moving with the contact. Age counts if it is told.
    """
    if not 0 <= anticipation <= 1:
        raise ValueError(f"anticipation lies between 0 and 1, not at {anticipation}")
    older = 0.0 if age_years is None else age_years - REFERENCE_AGE_YEARS
    per_year = SIMPLE_PER_YEAR_S if choices == 1 else CHOICE_PER_YEAR_S
    unread = SIMPLE_REACTION_S + choice_cost_s(choices, practised=practised) + per_year * older
    return (1 - anticipation) * unread + (0.0 if is_split else NO_SPLIT_STEP_S)
