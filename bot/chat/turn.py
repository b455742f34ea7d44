"""One turn: a stored message in, its replies out, inside the caller's transaction.

The console and the Telegram bot take this same road; a tap decodes to what a text would have
been understood as, and from there on nothing differs.
"""

from __future__ import annotations

from dataclasses import replace
from functools import partial
from typing import Any

from sqlalchemy import Connection

from bot.chat.acting import acted
from bot.chat.answers import (
    corrections,
    imports,
)
from bot.chat.answers.announced_first import announced_first, waiting
from bot.chat.answers.desk import Desk
from bot.chat.answers.handed_back import forget_private, handed_back
from bot.chat.answers.long_messages import LONGEST_KEPT, with_notice
from bot.chat.answers.newly_known import everybody, with_newly_known
from bot.chat.answers.supposing import supposing
from bot.chat.answers.taps import press
from bot.chat.answers.unbound import without_book
from bot.chat.asking import asks
from bot.chat.called import called_now
from bot.chat.context import Context
from bot.chat.edited import read_anew
from bot.chat.name_given import name_given
from bot.chat.one_reply import joined
from bot.chat.payload import Tap, Verb, stamped, unstamped
from bot.chat.place import place_of
from bot.chat.private_words import is_private
from bot.chat.reply import Reply
from bot.chat.rights import for_reader, may_press, may_say
from bot.chat.said import KIND_OF, CoachSaid, Kind, Understood
from bot.chat.tap_kinds import KIND_OF_TAP
from bot.chat.understand import understand, understand_note
from bot.chat.uniform import Uniform, unforeseeable
from bot.chat.view import ChatView
from bot.chat.views_kept import views_of
from bot.chat.who_writes import knowing_writer
from bot.chat.wording import wording
from bot.chat.words import words
from bot.post import Incoming, IncomingKind
from knowledge.dataclass import dataclass
from scouting_db.book import Book
from scouting_db.directory import Directory
from scouting_db.values import BookId, InboxRow, Micros, NoteId, Role

