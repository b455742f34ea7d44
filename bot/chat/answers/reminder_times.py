"""Reminders as they are set: how long before, when that is, and the lines that say so."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from typing import Any

from bot.chat.answers.desk import Desk, undo_button
from bot.chat.reply import Button
from bot.chat.start_times import wall_of
from bot.chat.wording import wording
from scouting_db.values import ChatId, MatchId, MatchRow, Micros, ReminderId, ReminderRow
from scouting_db.zones import ClockChange, Moment

DEFAULT_MINUTES = 20
"""How long before a match its plan is sent, unless told otherwise: time to warm up and read.
Common practice, no source."""

MOST_MINUTES = 24 * 60

MINUTES = "reminder_minutes"
"""The preference of a book: minutes before every match; `off` for none."""

OFF = "off"
ZONE_TOLD = "zone_told"
"""The preference that says that the book's zone is not the one it was made with by chance."""

_MICROS_PER_MINUTE = 60_000_000


def usual_minutes(desk: Desk) -> int | None:
    """How long before a match this book is reminded; None where reminders are off."""
    said = desk.book.preferences().get(MINUTES) or str(DEFAULT_MINUTES)
    return int(said) if said.isdigit() else None


def zone_of_book(desk: Desk) -> str:
    return desk.book.about().zone


def set_reminder(desk: Desk, row: MatchRow, *, minutes: int, chat: ChatId | None = None) -> Micros:
    """Remind the chat of the match so long before; when that is. Nothing is set for the past."""
    assert row.starts_at is not None, "a reminder needs a time"
    due = Micros(row.starts_at - minutes * _MICROS_PER_MINUTE)
    zone = zone_of_book(desk)
    if due > desk.now:
        desk.book.remind(
            row.match,
            chat or desk.chat.chat,
            minutes_before=minutes,
            starts_wall=wall_of(row.starts_at, zone).isoformat(timespec="minutes"),
            zone=zone,
            due=due,
        )
    return due


def remind_of_announced(desk: Desk, match: MatchId, moment: Moment | None) -> list[str]:
    """Set the usual reminder of a match just announced; the lines that say so.

    An earlier announcement of the same pair that did not begin is the same match told anew:
    its reminder goes.
    """
    row = desk.book.match(match)
    if row is None or row.starts_at is None:
        return []
    for earlier in _same_pair(desk, row):
        desk.book.cancel_reminders(earlier)
    minutes = usual_minutes(desk)
    lines = change_lines(moment)
    if minutes is None:
        return lines
    due = set_reminder(desk, row, minutes=minutes)
    lines += said_of(desk, due, minutes)
    if zone_of_book(desk) == "UTC" and not desk.book.preferences().get(ZONE_TOLD):
        lines.append(wording("reminder.which_zone"))
    return lines


def times_of_same_pair(desk: Desk, match: MatchId) -> dict[str, Any]:
    """What stands of earlier announcements of the match's pair, to go back to."""
    row = desk.book.match(match)
    return times_now(desk, () if row is None else _same_pair(desk, row))


def _same_pair(desk: Desk, row: MatchRow) -> tuple[MatchId, ...]:
    if row.their_pair is None:
        return ()
    others = desk.book.matches_to_come(since=desk.now)
    return tuple(
        one.match for one in others if one.match != row.match and one.their_pair == row.their_pair
    )


def said_of(desk: Desk, due: Micros, minutes: int) -> list[str]:
    """When the chat is reminded of the match, or that it is too near for that, or past."""
    zone = zone_of_book(desk)
    starts = Micros(due + minutes * _MICROS_PER_MINUTE)
    if starts <= desk.now - _MICROS_PER_MINUTE:
        return [wording("reminder.past").format(at=f"{wall_of(starts, zone):%H:%M}")]
    if due <= desk.now:
        return [wording("reminder.too_near").format(minutes=span_words(minutes))]
    day = day_words(due, desk.now, zone)
    at = f"{wall_of(due, zone):%H:%M}"
    return [wording("reminder.set").format(at=at, day=day, minutes=span_words(minutes))]


def change_lines(moment: Moment | None) -> list[str]:
    """What was made of a clock time that a night skips or shows twice."""
    if moment is None or moment.change is None:
        return []
    key = "skipped" if moment.change is ClockChange.SKIPPED else "twice"
    return [wording(f"reminder.{key}").format(at=f"{moment.wall:%H:%M}")]


def day_words(at: Micros, now: Micros, zone: str) -> str:
    """ " tomorrow", " Sunday", " on 3 July", or nothing for today."""
    then, today = wall_of(at, zone), wall_of(now, zone)
    days = then.toordinal() - today.toordinal()
    if days == 0:
        return ""
    if days == 1:
        return " tomorrow"
    return f" {then:%A}" if 0 < days < 7 else f" on {then.day} {then:%B}"


def span_words(minutes: int) -> str:
    """ "20 min", "2 h", "1 h 30"."""
    hours, rest = divmod(minutes, 60)
    if not hours:
        return f"{rest} min"
    return f"{hours} h" if not rest else f"{hours} h {rest:02d}"


def city_of(zone: str) -> str:
    """A zone as a reply calls it: by its city."""
    return zone.rsplit("/", 1)[-1].replace("_", " ")


def title_of(desk: Desk, row: MatchRow) -> str:
    """ "Okafor/Lindqvist", or "the match" where nobody is named."""
    ours = set(desk.ours)
    pair = () if row.their_pair is None else row.their_pair.players
    theirs = [player for player in pair if player not in ours]
    return "/".join(desk.names(theirs)) or wording("reminder.a_match")


def times_now(desk: Desk, matches: Sequence[MatchId]) -> dict[str, Any]:
    """What stands of the times of these matches, as plain JSON to go back to."""
    rows = [row for one in matches if (row := desk.book.match(one)) is not None]
    waiting = [one for one in desk.book.reminders() if one.match in matches]
    return {
        "zone": zone_of_book(desk),
        "minutes": desk.book.preferences().get(MINUTES, ""),
        "matches": [[row.match, row.starts_at, row.court] for row in rows],
        "reminders": [
            [one.match, one.chat, one.minutes_before, one.starts_wall, one.zone, one.due]
            for one in waiting
        ],
    }


def times_changed(desk: Desk, meant: Sequence[MatchId], does: Callable[[], None]) -> Button:
    """Change the times of these matches; the button that takes it back."""
    before = times_now(desk, meant)
    does()
    desk.match_changed()
    after = times_now(desk, meant)
    return undo_button(desk.record("times", {"after": after}, before))


def times_as_stored(desk: Desk, stored: Mapping[str, Any]) -> None:
    """The times stand as they did; a match that is gone since is passed over."""
    about = desk.book.about()
    if about.zone != stored["zone"]:
        desk.book.set_about(name=about.name, zone=stored["zone"])
    desk.book.prefer(MINUTES, stored["minutes"])
    kept = [_reminder(one) for one in stored["reminders"]]
    for match, starts_at, court in stored["matches"]:
        row = desk.book.match(MatchId(match))
        if row is None:
            continue
        desk.book.replace_match(replace(row, starts_at=starts_at, court=court))
        desk.book.put_back_reminders(row.match, [one for one in kept if one.match == match])
    desk.match_changed()


def _reminder(stored: Sequence[Any]) -> ReminderRow:
    match, chat, minutes, wall, zone, due = stored
    return ReminderRow(
        reminder=ReminderId(0),
        match=MatchId(match),
        chat=ChatId(chat),
        minutes_before=minutes,
        starts_wall=wall,
        zone=zone,
        due=Micros(due),
    )
