"""The zone of the book's clocks, told in words or tapped: what was announced moves with it."""

from __future__ import annotations

from dataclasses import replace

from bot.chat.answers.desk import Desk
from bot.chat.answers.reminder_times import (
    ZONE_TOLD,
    change_lines,
    city_of,
    set_reminder,
    times_changed,
    usual_minutes,
    zone_of_book,
)
from bot.chat.payload import BadPayloadError, Verb, tap
from bot.chat.render import rows
from bot.chat.reply import Button, Reply
from bot.chat.said import ZoneSaid
from bot.chat.start_times import in_other_zone, wall_of
from bot.chat.wording import wording
from scouting_db.values import MatchRow, Micros
from scouting_db.zones import Moment, checked_zone

MOST_TOLD = 8

_DAY = 24 * 60 * 60 * 1_000_000
"""A day in microseconds, for a start told on the clock that was wrong."""


def take_zone(desk: Desk, said: ZoneSaid) -> Reply:
    """The book's clocks are there from now on; an unknown place is asked about."""
    if not said.place:
        zone = zone_of_book(desk)
        return Reply(text=wording("reminder.zone_is").format(city=city_of(zone), zone=zone))
    if said.zone is None:
        buttons = [Button(label=city_of(one), payload=tap(Verb.ZONE, one)) for one in said.near]
        text = wording("reminder.zone_unknown").format(place=said.place[:30])
        return Reply(text=text, buttons=rows(buttons))
    return _set_zone(desk, said.zone)


def press_zone(desk: Desk, zone: str) -> Reply:
    """The same from a button; BadPayloadError for a zone that nobody knows."""
    try:
        return _set_zone(desk, checked_zone(zone))
    except ValueError as error:
        raise BadPayloadError(str(error)) from None


def _set_zone(desk: Desk, zone: str) -> Reply:
    about, to_come = desk.book.about(), _zoned(desk)
    moments: list[Moment] = []

    def does() -> None:
        desk.book.set_about(name=about.name, zone=zone)
        desk.book.prefer(ZONE_TOLD, zone)
        moments.extend(_to_zone(desk, row, about.zone, zone) for row in to_come)

    undo = times_changed(desk, [row.match for row in to_come], does)
    lines = [
        wording("reminder.zone_set").format(
            city=city_of(zone), now=f"{wall_of(desk.now, zone):%H:%M}"
        )
    ]
    if to_come and about.zone != zone:
        starts = ", ".join(f"{one.wall:%H:%M}" for one in moments[:MOST_TOLD])
        lines.append(wording("reminder.zone_matches").format(starts=starts, city=city_of(zone)))
    lines += [line for one in moments for line in change_lines(one)][:1]
    return Reply(text="\n".join(lines), buttons=rows([undo]))


def _zoned(desk: Desk) -> tuple[MatchRow, ...]:
    """Matches whose times were told on the clock that is now said to be another one."""
    return desk.book.matches_to_come(since=Micros(desk.now - _DAY))


def _to_zone(desk: Desk, row: MatchRow, old: str, new: str) -> Moment:
    assert row.starts_at is not None, "only matches with a time are to come"
    moment = in_other_zone(row.starts_at, made_at=row.made_at, old=old, new=new)
    waiting = desk.book.reminders(match=row.match)
    moved = replace(row, starts_at=moment.at)
    desk.book.replace_match(moved)
    desk.book.cancel_reminders(row.match)
    for one in waiting:
        set_reminder(desk, moved, minutes=one.minutes_before, chat=one.chat)
    minutes = usual_minutes(desk)
    if not waiting and minutes is not None and row.starts_at <= desk.now:
        set_reminder(desk, moved, minutes=minutes)
    return moment
