"""How fast a ball comes and a wind blows: "50 mph drive", "80 km/h", "15 mph wind"."""

from __future__ import annotations

import re
from functools import cache
from typing import Final

from bot.chat.ball_forms import form, group
from bot.chat.ball_line import BallLine
from bot.chat.measures_said import amount, metres_per_second, speed
from knowledge.dataclass import dataclass
from knowledge.wind import MPH_MPS, NOBODY_PLAYS_MPH, at_court

FASTEST_MPH: Final = 100.0
"""No ball is faster: the fastest in play are near 60 mph (Lindsey 2025; second-hand)."""

TOO_FAST: Final = "No ball comes at {said:.0f} mph: its pace left out."
TOO_WINDY: Final = "Nobody plays in {said:.0f} mph of wind: left out."
STANDS: Final = "A speed is above 0: left out."

_NEAR = 4
"""Words beside a speed among which the wind is named, for the speed to be the wind's."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FoundSpeeds:
    pace_mps: float | None = None
    wind_mps: float | None = None
    faults: tuple[str, ...] = ()


def find_speeds(line: BallLine) -> FoundSpeeds:
    """The ball's speed and the wind's; a wind without a unit is in miles an hour."""
    pace: float | None = None
    wind: float | None = None
    is_forecast = form("wind", "forecast").search(line.text) is not None
    for found in _form().finditer(line.text):
        value = metres_per_second(found)
        if _is_of_wind(line, found):
            wind = value if wind is None else wind
        else:
            pace = value if pace is None else pace
        line.cover(found)
    bare = line.take(form("wind", "bare")) if wind is None else None
    if bare is not None:
        wind = amount(group(bare, "num")) * MPH_MPS
    if wind is not None and is_forecast:
        wind = at_court(wind / MPH_MPS) * MPH_MPS
    return _checked(pace, wind)


@cache
def _form() -> re.Pattern[str]:
    return re.compile(rf"(?<!\w){speed()}")


def _is_of_wind(line: BallLine, found: re.Match[str]) -> bool:
    before = line.before(found).split()[-_NEAR:]
    after = line.text[found.end() :].split(",")[0].split()[:_NEAR]
    return any(form("wind", "words").fullmatch(one) for one in (*before, *after))


def _checked(pace: float | None, wind: float | None) -> FoundSpeeds:
    faults = []
    if pace is not None and not 0 < pace <= FASTEST_MPH * MPH_MPS:
        faults.append(_fault(TOO_FAST, pace))
        pace = None
    if wind is not None and not 0 <= wind <= NOBODY_PLAYS_MPH * MPH_MPS:
        faults.append(_fault(TOO_WINDY, wind))
        wind = None
    return FoundSpeeds(pace_mps=pace, wind_mps=wind, faults=tuple(faults))


def _fault(too_much: str, mps: float) -> str:
    return STANDS if mps <= 0 else too_much.format(said=mps / MPH_MPS)
