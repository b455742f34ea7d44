"""Reminders set, moved, listed and cancelled by saying so."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime

from bot.chat.answers import matches
from bot.chat.answers.desk import Desk
from bot.chat.answers.names import settled
from bot.chat.answers.reminder_times import (
    DEFAULT_MINUTES,
    MINUTES,
    MOST_MINUTES,
    OFF,
    change_lines,
    city_of,
    day_words,
    said_of,
    set_reminder,
    span_words,
    times_changed,
    title_of,
    usual_minutes,
    zone_of_book,
)
from bot.chat.render import rows
from bot.chat.reply import Reply
from bot.chat.said import MatchMoved, MatchSaid, ReminderSaid, ReminderVerb
from bot.chat.start_times import moment_said, names_a_day, wall_of
from bot.chat.wording import wording
from knowledge.tactics.standing_words import capital
from scouting_db.values import MatchRow, MatchState, Micros
from scouting_db.zones import Moment, moment_of

MOST_LISTED = 8

_MICROS_PER_MINUTE = 60_000_000
_HOUR = 60 * _MICROS_PER_MINUTE


def take_reminder(desk: Desk, said: ReminderSaid) -> Reply:
    """Set, switch off or list."""
    match said.verb:
        case ReminderVerb.LIST:
            return _list(desk)
        case ReminderVerb.OFF:
            return _off(desk, said)
        case ReminderVerb.SET:
            return _set(desk, said)


def _to_come(desk: Desk) -> tuple[MatchRow, ...]:
    """Announced matches with a time that is not long past."""
    return desk.book.matches_to_come(since=Micros(desk.now - _HOUR))


def _next(desk: Desk) -> MatchRow | None:
    """The match spoken of if it has not begun, else the next one by its time."""
    current = desk.match_row()
    if current is not None and current.state is MatchState.ANNOUNCED:
        return current
    return next(iter(_to_come(desk)), None)


def _set(desk: Desk, said: ReminderSaid) -> Reply:
    row = _next(desk)
    minutes = _minutes(desk, said, row)
    if minutes is None or not 1 <= minutes <= MOST_MINUTES:
        return Reply(text=wording("reminder.range"))
    timed = [one for one in _to_come(desk) if said.always or row is None or one == row]
    is_usual = said.always or not timed or usual_minutes(desk) is None
    due: list[Micros] = []

    def does() -> None:
        if is_usual:
            desk.book.prefer(MINUTES, str(minutes))
        due.extend(set_reminder(desk, one, minutes=minutes) for one in timed)

    undo = times_changed(desk, [one.match for one in timed], does)
    lines = [wording("reminder.usual").format(minutes=span_words(minutes))] if is_usual else []
    if due:
        lines += said_of(desk, due[0], minutes)
    if row is not None and row.starts_at is None:
        lines.append(wording("reminder.no_time"))
    return Reply(text="\n".join(lines), buttons=rows([undo]))


def _minutes(desk: Desk, said: ReminderSaid, row: MatchRow | None) -> int | None:
    """How long before: as said, or from the time said to the match's, or the usual."""
    if said.minutes is not None:
        return said.minutes
    if said.at is None:
        return usual_minutes(desk) or DEFAULT_MINUTES
    if row is None or row.starts_at is None:
        return None
    starts = wall_of(row.starts_at, zone_of_book(desk))
    at = moment_of(datetime.combine(starts.date(), said.at), zone_of_book(desk)).at
    return (row.starts_at - at) // _MICROS_PER_MINUTE


def _off(desk: Desk, said: ReminderSaid) -> Reply:
    waiting = desk.book.reminders()
    here = [one for one in waiting if one.chat == desk.chat.chat]
    if not waiting and not said.always:
        return Reply(text=wording("reminder.none"))
    row = _next(desk)
    spoken_of = [one for one in here if row is not None and one.match == row.match]
    meant = waiting if said.always or said.every else (spoken_of or here or waiting)[:1]
    numbers = list(dict.fromkeys(one.match for one in meant))

    def does() -> None:
        for match in numbers:
            desk.book.cancel_reminders(match)
        if said.always:
            desk.book.prefer(MINUTES, OFF)

    undo = times_changed(desk, numbers, does)
    if said.always:
        return Reply(text=wording("reminder.off"), buttons=rows([undo]))
    told = [title_of(desk, one) for match in numbers if (one := desk.book.match(match))]
    text = wording("reminder.cancelled").format(match=", ".join(told))
    return Reply(text=text, buttons=rows([undo]))


