"""One turn: a stored message in, its replies out, inside the caller's transaction.

The console and the Telegram bot take this same road; a tap decodes to what a text would have
been understood as, and from there on nothing differs.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import partial
from typing import Any
from weakref import WeakKeyDictionary

from sqlalchemy import Connection, Engine

from bot.chat.acting import acted, joined
from bot.chat.answers import (
    corrections,
    imports,
    notes,
    rallies,
)
from bot.chat.answers.desk import Desk, Uniform, unforeseeable
from bot.chat.answers.taps import press
from bot.chat.asking import asks
from bot.chat.context import Context
from bot.chat.gather import BookViews
from bot.chat.payload import Verb
from bot.chat.question import (
    KIND_OF,
    BookSaid,
    BookVerb,
    Kind,
    Question,
    RallySaid,
    ReminderSaid,
    ReminderVerb,
    RetellSaid,
    TimeoutsAsked,
    Unclear,
    Understood,
    WhySaid,
)
from bot.chat.reply import Reply
from bot.chat.understand import understand, understand_note
from bot.chat.wording import wording
from bot.chat.words import words
from bot.post import Incoming, IncomingKind
from scouting_db.book import Book
from scouting_db.directory import Directory
from scouting_db.values import BookId, ChatRow, InboxRow, MatchId, Micros, NoteId, PersonId, Role

LONGEST_BUTTON_NUMBER = 2
"""Digits; a score is never said in fewer than three."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Heard:
    """What a turn understood and said: the replies, and the trace for the `--json` contract."""

    kind: Kind
    understood: Understood | None
    replies: tuple[Reply, ...]
    trace: dict[str, Any]


def take_turn(connection: Connection, row: InboxRow, *, now: Micros) -> tuple[Reply, ...]:
    """Replies to one inbox row (a bot.post.Turn); every change is the caller's to commit."""
    return hear(connection, row, now=now).replies


def hear(
    connection: Connection, row: InboxRow, *, now: Micros, uniform: Uniform = unforeseeable
) -> Heard:
    """The same, with what was understood. `uniform` gives the numbers that a mix draws with."""
    directory = Directory(connection)
    incoming = Incoming.from_json(row.payload)
    chat = directory.chat_row(row.chat)
    person = directory.person(chat.account, incoming.user_id, incoming.user_name)
    book_id, role = _book_of(directory, chat, person, incoming.user_name)
    desk = Desk(
        connection=connection,
        book=Book(connection, book_id, person=person, now=now),
        book_id=book_id,
        chat=chat,
        incoming=incoming,
        inbox=row.inbox,
        now=now,
        context=Context.from_json(chat.context if chat.book == book_id else {}),
        views=_views_of(connection),
        uniform=uniform,
    )
    before = desk.context
    if incoming.reply_to is not None:
        desk.replying_to = directory.about_of(chat.chat, incoming.reply_to)
    heard = _listen(desk, may_write=role is Role.EDITOR)
    if desk.context != before:
        directory.save_context(chat.chat, desk.context.to_json())
    return heard


_VIEWS: WeakKeyDictionary[Engine, BookViews] = WeakKeyDictionary()
"""Views of books per open store, since two stores may number their books alike."""


def _views_of(connection: Connection) -> BookViews:
    return _VIEWS.setdefault(connection.engine, BookViews())


def _book_of(
    directory: Directory, chat: ChatRow, person: PersonId, user_name: str
) -> tuple[BookId, Role | None]:
    """The chat's book and the writer's role in it. Being in a chat makes nobody a member.

    In a private chat somebody who is no longer a member goes on with a book of their own.
    """
    name = f"{user_name}'s book"
    book = directory.settle_book(chat, person, name=name)
    role = directory.role(book, person)
    if role is None and not chat.is_group:
        book = directory.settle_book(replace(chat, book=None), person, name=name)
        role = directory.role(book, person)
        directory.save_context(chat.chat, {})
    return book, role


