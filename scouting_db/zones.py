"""Time zones of books: UTC inside, the book's own zone where a day or an hour is meant."""

from __future__ import annotations

from datetime import UTC, datetime, tzinfo
from functools import lru_cache
from zoneinfo import ZoneInfo, ZoneInfoNotFoundError

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