def _list(desk: Desk) -> Reply:
    waiting = [one for one in desk.book.reminders() if one.chat == desk.chat.chat]
    if not waiting:
        key = "off" if usual_minutes(desk) is None else "none"
        return Reply(text=wording(f"reminder.{key}"))
    zone = zone_of_book(desk)
    lines = [wording("reminder.list").format(zone=city_of(zone))]
    for one in waiting[:MOST_LISTED]:
        row = desk.book.match(one.match)
        if row is None or row.starts_at is None:
            continue
        line = wording("reminder.listed").format(
            at=f"{wall_of(one.due, zone):%H:%M}",
            day=day_words(one.due, desk.now, zone),
            starts=f"{wall_of(row.starts_at, zone):%H:%M}",
            match=title_of(desk, row),
        )
        lines.append(line)
    if len(waiting) > MOST_LISTED:
        lines.append(wording("behind.more").format(count=len(waiting) - MOST_LISTED))
    return Reply(text="\n".join(lines))


def take_move(desk: Desk, said: MatchMoved) -> Reply:
    """The match meant begins at another time or elsewhere; its reminder moves along."""
    row = _meant(desk, said)
    if row is None:
        return _no_such_match(desk, said)
    if row.starts_at is None and said.at is None and said.court is None:
        return Reply(text=wording("reminder.no_time"))
    moment = _new_start(desk, row, said)
    starts_at = row.starts_at if moment is None else moment.at
    court = row.court if said.court is None else said.court
    moved = replace(row, starts_at=starts_at, court=court)
    lines: list[str] = []
    undo = times_changed(desk, [row.match], lambda: lines.extend(_move(desk, row, moved)))
    text = wording("reminder.moved").format(
        match=capital(title_of(desk, row)),
        at="" if starts_at is None else _at(desk, starts_at),
        court=wording("match.court").format(court=court) if court else "",
    )
    return Reply(
        text="\n".join([text, *change_lines(moment), *lines]),
        buttons=rows([undo]),
        about=("match", row.match),
    )


def take_more_of_match(desk: Desk, said: MatchSaid) -> Reply | None:
    """A time or a court told alone is of the match announced, if that has not begun."""
    row = desk.match_row()
    is_alone = not said.mentions and said.format is None and said.format_fault is None
    if row is None or row.state is not MatchState.ANNOUNCED or not is_alone:
        return None
    return take_move(desk, MatchMoved(text=said.text, at=said.at, court=said.court))


def _move(desk: Desk, row: MatchRow, moved: MatchRow) -> list[str]:
    waiting = desk.book.reminders(match=row.match)
    desk.book.replace_match(moved)
    if moved.starts_at is None or moved.starts_at == row.starts_at:
        return []
    desk.book.cancel_reminders(row.match)
    for one in waiting:
        set_reminder(desk, moved, minutes=one.minutes_before, chat=one.chat)
    here = next((one for one in waiting if one.chat == desk.chat.chat), None)
    minutes = usual_minutes(desk) if here is None else here.minutes_before
    if minutes is None:
        return []
    return said_of(desk, set_reminder(desk, moved, minutes=minutes), minutes)


def _meant(desk: Desk, said: MatchMoved) -> MatchRow | None:
    """The match against those named, else the one spoken of, else the next."""
    named = set(settled(said.mentions) or ())
    if not named:
        return _next(desk)
    current = desk.match_row()
    waiting = [] if current is None or current.state is not MatchState.ANNOUNCED else [current]
    for row in (*waiting, *_to_come(desk)):
        if row.their_pair is not None and named & {*row.their_pair.players}:
            return row
    return None


def _no_such_match(desk: Desk, said: MatchMoved) -> Reply:
    """Nothing is announced that could move: with names and a time it is an announcement.

    Without names it would be a match against nobody, which rallies then count for.
    """
    if said.at is None:
        return Reply(text=wording("reminder.no_match"))
    if not said.mentions:
        return Reply(text=wording("reminder.which_match").format(at=f"{said.at:%H:%M}"))
    announced = MatchSaid(text=said.text, mentions=said.mentions, at=said.at, court=said.court)
    return matches.announce(desk, announced)


def _new_start(desk: Desk, row: MatchRow, said: MatchMoved) -> Moment | None:
    zone = zone_of_book(desk)
    if said.by_minutes is not None and row.starts_at is not None:
        at = Micros(row.starts_at + said.by_minutes * _MICROS_PER_MINUTE)
        return Moment(at=at, wall=wall_of(at, zone))
    if said.at is None:
        return None
    told = moment_said(said.at, said.text, now=desk.now, zone=zone)
    if row.starts_at is None or names_a_day(said.text):
        return told
    same_day = moment_of(datetime.combine(wall_of(row.starts_at, zone).date(), said.at), zone)
    return same_day if told.at < same_day.at or same_day.at >= desk.now - _HOUR else told


def _now(desk: Desk) -> datetime:
    return wall_of(desk.now, zone_of_book(desk))


def _at(desk: Desk, at: Micros) -> str:
    zone = zone_of_book(desk)
    return f"{day_words(at, desk.now, zone)} {wall_of(at, zone):%H:%M}"