def _listen(desk: Desk, *, may_write: bool) -> Heard:
    incoming = desk.incoming
    if incoming.kind in (IncomingKind.TAP, IncomingKind.EDIT, IncomingKind.TEXT, IncomingKind.FILE):
        desk.context = desk.context.among({row.player for row in desk.view.roster})
    match incoming.kind:
        case IncomingKind.TAP:
            return _tapped(desk, incoming.payload or "", may_write=may_write)
        case IncomingKind.EDIT:
            return _edited(desk, may_write=may_write)
        case IncomingKind.TEXT:
            return _spoken(desk, incoming.text, may_write=may_write)
        case IncomingKind.FILE:
            return _filed(desk, may_write=may_write)
        case _:
            key = incoming.kind if incoming.kind in ("photo", "sticker", "voice") else "other"
            return _said(desk, Kind.UNCLEAR, None, Reply(text=wording(f"media.{key}")))


def _filed(desk: Desk, *, may_write: bool) -> Heard:
    file = desk.incoming.file
    if file is None:
        return _said(desk, Kind.UNCLEAR, None, Reply(text=wording("media.other")))
    if not may_write:
        return _said(desk, Kind.UNCLEAR, None, Reply(text=wording("unclear.members_only")))
    return _said(desk, Kind.BOOK, None, imports.take_file(desk, file))


def _said(desk: Desk, kind: Kind, understood: Understood | None, *replies: Reply) -> Heard:
    return Heard(kind=kind, understood=understood, replies=replies, trace=desk.trace)


_KIND_OF_TAP = {
    Verb.UNDO: Kind.UNDO,
    Verb.REDO: Kind.UNDO,
    Verb.NOTE: Kind.NOTE,
    Verb.CLAIM: Kind.NOTE,
    Verb.RALLY: Kind.RALLY,
    Verb.ENDED: Kind.RALLY,
    Verb.ENDED_BY: Kind.RALLY,
    Verb.MEANT: Kind.RALLY,
    Verb.TAG: Kind.RALLY,
    Verb.TIMEOUT: Kind.SCORE,
    Verb.SERVE: Kind.SCORE,
    Verb.SCORE: Kind.SCORE,
    Verb.AGREE: Kind.AGREEMENT,
    Verb.MODE: Kind.BOOK,
    Verb.PROFILE: Kind.NOTE,
    Verb.ADD: Kind.BOOK,
    Verb.ZONE: Kind.BOOK,
    Verb.IMPORT: Kind.BOOK,
}

_READING_TAPS = frozenset({Verb.ASK, Verb.WHY, Verb.MIX, Verb.PICK, Verb.EXAMPLE, Verb.LATER})
"""What anybody in a group may press; every other tap writes to the book."""


def _tapped(desk: Desk, payload: str, *, may_write: bool) -> Heard:
    parts = payload.split(":")
    verb = Verb(parts[1]) if len(parts) > 1 and parts[1] in {*Verb} else None
    kind = Kind.UNCLEAR if verb is None else _KIND_OF_TAP.get(verb, Kind.QUESTION)
    if not may_write and verb not in _READING_TAPS:
        return _said(desk, kind, None, Reply(text=wording("unclear.not_yours")))
    take_up = partial(_read_again, may_write=may_write)
    return _said(desk, kind, None, press(desk, payload, read_again=take_up))


def _read_again(desk: Desk, text: str, note: int | None, *, may_write: bool) -> Reply:
    """A message taken up again after a name was settled by a tap."""
    if note is not None:
        said = understand_note(text, chat=desk.chat_view())
        return corrections.name_settled(desk, NoteId(note), said)
    understood = understand(text, chat=desk.chat_view())
    if not may_write and not all(map(_only_reads, understood)):
        return Reply(text=wording("unclear.members_only"))
    if not may_write:
        understood = tuple(map(_for_reader, understood))
    return joined(acted(desk, understood))