LONGEST_BUTTON_NUMBER = 2
"""Digits; a score is never said in fewer than three."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Heard:
    """What a turn understood and said: the replies, and the trace for the `--json` contract.

    `book` is what the replies speak of; None in a group without one, or after it was erased.
    """

    kind: Kind
    understood: Understood | None
    replies: tuple[Reply, ...]
    trace: dict[str, Any]
    book: BookId | None = None


def take_turn(connection: Connection, row: InboxRow, *, now: Micros) -> tuple[Reply, ...]:
    """Replies to one inbox row (a bot.post.Turn); every change is the caller's to commit.

    Their buttons say which book they speak of: in a messenger they stay for ever.
    """
    heard = hear(connection, row, now=now)
    return tuple(marked(reply, heard.book) for reply in heard.replies)


def marked(reply: Reply, book: BookId | None) -> Reply:
    """The reply with its buttons stamped with the book."""
    if book is None or not reply.buttons:
        return reply
    buttons = tuple(
        tuple(replace(one, payload=stamped(one.payload, book)) for one in row)
        for row in reply.buttons
    )
    return replace(reply, buttons=buttons)


def hear(
    connection: Connection, row: InboxRow, *, now: Micros, uniform: Uniform = unforeseeable
) -> Heard:
    """The same, with what was understood. `uniform` gives the numbers that a mix draws with."""
    directory = Directory(connection)
    incoming = Incoming.from_json(row.payload)
    caller = directory.caller(row.chat, incoming.user_id)
    chat, person = caller.chat, caller.person
    if person is None or caller.name != incoming.user_name:
        person = directory.person(chat.account, incoming.user_id, incoming.user_name)
    place = place_of(directory, chat, person, user_name=incoming.user_name, known_role=caller.role)
    if place.book is None:
        reply = without_book(directory, chat, person, incoming)
        return Heard(kind=Kind.BOOK, understood=None, replies=(reply,), trace={})
    desk = Desk(
        connection=connection,
        book=Book(connection, place.book, person=person, now=now),
        book_id=place.book,
        chat=chat,
        incoming=incoming,
        inbox=row.inbox,
        now=now,
        context=Context.from_json(chat.context if chat.book == place.book else {}),
        views=views_of(connection),
        uniform=uniform,
        people=directory,
        person=person,
        role=place.role,
    )
    before = desk.context
    desk.after_note = before.noted
    if incoming.kind is not IncomingKind.TAP and _may_write(desk):
        desk.context = replace(before, noted=None)
    if incoming.reply_to is not None:
        desk.replying_to = directory.about_of(chat.chat, incoming.reply_to)
    heard = _moved(desk) if place.was_moved else _listen(desk, may_write=_may_write(desk))
    if desk.is_gone:
        return heard
    if desk.context.listing is not None and desk.context.listing == before.listing:
        desk.context = replace(desk.context, listing=None)
    is_tap = incoming.kind is IncomingKind.TAP
    if desk.context.pending_count == before.pending_count and not is_tap:
        desk.context = replace(desk.context, asks_who=None)
    if desk.context != before and desk.moved_to is None:
        directory.save_context(chat.chat, desk.context.to_json())
    return replace(heard, book=desk.moved_to or desk.book_id)


def _may_write(desk: Desk) -> bool:
    return desk.role is Role.EDITOR


def _moved(desk: Desk) -> Heard:
    """They are no longer in the book they wrote to: said first; a tap was about that book."""
    told = Reply(text=wording("share.no_longer"))
    if desk.incoming.kind is IncomingKind.TAP:
        return _said(desk, Kind.BOOK, None, told)
    heard = _listen(desk, may_write=_may_write(desk))
    return replace(heard, replies=(told, *heard.replies))


def _listen(desk: Desk, *, may_write: bool) -> Heard:
    incoming = desk.incoming
    if incoming.kind in (IncomingKind.TAP, IncomingKind.EDIT, IncomingKind.TEXT, IncomingKind.FILE):
        desk.context = desk.context.among({row.player for row in desk.view.roster})
    match incoming.kind:
        case IncomingKind.TAP:
            return _tapped(desk, incoming.payload or "", may_write=may_write)
        case IncomingKind.EDIT:
            understood, reply = read_anew(desk, may_write=may_write)
            return _said(desk, Kind.CORRECTION, understood, reply)
        case IncomingKind.TEXT:
            text = incoming.text[:LONGEST_KEPT]
            heard = _spoken(desk, text, may_write=may_write)
            forget_private(desk, incoming.text)
            return replace(heard, replies=with_notice(heard.replies, incoming.text))
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


def _tapped(desk: Desk, payload: str, *, may_write: bool) -> Heard:
    payload, book = unstamped(payload)
    if book not in (None, desk.book_id):
        return _said(desk, Kind.UNCLEAR, None, Reply(text=wording("unclear.other_book")))
    parts = payload.split(":")
    verb = Verb(parts[1]) if len(parts) > 1 and parts[1] in {*Verb} else None
    kind = Kind.UNCLEAR if verb is None else KIND_OF_TAP.get(verb, Kind.QUESTION)
    if not may_press(verb, may_write=may_write):
        return _said(desk, kind, None, Reply(text=wording("unclear.not_yours")))
    take_up, before = partial(_read_again, may_write=may_write), everybody(desk)
    reply = press(desk, payload, read_again=take_up)
    return _said(desk, kind, None, with_newly_known(desk, reply, take_up, before=before))


def _read_again(desk: Desk, text: str, note: int | None, *, may_write: bool) -> Reply:
    """A message taken up again after a name was settled by a tap."""
    if note is not None:
        said = understand_note(text, chat=desk.chat_view())
        return corrections.name_settled(desk, NoteId(note), said)
    understood = read(desk, text, desk.chat_view())
    if not all(may_say(one, may_write=may_write) for one in understood):
        return Reply(text=wording("unclear.members_only"))
    if not may_write:
        understood = tuple(map(for_reader, understood))
    return joined(acted(desk, understood))


def _spoken(desk: Desk, text: str, *, may_write: bool) -> Heard:
    if not text.strip():
        return _said(desk, Kind.UNCLEAR, None, Reply(text=wording("unclear.empty")))
    if _is_bare_number(text):
        said = announced_first(desk) or Reply(
            text=wording("unclear.number").format(number=text.strip())
        )
        return _said(desk, Kind.UNCLEAR, None, said)
    view = knowing_writer(text, desk.chat_view())
    desk.knows_writer(view.asker)
    desk.context = replace(desk.context, called=called_now(text, view))
    about = desk.replying_to
    if about is not None and may_write and not _is_new(text) and is_private(text):
        return _said(desk, Kind.CORRECTION, None, handed_back(desk, text))
    if about is not None and about.kind == "note" and may_write and not _is_new(text):
        whose = corrections.whom_it_says(desk, NoteId(about.id)) or view.focus
        said_of_note = understand_note(text, chat=replace(view, focus=whose, replying_to_note=True))
        reply = corrections.reply_to_note(desk, NoteId(about.id), text, said_of_note)
        return _said(desk, Kind.CORRECTION, said_of_note, reply)
    given = _name_given(desk, text, view)
    if given is not None:
        return _tapped(desk, given, may_write=may_write)
    all_understood = read(desk, text, view)
    if not all(may_say(one, may_write=may_write) for one in all_understood):
        return _said(desk, Kind.UNCLEAR, None, Reply(text=wording(_refusal(desk))))
    if not may_write:
        all_understood = tuple(map(for_reader, all_understood))
    first = all_understood[0]
    asks = isinstance(first, CoachSaid) and bool(first.asks)
    kind = Kind.QUESTION if asks else KIND_OF[type(first)]
    before = everybody(desk)
    replies = acted(desk, all_understood)
    take_up = partial(_read_again, may_write=may_write)
    *earlier, last = supposing(desk, all_understood, replies, take_up)
    last = with_newly_known(desk, last, take_up, before=before)
    return _said(desk, kind, first, *earlier, last)


def _name_given(desk: Desk, text: str, view: ChatView) -> str | None:
    """The button under our question who is meant that the text stands for, right after it."""
    asks_who = desk.context.asks_who
    pending = None if asks_who is None else desk.context.pending(asks_who)
    if pending is not None:
        return name_given(text, pending, view)
    awaited = waiting(desk)
    given = None if awaited is None else name_given(text, awaited, view)
    adds = given is not None and Tap.parse(given).verb is Verb.ADD
    return given if adds else None


def read(desk: Desk, text: str, view: ChatView) -> tuple[Understood, ...]:
    """What the text says in this view of the chat; the same in the same view."""
    return desk.read_once(_understood, text, view)


def _understood(text: str, view: ChatView) -> tuple[Understood, ...]:
    return understand(text, chat=view)


def _is_bare_number(text: str) -> bool:
    """One or two digits: meant for a button that is no longer there."""
    digits = text.strip()
    return digits.isascii() and digits.isdigit() and len(digits) <= LONGEST_BUTTON_NUMBER


def _is_new(text: str) -> bool:
    """A question or a command under one of our messages is no correction of it."""
    return text.lstrip().startswith("/") or asks(text, words(text))


def _refusal(desk: Desk) -> str:
    return "unclear.readers_ask" if desk.role is Role.READER else "unclear.members_only"
