"""Reminders that fall due: claimed and put in the outbox in one transaction."""

from __future__ import annotations

import logging
from dataclasses import replace
from typing import Protocol

from sqlalchemy import Connection

from bot.chat.reply import Reply
from bot.post.outgoing import NO_LIMITS, Limits, messages_of
from scouting_db.directory import Directory
from scouting_db.passing import is_passing
from scouting_db.values import REMINDER, AccountId, DueReminder, Micros

log = logging.getLogger(__name__)


class Remind(Protocol):
    """What to say when a reminder falls due; nothing where it is of no use any more."""

    def __call__(
        self, connection: Connection, due: DueReminder, /, *, now: Micros
    ) -> tuple[Reply, ...]: ...


def give_reminders(
    connection: Connection,
    account: AccountId,
    remind: Remind,
    *,
    plain: Remind,
    now: Micros,
    limits: Limits = NO_LIMITS,
) -> int:
    """Claim the reminders due now of one chat and post them; how many. Call again until 0.

    Claim and outbox rows commit with the caller's transaction, so each is posted exactly once,
    whichever worker is killed when; from there it is sent like every reply, at least once.
    Where `remind` fails, `plain` says it in a line.
    """
    directory = Directory(connection)
    claimed = directory.claim_reminders(account, now=now)
    for due in claimed:
        if not _give(connection, due, remind, now=now, limits=limits):
            _give(connection, due, plain, now=now, limits=limits)
    return len(claimed)


def _give(
    connection: Connection, due: DueReminder, remind: Remind, *, now: Micros, limits: Limits
) -> bool:
    savepoint = connection.begin_nested()
    try:
        replies = remind(connection, due, now=now)
        posts = [
            replace(message.to_post(), priority=REMINDER)
            for reply in replies
            for message in messages_of(reply, limits)
        ]
        Directory(connection).post(due.row.chat, None, posts, now=now)
        savepoint.commit()
    except Exception as error:
        if is_passing(error):
            raise
        savepoint.rollback()
        # What it failed on may quote somebody; the log never holds what people write.
        log.error("reminder %d failed: %s", due.row.reminder, type(error).__name__)
        return False
    return True
