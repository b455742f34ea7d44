"""Reminders of every book as they fall due: claimed once, whoever looks."""

from __future__ import annotations

from sqlalchemy import bindparam, func, select, update

from scouting_db.book.reminders import reminder_row
from scouting_db.directory.scope import Scope
from scouting_db.prepared import Prepared
from scouting_db.tables import book, chat, entry, match, reminder
from scouting_db.values import AccountId, BookId, ChatId, DueReminder, MatchState, Micros

QUIET_MICROS = 20 * 60 * 1_000_000
"""A match whose log went on within 20 minutes is being played, and nobody is reminded of another.
Common practice, no source: a match left unfinished must not silence a chat for good."""

_playing = (
    select(entry.c.n)
    .join_from(
        entry,
        match,
        (match.c.book_id == entry.c.book_id) & (match.c.match_id == entry.c.match_id),
    )
    .where(
        entry.c.book_id == reminder.c.book_id,
        entry.c.match_id != reminder.c.match_id,
        match.c.state == MatchState.RUNNING.value,
        entry.c.at > bindparam("quiet"),
    )
    .exists()
)
_UNCLAIMED = reminder.c.claimed_at.is_(None)
_DUE = (_UNCLAIMED, reminder.c.due_utc <= bindparam("now"), ~_playing)
_OPEN_CHAT = (chat.c.account_id == bindparam("account"), chat.c.blocked_at.is_(None))
_first = (
    select(reminder.c.chat_id, func.min(reminder.c.due_utc).label("due"))
    .where(*_DUE)
    .group_by(reminder.c.chat_id)
    .subquery("first")
)
# SKIP LOCKED passes over a chat that another worker has in hand (PostgreSQL, SELECT, "The
# Locking Clause"); SQLite has one writer at a time anyway, and there it is left out.
_LOCK_A_CHAT = Prepared(
    select(chat.c.chat_id)
    .join_from(chat, _first, _first.c.chat_id == chat.c.chat_id)
    .where(*_OPEN_CHAT)
    .order_by(_first.c.due)
    .limit(1)
    .with_for_update(of=chat, key_share=True, skip_locked=True)
)
_LOCK_BOOKS = (
    select(book.c.book_id)
    .where(
        book.c.book_id.in_(
            select(reminder.c.book_id).where(*_DUE, reminder.c.chat_id == bindparam("chat"))
        )
    )
    .with_for_update(key_share=True, skip_locked=True)
)
_CLAIM = (
    update(reminder)
    .where(
        *_DUE,
        reminder.c.chat_id == bindparam("chat"),
        reminder.c.book_id.in_(bindparam("books", expanding=True)),
    )
    .values(claimed_at=bindparam("now"))
    .returning(reminder)
)
_NEXT = (
    select(func.min(reminder.c.due_utc))
    .join_from(reminder, chat, chat.c.chat_id == reminder.c.chat_id)
    .where(_UNCLAIMED, reminder.c.due_utc > bindparam("now"), *_OPEN_CHAT)
)


class Reminders(Scope):
    """The claims of reminders."""

    def claim_reminders(self, account: AccountId, *, now: Micros) -> tuple[DueReminder, ...]:
        """The reminders due now of one chat, the first due first; empty where none is.

        Claimed in the caller's transaction: what it puts in the outbox for them commits with
        the claim, or neither does. What another worker has in hand, chat or book, is passed over
        for now, so no two wait for each other.
        """
        values = {"account": account, "now": now, "quiet": now - QUIET_MICROS}
        locked = _LOCK_A_CHAT.row(self._connection, values)
        if locked is None:
            return ()
        values = {"chat": ChatId(locked.chat_id), "now": now, "quiet": now - QUIET_MICROS}
        books = self._connection.execute(_LOCK_BOOKS, values).scalars().all()
        if not books:
            return ()
        rows = self._connection.execute(_CLAIM, {**values, "books": books}).all()
        found = [DueReminder(book=BookId(row.book_id), row=reminder_row(row)) for row in rows]
        return tuple(sorted(found, key=lambda one: (one.row.due, one.row.reminder)))

    def next_reminder(self, account: AccountId, *, now: Micros) -> Micros | None:
        """When the next one falls due after now; None where none waits."""
        found = self._connection.execute(_NEXT, {"account": account, "now": now}).scalar()
        return None if found is None else Micros(found)
