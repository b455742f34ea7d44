"""What answers rest on, read through what is kept between turns, or with nothing kept."""

from __future__ import annotations

from contextlib import nullcontext
from typing import Any
from unittest.mock import patch

from talk import UPDATES, Talk

from bot.chat import turn
from bot.chat.answers.desk import Desk
from bot.chat.answers.evidence_read import with_profiles
from bot.chat.answers.record_read import logged_aims, meetings_before
from bot.chat.book_views import BookViews
from bot.chat.context import Context
from bot.chat.reply import Reply
from bot.chat.views_kept import views_of
from bot.post import Arrival, Incoming, IncomingKind, accept
from knowledge.mixing import MIXED_TOPICS
from scouting_db.book import Book
from scouting_db.directory import Directory
from scouting_db.values import BookId, InboxId


def evidence_of(talk: Talk, *, afresh: bool, book: BookId | None = None) -> dict[str, Any]:
    """Everything about everybody on the roster: profiles, other matches' rallies, logged choices.

    `afresh` reads it with nothing kept, leaving what is kept alone.
    """
    with talk.store.writing() as connection:
        directory = Directory(connection)
        account = directory.account("console", talk.bot)
        chat = directory.chat(account, talk.chat, is_group=talk.is_group)
        number = book or chat.book
        assert number is not None
        context = Context.from_json(chat.context if book is None else {})
        desk = Desk(
            connection=connection,
            book=Book(connection, number, person=None, now=talk.now),
            book_id=number,
            chat=chat,
            incoming=Incoming(
                kind=IncomingKind.TEXT, chat=talk.chat, user_id="", user_name="", at=talk.now
            ),
            inbox=InboxId(0),
            now=talk.now,
            context=context,
            views=BookViews() if afresh else views_of(connection),
        )
        return _evidence(desk)


def _evidence(desk: Desk) -> dict[str, Any]:
    desk.context = desk.context.among({row.player for row in desk.view.roster})
    theirs = desk.context.theirs
    return {
        "roster": desk.view.roster,
        "pairs": desk.view.pairs,
        "profiles": dict(with_profiles(desk, [row.player for row in desk.view.roster]).profiles),
        "meetings": meetings_before(desk),
        "aims": {topic: logged_aims(desk, topic, theirs) for topic in sorted(MIXED_TOPICS)},
        "log": desk.log(),
        "agreements": desk.agreements(),
    }


def replies_to(talk: Talk, text: str, *, afresh: bool) -> tuple[Reply, ...]:
    """What the text would be answered now; nothing of that turn stays in the store.

    `afresh` answers with nothing kept, leaving what is kept alone.
    """
    views = patch.object(turn, "views_of", lambda _: BookViews()) if afresh else nullcontext()
    with (
        views,
        talk.store._writer.connect() as connection,
        connection.begin() as transaction,
    ):
        directory = Directory(connection)
        account = directory.account("console", talk.bot)
        incoming = Incoming(
            kind=IncomingKind.TEXT,
            chat=talk.chat,
            user_id=talk.user,
            user_name=talk.name,
            at=talk.now,
            text=text,
        )
        arrival = Arrival(update_id=next(UPDATES), incoming=incoming)
        accept(connection, account, [arrival], now=talk.now)
        (row,) = directory.claim(account)
        heard = turn.hear(connection, row, now=talk.now, uniform=talk.uniform)
        transaction.rollback()
    return heard.replies
