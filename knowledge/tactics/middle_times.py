"""Time to spare on a ball down the middle: how often each of our two is there, from a table.

The table (middle_times.toml) holds what knowledge.reach computes for every kind of ball, so that
a reply only looks it up; a test computes it again. To write it anew after a change of
knowledge.reach or middle_balls: `python tests/support/middle_table.py`.
"""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from enum import StrEnum
from functools import cache
from importlib.resources import files
from types import MappingProxyType
from typing import Any, Final

from knowledge.court import Point, at_kitchen_line, x_of_side_m
from knowledge.dataclass import dataclass
from knowledge.effects import Points
from knowledge.evidence import Profile
from knowledge.reach import points_in_time
from knowledge.sources import computed
from knowledge.vocabulary import BallKind, Side, Trait, Value

IN_TIME: Final = computed("time to get there")

STAND_SHARE: Final = 0.4
"""Where each of a pair at the line stands between middle and sideline, waiting for a ball down
the middle. Common practice, no source."""

WIDE_SHARE: Final = 1.1
"""Where a player pulled wide plays the ball before: a step past the sideline. Common practice."""

LEAST_SD_POINTS: Final = 0.5
TYPICAL_SHARE: Final = 0.4
"""Doubt that a computed size keeps, in points and of its size: the flights and the bodies are
typical ones. Our guess."""

WORTH: Final = 0.5
"""Our chance in a rally in which the middle is reached in time: an even one. Our guess."""


class Build(StrEnum):
    """A player as the table knows them: as usual, or with one trait at full."""

    USUAL = "usual"
    QUICK = "quick"
    SLOW = "slow"
    LONG = "long"
    SHORT_REACH = "short_reach"
    TALL = "tall"
    SHORT = "short"


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """A ball and where a player is to it: cross from its hitter or in front, set or pulled wide."""

    kind: BallKind
    is_cross: bool
    is_wide: bool

    @property
    def key(self) -> str:
        """Its row in the table."""
        where = "cross" if self.is_cross else "front"
        return f"{self.kind} {where} {'wide' if self.is_wide else 'set'}"


@dataclass(frozen=True, slots=True, kw_only=True)
class InTime:
    """One player and one ball: the chance to be there, and time to spare down the centre line.

    `chances` are for a spread of the time as usual, for a small and for a large one.
    """

    chances: tuple[float, float, float]
    slack_ms: float

    @property
    def points(self) -> tuple[float, float, float]:
        usual, small, large = (points_in_time(each, worth=WORTH) for each in self.chances)
        return usual, small, large


def stand(side: Side, *, is_wide: bool = False) -> Point:
    """Where the player of this side is as they hit."""
    share = WIDE_SHARE if is_wide else STAND_SHARE
    x_m = x_of_side_m(side, ours=True, share=share)
    return Point(x_m=x_m, y_m=at_kitchen_line(side, ours=True).y_m)


@cache
def _file() -> Mapping[str, Any]:
    text = files("knowledge.tactics").joinpath("middle_times.toml").read_text("utf-8")
    return MappingProxyType(tomllib.loads(text))


@cache
def _table() -> Mapping[str, Mapping[str, InTime]]:
    return MappingProxyType(
        {
            place: MappingProxyType({build: _in_time(row) for build, row in rows.items()})
            for place, rows in _file()["time"].items()
        }
    )


def _in_time(row: list[float]) -> InTime:
    usual, small, large, slack_ms = row
    return InTime(chances=(usual, small, large), slack_ms=slack_ms)


def in_time(place: Place, build: Build = Build.USUAL) -> InTime:
    """What the table says of a player of this build."""
    return _table()[place.key][build]


@cache
def place_points(place: Place) -> Points:
    """What being there in time from this place is worth, against a partner's usual place."""
    here = in_time(place).points
    usual = [in_time(Place(kind=place.kind, is_cross=each, is_wide=False)) for each in _WHEREVER]
    compared = tuple(
        each - sum(one.points[spread] for one in usual) / len(usual)
        for spread, each in enumerate(here)
    )
    return _points(compared)


_WHEREVER = (True, False)


@cache
def trait_points(place: Place, more: Build, less: Build) -> Points:
    """Half of what lies between two builds: a trait at full level, for it or against it."""
    best, worst = in_time(place, more).points, in_time(place, less).points
    return _points(tuple((a - b) / 2 for a, b in zip(best, worst, strict=True)))


@cache
def height_points(place: Place, height: Value) -> Points:
    """What a tall or a short player's reach adds or lacks."""
    build = Build.TALL if height is Value.TALL else Build.SHORT
    one, usual = in_time(place, build).points, in_time(place).points
    return _points(tuple(a - b for a, b in zip(one, usual, strict=True)))


def _points(by_spread: tuple[float, ...]) -> Points:
    """The size for the usual spread of the time, its doubt from the other two."""
    mean, small, large = by_spread
    doubt = max(LEAST_SD_POINTS, abs(small - large) / 2, TYPICAL_SHARE * abs(mean))
    return Points(mean=mean, sd=doubt)


def slack_ms(place: Place, profile: Profile) -> float:
    """This player's time to spare on a ball down the centre line, traits counted by their level."""
    usual = in_time(place).slack_ms
    found = usual
    for trait, more, less in SCALED:
        level = profile.skill(trait).level
        end = in_time(place, more if level > 0 else less).slack_ms
        found += abs(level) * (end - usual)
    return found


SCALED: Final = (
    (Trait.FOOT_SPEED, Build.QUICK, Build.SLOW),
    (Trait.REACH, Build.LONG, Build.SHORT_REACH),
)
"""Traits whose effect is computed, with the builds that have them at full."""


def strip_half_m(kind: BallKind) -> float:
    """How far past the middle a partner still gets to this ball in time, half the time at least."""
    return float(_file()["strip"][kind])
