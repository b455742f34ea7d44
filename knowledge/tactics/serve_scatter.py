"""How often a serve of ours misses: a normal scatter round the aim, wider for a weak server."""

from __future__ import annotations

import math
from dataclasses import dataclass

from knowledge.effects import Points
from knowledge.honest_risk import cost_of_misses
from knowledge.normal import normal_cdf
from knowledge.planning.sizes import SERVING_CHANCE
from knowledge.situation import OnCourt, Wind
from knowledge.vocabulary import Trait

DEEP_AIM_FT = 3.0
"""How far inside the baseline a deep serve is aimed. Common practice, no source."""

MID_BOX_AIM_FT = 7.5
"""The middle of the box, which is 15 ft deep (2025 edition, 2.A)."""

LINE_AIM_FT = 2.5
"""How far from the line a serve down the T or out wide is aimed. Common practice, no source."""

BODY_AIM_FT = 5.0
"""The middle of the box, which is 10 ft wide."""

USUAL_DEPTH_FT = 1.6
USUAL_ACROSS_FT = 1.0
"""Standard deviations of a good club server's landing. Common practice, no source."""

WILDER = 2.0
"""How much wider a clearly weak server scatters, and how much tighter a strong one. Our guess."""

WIND_SPREADS = 1.3
"""Gusts: along the court when it is behind us, sideways when across. Our guess."""

DOUBT = 0.25
"""How far the usual scatter may be off, as a share of it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Scatter:
    """Standard deviations of where a serve lands."""

    depth_ft: float = USUAL_DEPTH_FT
    across_ft: float = USUAL_ACROSS_FT

    def times(self, factor: float) -> Scatter:
        return Scatter(depth_ft=factor * self.depth_ft, across_ft=factor * self.across_ft)

    @property
    def deep_misses(self) -> float:
        """Extra misses in 100 of a deep aim against the middle of the box."""
        return 100 * (
            normal_cdf(-DEEP_AIM_FT / self.depth_ft) - normal_cdf(-MID_BOX_AIM_FT / self.depth_ft)
        )

    @property
    def line_misses(self) -> float:
        """Extra misses in 100 of an aim near a side line of the box against its middle."""
        return 100 * (
            normal_cdf(-LINE_AIM_FT / self.across_ft)
            - 2 * normal_cdf(-BODY_AIM_FT / self.across_ft)
        )


def scatter_of(server: OnCourt | None, wind: Wind | None) -> Scatter:
    """Our server's scatter: the usual one where nothing is noted of the serve."""
    level = 0.0 if server is None else server.profile.skill(Trait.SERVE).level
    factor = WILDER**-level
    return Scatter(
        depth_ft=USUAL_DEPTH_FT * factor * (WIND_SPREADS if wind is Wind.BEHIND_US else 1),
        across_ft=USUAL_ACROSS_FT * factor * (WIND_SPREADS if wind is Wind.ACROSS else 1),
    )


def deep_cost(scatter: Scatter) -> Points:
    """What the misses of a deep aim cost; the doubt is the scatter's."""
    return _cost(*(scatter.times(each).deep_misses for each in (1, 1 - DOUBT, 1 + DOUBT)))


def line_cost(scatter: Scatter) -> Points:
    """What the misses of an aim near a line cost."""
    return _cost(*(scatter.times(each).line_misses for each in (1, 1 - DOUBT, 1 + DOUBT)))


def _cost(misses: float, fewer: float, more: float) -> Points:
    lost = cost_of_misses(misses, SERVING_CHANCE)
    doubt = cost_of_misses(math.fabs(more - fewer) / 2, SERVING_CHANCE)
    return Points(mean=-lost, sd=doubt)
