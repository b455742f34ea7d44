"""How far across our serves scatter, and what an aim near a line costs: a normal curve."""

from __future__ import annotations

import math

from knowledge.dataclass import dataclass
from knowledge.effects import Points
from knowledge.honest_risk import cost_of_misses
from knowledge.normal import normal_cdf
from knowledge.planning.sizes import SERVING_CHANCE
from knowledge.situation import Wind

LINE_AIM_FT = 2.5
"""How far from the line a serve down the T or out wide is aimed. Common practice, no source."""

BODY_AIM_FT = 5.0
"""The middle of the box, which is 10 ft wide."""

USUAL_ACROSS_FT = 1.0
"""Standard deviation of a good club server's landing, sideways. Common practice, no source."""

WIND_SPREADS = 1.3
"""Gusts of a wind across. Our guess."""

DOUBT = 0.25
"""How far the usual scatter may be off, as a share of it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Scatter:
    """Standard deviation of where a serve lands, across."""

    across_ft: float = USUAL_ACROSS_FT

    def times(self, factor: float) -> Scatter:
        return Scatter(across_ft=factor * self.across_ft)

    @property
    def line_misses(self) -> float:
        """Extra misses in 100 of an aim near a side line of the box against its middle."""
        return 100 * (
            normal_cdf(-LINE_AIM_FT / self.across_ft)
            - 2 * normal_cdf(-BODY_AIM_FT / self.across_ft)
        )


def scatter_of(factor: float, wind: Wind | None) -> Scatter:
    """Our server's, for so many times the usual scatter."""
    return Scatter().times(factor * (WIND_SPREADS if wind is Wind.ACROSS else 1))


def line_cost(scatter: Scatter) -> Points:
    """What the misses of an aim near a line cost; the doubt is the scatter's."""
    usual, fewer, more = (
        cost_of_misses(scatter.times(each).line_misses, SERVING_CHANCE)
        for each in (1, 1 - DOUBT, 1 + DOUBT)
    )
    return Points(mean=-usual, sd=math.fabs(more - fewer) / 2)
