"""How deep to aim a serve or a return: how many fly long and how many land deep, and what pays.

The flight's tables hold one aim for each contact, wind and scatter: how far inside the baseline
it lands, how often it is in play and how often it lands in the last metres. Both chances tell how
far landings spread; round any other aim of the same arc they then lie as a normal curve, and what
depth wins and misses cost is in closed form. No turn integrates.
"""

from __future__ import annotations

import math
from functools import lru_cache
from statistics import NormalDist
from typing import Final

from knowledge.court import HALF_LENGTH_M, METRES_PER_FOOT
from knowledge.dataclass import dataclass
from knowledge.effects import Points
from knowledge.flight import FORMS, Aim, Shot
from knowledge.honest_risk import cost_of_misses
from knowledge.normal import normal_cdf
from knowledge.tactics.shot_success import Ball, OurScatter, success_points
from knowledge.tactics.wind_along import BREEZE_MPS
from knowledge.vocabulary import RallyChance

GUSTS: Final = 0.3
"""How much a wind along the court varies round what we aim for, as a share of what it moves the
ball: gusts. Common practice, no source."""

CARRIES_FT: Final = {Shot.SERVE: (4.9, 5.6), Shot.RETURN: (6.2, 7.4)}
"""What 10 mph from behind and against moves a serve, and a high return, struck as in still air:
`knowledge.wind.shift`, computed again by a test. A flat return moves 4.4 and 5.1 ft."""

LEAST_CHANCE: Final = 0.55
"""Below this the table tells no spread: the shot is mostly out."""

_NORMAL: Final = NormalDist()


@dataclass(frozen=True, slots=True, kw_only=True)
class DepthRow:
    """A row of the trade's table about depth: the last feet against an aim at mid-court.

    `worth` is for a ball that lands in the last `last_ft`, against one that lands `mid_ft` inside
    the baseline. In between, and beyond, each foot counts alike: our guess.
    """

    worth: Points
    last_ft: float
    mid_ft: float
    aims_ft: tuple[float, ...]

    @property
    def per_foot(self) -> Points:
        return self.worth.times(1 / (self.mid_ft - self.last_ft / 2))


@dataclass(frozen=True, slots=True, kw_only=True)
class Landings:
    """Where balls aimed along one arc land: a normal curve round the aim, this wide."""

    spread_ft: float

    def long(self, inside_ft: float) -> float:
        """The chance that a ball aimed so far inside the baseline flies out over it."""
        return normal_cdf(-inside_ft / self.spread_ft)

    def deep(self, inside_ft: float, last_ft: float) -> float:
        """The chance that it lands in the last so many feet, and in."""
        return normal_cdf((last_ft - inside_ft) / self.spread_ft) - self.long(inside_ft)

    def feet_gained(self, inside_ft: float, mid_ft: float) -> float:
        """How much deeper than `mid_ft` it lands on average; balls that fly long count nothing.

        The mean of (mid - x) over x > 0 for normal x: (mid - a) Phi(a / s) - s phi(a / s).
        """
        z = inside_ft / self.spread_ft
        return (mid_ft - inside_ft) * normal_cdf(z) - self.spread_ft * _NORMAL.pdf(z)


def landings(ball: Ball, factor: float) -> Landings:
    """How far this shot's landings spread for so many times the usual scatter, gusts included."""
    return _landings(_rounded(ball), round(factor, 2))


def _rounded(ball: Ball) -> Ball:
    return Ball(
        shot=ball.shot,
        height_m=round(ball.height_m, 1),
        from_net_m=round(ball.from_net_m, 1),
        lane=ball.lane,
        wind_mps=round(ball.wind_mps, 1),
    )


@lru_cache(maxsize=2048)
def _landings(ball: Ball, factor: float) -> Landings:
    gust_ft = GUSTS * abs(carry_ft(ball.shot, ball.wind_mps))
    return Landings(spread_ft=math.hypot(_spread_ft(ball.aimed(factor), ball.shot), gust_ft))


