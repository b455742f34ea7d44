"""Erasing for good: a book with everything in it, a person, and the words of past messages."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from sqlalchemy import BindParameter, bindparam, delete, select, update

from scouting_db.base import Base
from scouting_db.directory.scope import Scope
from scouting_db.tables import (
    book,
    chat,
    entry,
    identity,
    inbox,
    invitation,
    member,
    note,
    outbox,
    person,
    wrong_code,
)
from scouting_db.values import BookId, ChatId, ChatRow, PersonId

_BOOK: BindParameter[int] = bindparam("gone_book")
_PERSON: BindParameter[int] = bindparam("gone_person")

_LEAVE_CHATS = (
    update(chat)
    .where(chat.c.book_id == _BOOK)
    .values(book_id=None, book_since=chat.c.posted, context={})
)
# Children before parents: PostgreSQL would check a reference between two tables of the book
# before the deletion has reached both.
_EMPTY_BOOK = tuple(
    delete(table).where(table.c.book_id == _BOOK)
    for table in reversed(Base.metadata.sorted_tables)
    if "book_id" in table.c and table not in (chat, book)
)
_DROP_BOOK = delete(book).where(book.c.book_id == _BOOK)

_OF_BOOKS_CHATS = select(chat.c.chat_id).where(chat.c.book_id == _BOOK)
_BLANK_IN = update(inbox).where(inbox.c.state != "open").values(payload={}, error=None)
_BLANK_OUT = update(outbox).where(outbox.c.state.in_(("sent", "dropped"))).values(payload={})
_BLANKS_OF_BOOK = (
    _BLANK_IN.where(inbox.c.chat_id.in_(_OF_BOOKS_CHATS)),
    _BLANK_OUT.where(outbox.c.chat_id.in_(_OF_BOOKS_CHATS)),
)
_BLANKS_OF_CHAT = (
    _BLANK_IN.where(inbox.c.chat_id == bindparam("gone_chat")),
    _BLANK_OUT.where(outbox.c.chat_id == bindparam("gone_chat")),
)
_CHATS_OF_BOOK = select(chat.c.chat_id, chat.c.context).where(chat.c.book_id == _BOOK)
_FORGET_CHAT = (
    update(chat)
    .where(chat.c.chat_id == bindparam("gone_chat"))
    .values(book_id=None, book_since=chat.c.posted, context={})
)
_UNSIGN = (
    update(note).where(note.c.author == _PERSON).values(author=None),
    update(entry).where(entry.c.person_id == _PERSON).values(person_id=None),
)
_DROP_PERSON = (
    delete(member).where(member.c.person_id == _PERSON),
    delete(invitation).where(invitation.c.made_by == _PERSON),
    delete(wrong_code).where(wrong_code.c.person_id == _PERSON),
    delete(identity).where(identity.c.person_id == _PERSON),
    delete(person).where(person.c.person_id == _PERSON),
)


class Erasing(Scope):
    """What is done here cannot be undone."""

    def erase_book(self, book: BookId) -> None:
        """The book, everything in it, and the words of what was said in its chats."""
        gone = {"gone_book": book}
        self.blank_posts_of(book)
        self._connection.execute(_LEAVE_CHATS, gone)
        for statement in (*_EMPTY_BOOK, _DROP_BOOK):
            self._connection.execute(statement, gone)

    def erase_person(self, person: PersonId) -> None:
        """The person's name, id in the channel and memberships; their notes stay, unsigned."""
        for statement in (*_UNSIGN, *_DROP_PERSON):
            self._connection.execute(statement, {"gone_person": person})

    def erase_chat(self, chat: ChatRow) -> None:
        """What the chat remembers and the words said in it. Its id stays: a reply is on its way."""
        for statement in (*_BLANKS_OF_CHAT, _FORGET_CHAT):
            self._connection.execute(statement, {"gone_chat": chat.chat})

    def blank_posts_of(self, book: BookId) -> None:
        """The words of what came in and went out, and is done with, in the book's chats."""
        for statement in _BLANKS_OF_BOOK:
            self._connection.execute(statement, {"gone_book": book})

    def contexts_of(self, book: BookId) -> Mapping[ChatId, Mapping[str, Any]]:
        """What every chat of the book remembers."""
        rows = self._connection.execute(_CHATS_OF_BOOK, {"gone_book": book})
        return {ChatId(row.chat_id): row.context for row in rows}