def _edited(desk: Desk, *, may_write: bool) -> Heard:
    """An edited message: its note or its rally is read again; else nothing changes."""
    message = desk.incoming.external_message_id
    rally = None if message is None else desk.book.rally_of_message(desk.chat.chat, message)
    if rally is not None and may_write:
        return _edited_rally(desk, *rally)
    row = None if message is None else desk.book.note_of_message(desk.chat.chat, message)
    if row is None or row.deleted or not may_write:
        return _said(desk, Kind.CORRECTION, None, Reply(text=wording("media.edited")))
    said = understand_note(desk.incoming.text, chat=desk.chat_view())
    desk.book.add_note(desk.incoming.text, chat=desk.chat.chat)
    reply = notes.read_again(desk, row.note, said, origin="parsed")
    return _said(desk, Kind.CORRECTION, said, reply)


def _edited_rally(desk: Desk, match: MatchId, n: int) -> Heard:
    """The rally that the message told, told anew."""
    view = replace(desk.chat_view(), match_on=True)
    understood = understand(desk.incoming.text, chat=view)
    told = next((one for one in understood if isinstance(one, RallySaid)), None)
    reply = rallies.tell_anew(desk, match, n, desk.incoming.text, told)
    if reply is None:
        return _said(desk, Kind.CORRECTION, told, Reply(text=wording("media.edited")))
    return _said(desk, Kind.CORRECTION, told, reply)


def _spoken(desk: Desk, text: str, *, may_write: bool) -> Heard:
    if not text.strip():
        return _said(desk, Kind.UNCLEAR, None, Reply(text=wording("unclear.empty")))
    if _is_bare_number(text):
        said = Reply(text=wording("unclear.number").format(number=text.strip()))
        return _said(desk, Kind.UNCLEAR, None, said)
    view = desk.chat_view()
    about = desk.replying_to
    if about is not None and about.kind == "note" and may_write and not _is_new(text):
        whose = corrections.whom_it_says(desk, NoteId(about.id)) or view.focus
        said_of_note = understand_note(text, chat=replace(view, focus=whose, replying_to_note=True))
        reply = corrections.reply_to_note(desk, NoteId(about.id), text, said_of_note)
        return _said(desk, Kind.CORRECTION, said_of_note, reply)
    all_understood = understand(text, chat=view)
    if not may_write and not all(map(_only_reads, all_understood)):
        return _said(desk, Kind.UNCLEAR, None, Reply(text=wording("unclear.members_only")))
    if not may_write:
        all_understood = tuple(map(_for_reader, all_understood))
    first = all_understood[0]
    return _said(desk, KIND_OF[type(first)], first, *acted(desk, all_understood))


def _is_bare_number(text: str) -> bool:
    """One or two digits: meant for a button that is no longer there."""
    digits = text.strip()
    return digits.isascii() and digits.isdigit() and len(digits) <= LONGEST_BUTTON_NUMBER


def _is_new(text: str) -> bool:
    """A question or a command under one of our messages is no correction of it."""
    return text.lstrip().startswith("/") or asks(text, words(text))


_READING_VERBS = frozenset(
    {
        BookVerb.START,
        BookVerb.HELP,
        BookVerb.WHO,
        BookVerb.SHOW_NOTES,
        BookVerb.SCORE,
        BookVerb.NEXT,
        BookVerb.REVIEW,
    }
)


def _only_reads(understood: Understood) -> bool:
    """What anybody in a group may say."""
    if isinstance(understood, BookSaid):
        return understood.verb in _READING_VERBS
    if isinstance(understood, ReminderSaid):
        return understood.verb is ReminderVerb.LIST
    return isinstance(understood, Question | WhySaid | RetellSaid | TimeoutsAsked | Unclear)


def _for_reader(understood: Understood) -> Understood:
    """The same from somebody who may only read: numbers of theirs hold for the question alone."""
    if not isinstance(understood, Question) or understood.slots.rates is None:
        return understood
    rates = replace(understood.slots.rates, holds=False)
    return replace(understood, slots=replace(understood.slots, rates=rates))
