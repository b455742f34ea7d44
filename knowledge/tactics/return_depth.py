"""How deep a return is aimed: what depth wins, what its misses cost, and the time it buys."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from knowledge.effects import Effect, Mechanism, OptionId, Points
from knowledge.situation import Situation
from knowledge.sources import computed
from knowledge.tactics import return_sizes as sizes
from knowledge.tactics.aim_words import deep_costs
from knowledge.tactics.conditions import rule_of_thumb
from knowledge.tactics.return_question import ReturnQuestion
from knowledge.tactics.return_time import TIME, bought_points
from knowledge.tactics.serve_return_depth import DepthRow, every_half_foot
from knowledge.tactics.shot_success import success_effect
from knowledge.vocabulary import Level

DEEP: Final = OptionId("deep")
MID_COURT: Final = OptionId("mid-court")

DEPTH: Final = computed("flight tables, our scatter and row 1's size")


def depth_row(situation: Situation) -> DepthRow:
    """Row 1, which counts double below 4.0."""
    factor = 2 if situation.level in (Level.L3_0, Level.L3_5) else 1
    return DepthRow(
        worth=sizes.DEEP.times(factor),
        last_ft=sizes.LAST_FT,
        mid_ft=sizes.MID_COURT_FT,
        aims_ft=every_half_foot(*sizes.AIMS_FT),
    )


def depth_effects(question: ReturnQuestion) -> Iterator[Effect]:
    """A deep aim against one at mid-court."""
    depth = question.depth
    yield rule_of_thumb(
        "depth", DEEP, depth.gain, Mechanism.TIME, "Deep thirds come up higher", source=DEPTH
    )
    yield rule_of_thumb(
        "deep time",
        DEEP,
        _time(question),
        Mechanism.TIME,
        "Deep is longer in the air than mid-court",
        source=TIME,
    )
    yield success_effect(
        DEEP,
        depth.cost,
        question.scatter,
        because=deep_costs(depth.extra_misses),
        one=question.returner,
    )


def _time(question: ReturnQuestion) -> Points:
    """What the deep one's time is worth against that of the one at mid-court."""
    return bought_points(*(question.slack_s(ball) for ball in (question.high, question.short)))