def _spread_ft(aim: Aim, shot: Shot) -> float:
    """The smaller of two readings of the table, each too large in its own way.

    1. As if every miss flew long. 2. As if landings were normal up to the last metres: the share
    of balls in play that land short of those is Phi((a - l) / s) / Phi(a / s).
    """
    inside = inside_ft(aim.depth_m)
    legal = min(max(aim.legal, LEAST_CHANCE), 0.999)
    by_misses = inside / _NORMAL.inv_cdf(legal)
    near_m, far_m = FORMS[shot].meant.depth_m
    last = (far_m - near_m) / METRES_PER_FOOT
    return min(by_misses, _by_share(inside, last, 1 - min(aim.meant / legal, 0.999)))


def _by_share(inside_ft: float, last_ft: float, short: float) -> float:
    """The spread at which this share of the balls in play lands short of the last feet."""
    low, high = 0.1, 20.0
    for _ in range(30):
        middle = (low + high) / 2
        found = normal_cdf((inside_ft - last_ft) / middle) / normal_cdf(inside_ft / middle)
        low, high = (middle, high) if found < short else (low, middle)
    return high


def inside_ft(depth_m: float) -> float:
    """A landing's distance behind the net as feet inside the baseline."""
    return (HALF_LENGTH_M - depth_m) / METRES_PER_FOOT


def carry_ft(shot: Shot, wind_mps: float) -> float:
    """Feet that a wind along the court moves the ball: farther if positive."""
    behind, against = CARRIES_FT[shot]
    return wind_mps / BREEZE_MPS * (behind if wind_mps > 0 else against)


@dataclass(frozen=True, slots=True, kw_only=True)
class Depth:
    """A deep aim and what it does, against the aim at mid-court."""

    row: DepthRow
    ball: Ball
    scatter: OurScatter
    inside_ft: float
    chance: RallyChance

    def at(self, factor: float) -> Landings:
        return landings(self.ball, factor)

    @property
    def usual(self) -> Landings:
        return self.at(self.scatter.factor)

    @property
    def long_in_100(self) -> float:
        return 100 * self.usual.long(self.inside_ft)

    @property
    def extra_misses(self) -> float:
        """More balls of 100 that fly long than of an aim at mid-court."""
        return self.long_in_100 - 100 * self.usual.long(self.row.mid_ft)

    @property
    def deep_chance(self) -> float:
        """The chance to land in the last feet, in play."""
        return self.usual.deep(self.inside_ft, self.row.last_ft)

    @property
    def gain(self) -> Points:
        """What landing deeper wins before its misses: the row's size, for the feet gained."""
        mid_ft = self.row.mid_ft
        here, there = (self.usual.feet_gained(aim, mid_ft) for aim in (self.inside_ft, mid_ft))
        return self.row.per_foot.times(here - there)

    @property
    def cost(self) -> Points:
        """What the extra misses cost; the doubt is the scatter's."""
        return success_points(self._kept, self.scatter, level=self.chance)

    def numbers(self, aim_ft: float) -> dict[str, float]:
        """The figures behind an aim so far inside the baseline."""
        return {
            "aim_inside_ft": aim_ft,
            "deep_aim_inside_ft": self.inside_ft,
            "landing_spread_ft": self.usual.spread_ft,
            "long_in_100": 100 * self.usual.long(aim_ft),
            "deep_chance": self.deep_chance,
            "deep_extra_misses": self.extra_misses,
            "deep_wins_points": self.gain.mean,
            "deep_costs_points": -self.cost.mean,
            "wind_carry_ft": carry_ft(self.ball.shot, self.ball.wind_mps),
        }

    def _kept(self, factor: float) -> float:
        lands = self.at(factor)
        return self.chance * (1 - lands.long(self.inside_ft)) / (1 - lands.long(self.row.mid_ft))


def best_depth(row: DepthRow, ball: Ball, scatter: OurScatter, chance: RallyChance) -> Depth:
    """The deep aim that pays best for this scatter: what it wins less what its misses cost."""
    lands = landings(ball, scatter.factor)

    def pays(aim_ft: float) -> float:
        won = row.per_foot.mean * lands.feet_gained(aim_ft, row.mid_ft)
        return won - float(cost_of_misses(100 * lands.long(aim_ft), chance))

    best = max(row.aims_ft, key=pays)
    return Depth(row=row, ball=ball, scatter=scatter, inside_ft=best, chance=chance)


def every_half_foot(first_ft: float, last_ft: float) -> tuple[float, ...]:
    """Aims to choose from, half a foot apart: nobody aims finer."""
    steps = round(2 * (last_ft - first_ft))
    return tuple(first_ft + step / 2 for step in range(steps + 1))
