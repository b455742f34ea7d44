"""What a chat is told when a reminder falls due: how soon, against whom, and the plan."""

from __future__ import annotations

from dataclasses import replace

from sqlalchemy import Connection

from bot.chat.answers.desk import Desk
from bot.chat.answers.questions import answer_asked
from bot.chat.answers.reminder_times import span_words, title_of
from bot.chat.book_views import BookViews
from bot.chat.context import Asked, Context
from bot.chat.render import offer_buttons, rows
from bot.chat.reply import Reply
from bot.chat.start_times import wall_of
from bot.chat.wording import wording
from bot.post import Incoming, IncomingKind
from knowledge.vocabulary import Mode, Topic
from scouting_db.book import Book
from scouting_db.directory import Directory
from scouting_db.values import DueReminder, InboxId, MatchRow, MatchState, Micros

LATE_MINUTES = 2
"""A reminder that comes so many minutes after it was due says so; a loop's half minute does not
count."""

MISSED_MINUTES = 60
"""So long after the match began its plan helps nobody. Common practice, no source."""

_MICROS_PER_MINUTE = 60_000_000


def remind(connection: Connection, due: DueReminder, /, *, now: Micros) -> tuple[Reply, ...]:
    """The message of a reminder just claimed (a bot.post.Remind); none for a match under way."""
    desk = _desk(connection, due, now=now)
    row = desk.book.match(due.row.match)
    if row is None or row.starts_at is None or row.state is not MatchState.ANNOUNCED:
        return ()
    late = (now - due.row.due) // _MICROS_PER_MINUTE >= LATE_MINUTES
    title = _title(desk, row, late=late)
    if now - row.starts_at > MISSED_MINUTES * _MICROS_PER_MINUTE:
        return (Reply(text=title, about=("match", row.match)),)
    return (_with_plan(connection, desk, row, title),)


def plain(connection: Connection, due: DueReminder, /, *, now: Micros) -> tuple[Reply, ...]:
    """The same without the plan, for when that cannot be worked out."""
    desk = _desk(connection, due, now=now)
    row = desk.book.match(due.row.match)
    if row is None or row.starts_at is None:
        return ()
    text = "\n".join([_title(desk, row, late=False), wording("reminder.ask_plan")])
    return (Reply(text=text, buttons=rows(offer_buttons([Topic.GAME_PLAN]))),)


def _desk(connection: Connection, due: DueReminder, *, now: Micros) -> Desk:
    """A desk at which nobody wrote: what came in is the reminder itself."""
    chat = Directory(connection).chat_row(due.row.chat)
    return Desk(
        connection=connection,
        book=Book(connection, due.book, person=None, now=now),
        book_id=due.book,
        chat=chat,
        incoming=Incoming(
            kind=IncomingKind.OTHER,
            chat=chat.external_chat_id,
            user_id="",
            user_name="",
            at=now,
            is_group=chat.is_group,
        ),
        inbox=InboxId(0),
        now=now,
        context=Context.from_json(chat.context if chat.book == due.book else {}),
        views=BookViews(),
    )


def _title(desk: Desk, row: MatchRow, *, late: bool) -> str:
    assert row.starts_at is not None, "a reminder is of a match with a time"
    zone = desk.book.about().zone
    minutes = (row.starts_at - desk.now + _MICROS_PER_MINUTE - 1) // _MICROS_PER_MINUTE
    name = title_of(desk, row)
    values = {
        "minutes": span_words(max(0, minutes)),
        "at": f"{wall_of(row.starts_at, zone):%H:%M}",
        "match": name,
        "court": wording("match.court").format(court=row.court) if row.court else "",
    }
    if desk.now - row.starts_at > MISSED_MINUTES * _MICROS_PER_MINUTE:
        return wording("reminder.missed").format(**values)
    if minutes <= 0:
        return wording("reminder.begun").format(**values)
    return wording("reminder.late" if late else "reminder.due").format(**values)


def _with_plan(connection: Connection, desk: Desk, row: MatchRow, title: str) -> Reply:
    """The plan as if it had been asked for; the chat then speaks of this match."""
    pair = () if row.their_pair is None else row.their_pair.players
    theirs = tuple(player for player in pair if player not in desk.ours)
    if desk.context.match != row.match and not desk.entries():
        desk.context = replace(
            desk.context.after_result(), match=row.match, theirs=theirs, mode=Mode.OPEN
        )
    desk.context = desk.context.looking_at(*theirs)
    asked = Asked(topic=Topic.GAME_PLAN, text="", about=theirs)
    reply = answer_asked(desk, asked, short=False)
    Directory(connection).save_context(desk.chat.chat, desk.context.to_json())
    told = reply.text.splitlines()
    if told and told[-1].lower().startswith("vs "):
        told.pop()
    return replace(reply, text="\n".join([title, *told]), about=("match", row.match))
