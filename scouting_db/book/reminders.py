"""Reminders of the book's matches: one in a chat for a match, until it is claimed."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from sqlalchemy import bindparam, delete, insert, select

from scouting_db.book.scope import Scope
from scouting_db.tables import reminder
from scouting_db.values import ChatId, MatchId, Micros, ReminderId, ReminderRow

_OF_MATCH = (reminder.c.book_id == bindparam("book"), reminder.c.match_id == bindparam("match"))
_WAITING = (
    select(
        reminder.c.reminder_id,
        reminder.c.match_id,
        reminder.c.chat_id,
        reminder.c.minutes_before,
        reminder.c.starts_wall,
        reminder.c.zone,
        reminder.c.due_utc,
    )
    .where(reminder.c.book_id == bindparam("book"), reminder.c.claimed_at.is_(None))
    .order_by(reminder.c.due_utc, reminder.c.reminder_id)
)
_ADD = insert(reminder)
_REMOVE = delete(reminder).where(*_OF_MATCH, reminder.c.chat_id == bindparam("chat"))
_REMOVE_WAITING = delete(reminder).where(*_OF_MATCH, reminder.c.claimed_at.is_(None))


class Reminders(Scope):
    """What is to be said before a match, and when."""

    def remind(
        self,
        match: MatchId,
        chat: ChatId,
        *,
        minutes_before: int,
        starts_wall: str,
        zone: str,
        due: Micros,
    ) -> ReminderId:
        """The chat's reminder of the match, in place of the one it had, given or not."""
        self._write(_REMOVE, {"match": match, "chat": chat})
        number = self._number()
        self._insert(
            _ADD,
            {
                "reminder_id": number,
                "match_id": match,
                "chat_id": chat,
                "minutes_before": minutes_before,
                "starts_wall": starts_wall,
                "zone": zone,
                "due_utc": due,
            },
        )
        return ReminderId(number)

    def reminders(self, *, match: MatchId | None = None) -> tuple[ReminderRow, ...]:
        """Those not yet given, the first due first; of one match, or of all."""
        rows = map(reminder_row, self._read(_WAITING))
        return tuple(row for row in rows if match is None or row.match == match)

    def cancel_reminders(self, match: MatchId) -> None:
        """Nobody is reminded of the match any more."""
        self._write(_REMOVE_WAITING, {"match": match})

    def put_back_reminders(self, match: MatchId, rows: Sequence[ReminderRow]) -> None:
        """The match has these reminders and no others, as they stood once."""
        self.cancel_reminders(match)
        for row in rows:
            self.remind(
                row.match,
                row.chat,
                minutes_before=row.minutes_before,
                starts_wall=row.starts_wall,
                zone=row.zone,
                due=row.due,
            )


def reminder_row(row: Any) -> ReminderRow:
    """The value of a row of the table."""
    return ReminderRow(
        reminder=ReminderId(row.reminder_id),
        match=MatchId(row.match_id),
        chat=ChatId(row.chat_id),
        minutes_before=row.minutes_before,
        starts_wall=row.starts_wall,
        zone=row.zone,
        due=Micros(row.due_utc),
    )
