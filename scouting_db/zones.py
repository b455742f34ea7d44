"""Time zones of books: UTC inside, the book's own zone where a day or an hour is meant."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta, tzinfo
from enum import StrEnum
from functools import lru_cache
from zoneinfo import ZoneInfo, ZoneInfoNotFoundError

from knowledge.dataclass import dataclass
from scouting_db.values import Micros

_MICROS_PER_SECOND = 1_000_000


def checked_zone(name: str) -> str:
    """The name, if this machine knows the zone; else ValueError."""
    if name != "UTC":
        try:
            ZoneInfo(name)
        except (ZoneInfoNotFoundError, ValueError, OSError):
            raise ValueError(
                f"{name!r} is no time zone; expected one such as Europe/Vienna"
            ) from None
    return name


@lru_cache(maxsize=256)
def zone(name: str) -> tzinfo:
    """The zone, or UTC where this machine lacks its table: a day off by hours beats no answer."""
    try:
        return UTC if name == "UTC" else ZoneInfo(name)
    except (ZoneInfoNotFoundError, ValueError, OSError):
        return UTC


def local_time(at: Micros, name: str) -> datetime:
    """The wall time in the zone."""
    seconds, micros = divmod(at, _MICROS_PER_SECOND)
    return datetime.fromtimestamp(seconds, zone(name)).replace(microsecond=micros)


def local_day(at: Micros, name: str) -> int:
    """The ordinal of the date in the zone (`date.toordinal`)."""
    return local_time(at, name).toordinal()


class ClockChange(StrEnum):
    """Why a wall time is not one moment: skipped when clocks go forward, shown twice when back."""

    SKIPPED = "skipped"
    TWICE = "twice"


@dataclass(frozen=True, slots=True, kw_only=True)
class Moment:
    """A wall time in a zone as a moment; `wall` is what the clock shows then.

    `change` is set where the wall time said was none, or two.
    """

    at: Micros
    wall: datetime
    change: ClockChange | None = None


def moment_of(wall: datetime, name: str) -> Moment:
    """The moment at which a clock in the zone shows `wall` (a time without a zone).

    PEP 495 and the documentation of zoneinfo: with `fold=0` a time that is shown twice is the
    first one, and a skipped one is reckoned with the offset before the change, so that the clock
    shows it moved on by as much as was skipped. Both suit a reminder: rather early, and never
    before the night's change.
    """
    there = zone(name)
    first = wall.replace(tzinfo=there, fold=0)
    at = first.astimezone(UTC)
    shown = at.astimezone(there).replace(tzinfo=None, fold=0)
    change = None
    if shown != wall.replace(fold=0):
        change = ClockChange.SKIPPED
    elif first.utcoffset() != first.replace(fold=1).utcoffset():
        change = ClockChange.TWICE
    return Moment(at=_micros(at), wall=shown, change=change)


_EPOCH = datetime(1970, 1, 1, tzinfo=UTC)


def _micros(at: datetime) -> Micros:
    return Micros((at - _EPOCH) // timedelta(microseconds=1))
