"""How old what stands behind a line is, as people say it."""

from __future__ import annotations

from dataclasses import replace

from knowledge.evidence import A_DAY_AHEAD, TraitEstimate
from knowledge.sources import Source, book


def source_of(estimate: TraitEstimate, today: int | None) -> Source:
    """Its notes and rallies; where notes disagree, the line itself says how many say what."""
    found = book(
        notes=estimate.notes,
        rallies=estimate.rallies,
        logged=estimate.logged,
        evidence=estimate.evidence,
    )
    return aged(found, estimate.newest_day, today)


def aged(source: Source, newest_day: int | None, today: int | None) -> Source:
    """The source with the age of the newest of it."""
    if newest_day is None or today is None:
        return source
    return replace(source, citation=f"{source.citation}, {age(today - newest_day)}")


DAYS_PER_WEEK = 7
DAYS_PER_MONTH = 30
WEEKS_SHOWN_FROM = 14
MONTHS_SHOWN_FROM = 60


def age(days: int) -> str:
    """How long ago, as people say it; a date to come is said to be one, and counts as today."""
    if days < -A_DAY_AHEAD:
        return "dated ahead"
    if days <= 0:
        return "today"
    if days < WEEKS_SHOWN_FROM:
        return f"{days} day{'' if days == 1 else 's'} old"
    if days < MONTHS_SHOWN_FROM:
        return f"{days // DAYS_PER_WEEK} weeks old"
    return f"{days // DAYS_PER_MONTH} months old"
