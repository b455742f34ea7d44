"""When a match begins: a clock time as said, on the day meant, in the book's zone."""

from __future__ import annotations

import re
from datetime import date, datetime, time, timedelta

from knowledge.regex import regex
from scouting_db.values import Micros
from scouting_db.zones import Moment, local_time, moment_of

JUST_NOW = timedelta(hours=1)
"""A time that was up to an hour ago is today's still: matches begin late. Common practice."""

_DAYS = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday")
_TOMORROW = regex(r"\b(?:tomorrow|tmrw|tmw|tomorow|tommorow|tommorrow)\b", re.IGNORECASE)
_NAMED_DAY = regex(
    r"\b(monday|tuesday|wednesday|thursday|friday|saturday|sunday)\b"
    r"|\bon (mon|tues?|wed|thu(?:rs?)?|fri|sat|sun)\b",
    re.IGNORECASE,
)


def moment_said(at: time, text: str, *, now: Micros, zone: str) -> Moment:
    """The moment of a clock time in a message: on the day it names, else the next such time."""
    today = local_time(now, zone).replace(tzinfo=None)
    day = _day_said(text, today.date())
    if day is not None:
        return moment_of(datetime.combine(day, at), zone)
    return next_time(at, now=now, zone=zone)


def names_a_day(text: str) -> bool:
    """Whether a message says on which day: "moved to 9:40 tomorrow"."""
    return _TOMORROW.search(text) is not None or _NAMED_DAY.search(text) is not None


def next_time(at: time, *, now: Micros, zone: str) -> Moment:
    """The next time the clock in the zone shows `at`, or the last one if that is just past."""
    today = local_time(now, zone).replace(tzinfo=None)
    wall = datetime.combine(today.date(), at)
    if wall < today - JUST_NOW:
        wall += timedelta(days=1)
    return moment_of(wall, zone)


def wall_of(at: Micros, zone: str) -> datetime:
    """What the clock in the zone shows then."""
    return local_time(at, zone).replace(tzinfo=None, fold=0)


def in_other_zone(starts_at: Micros, *, made_at: Micros, old: str, new: str) -> Moment:
    """The same clock time in another zone, for a match that was announced in the wrong one.

    Where the old zone's next such time was meant, the new zone's next one is: at nine in the
    morning in Denver, "10:40" is today, though in UTC it was over.
    """
    wall = wall_of(starts_at, old)
    if next_time(wall.time(), now=made_at, zone=old).at == starts_at:
        return next_time(wall.time(), now=made_at, zone=new)
    return moment_of(wall, new)


def _day_said(text: str, today: date) -> date | None:
    if _TOMORROW.search(text):
        return today + timedelta(days=1)
    found = _NAMED_DAY.search(text)
    if found is None:
        return None
    word = (found[1] or found[2]).lower()[:3]
    number = next(at for at, day in enumerate(_DAYS) if day.startswith(word))
    return today + timedelta(days=(number - today.weekday()) % len(_DAYS))
