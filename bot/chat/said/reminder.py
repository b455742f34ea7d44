"""Reminders spoken of, and where the book's clocks are."""

from __future__ import annotations

from datetime import time
from enum import StrEnum

from knowledge.dataclass import dataclass


class ReminderVerb(StrEnum):
    """What is to be done about reminders."""

    SET = "set"
    OFF = "off"
    LIST = "list"


@dataclass(frozen=True, slots=True, kw_only=True)
class ReminderSaid:
    """Reminders spoken of: how long before (or at what time), off, or which there are.

    `always`: of every match from now on; `every`: of all those that wait.
    """

    text: str
    verb: ReminderVerb
    minutes: int | None = None
    at: time | None = None
    always: bool = False
    every: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class ZoneSaid:
    """Where the book's clocks are; without a `place` it is asked which zone counts.

    `zone` is None for a place that nobody knows; `near` are zones like it.
    """

    text: str
    place: str = ""
    zone: str | None = None
    near: tuple[str, ...] = ()
