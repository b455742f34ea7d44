"""People, and who may use which book."""

from __future__ import annotations

from sqlalchemy import Select, bindparam, case, delete, insert, select, update

from scouting_db.conflicts import insert_or_replace, insert_unless_there
from scouting_db.directory.scope import Scope
from scouting_db.tables import book, chat, identity, member, person
from scouting_db.values import (
    AccountId,
    BookId,
    BookRow,
    ChatId,
    ChatRow,
    MemberRow,
    Membership,
    PersonId,
    Role,
)
from scouting_db.zones import checked_zone

_IDENTITY = (
    select(person.c.person_id, person.c.name)
    .join_from(identity, person, identity.c.person_id == person.c.person_id)
    .where(
        identity.c.account_id == bindparam("account"),
        identity.c.external_user_id == bindparam("external"),
    )
)
_ADD_PERSON = insert(person).returning(person.c.person_id)
_DROP_PERSON = delete(person).where(person.c.person_id == bindparam("person"))
_SET_NAME = (
    update(person)
    .where(person.c.person_id == bindparam("person"))
    .values(name=bindparam("new_name"))
)
_ADD_BOOK = insert(book).returning(book.c.book_id)
_USE_BOOK = (
    update(chat)
    .where(chat.c.chat_id == bindparam("chat"))
    .values(
        book_since=case(
            (chat.c.book_id.is_(None), chat.c.book_since),
            (chat.c.book_id == bindparam("book"), chat.c.book_since),
            else_=chat.c.posted,
        ),
        book_id=bindparam("book"),
    )
)
_LEAVE_BOOK = (
    update(chat)
    .where(chat.c.chat_id == bindparam("chat"))
    .values(book_id=None, book_since=chat.c.posted)
)
_OWN_CHATS = (
    select(identity.c.person_id)
    .where(
        identity.c.person_id == bindparam("person"),
        identity.c.account_id == chat.c.account_id,
        identity.c.external_user_id == chat.c.external_chat_id,
    )
    .exists()
)
_TAKE_FROM_CHATS = (
    update(chat)
    .where(chat.c.book_id == bindparam("book"), chat.c.is_group.is_(False), _OWN_CHATS)
    .values(book_id=None, book_since=chat.c.posted, context=bindparam("emptied"))
    .returning(chat.c.chat_id)
)
_LOCK_BOOK = select(book.c.book_id).where(book.c.book_id == bindparam("book")).with_for_update()
_OF_MEMBER = (member.c.book_id == bindparam("book"), member.c.person_id == bindparam("person"))
_ROLE = select(member.c.role).where(*_OF_MEMBER)
_REMOVE_MEMBER = delete(member).where(*_OF_MEMBER)
_MEMBERS = (
    select(member.c.person_id, person.c.name, member.c.role)
    .join_from(member, person, member.c.person_id == person.c.person_id)
    .where(member.c.book_id == bindparam("book"))
    .order_by(member.c.person_id)
)
_BOOKS: Select[tuple[int, str, str, int]] = (
    select(book.c.book_id, book.c.name, book.c.zone, book.c.version)
    .join_from(member, book, member.c.book_id == book.c.book_id)
    .where(member.c.person_id == bindparam("person"))
    .order_by(book.c.book_id)
)
_in_a_group = (
    select(chat.c.chat_id).where(chat.c.book_id == member.c.book_id, chat.c.is_group).exists()
)
_MEMBERSHIPS = (
    select(member.c.book_id, book.c.name, member.c.role, _in_a_group.label("is_group_s"))
    .join_from(member, book, member.c.book_id == book.c.book_id)
    .where(member.c.person_id == bindparam("person"))
    .order_by(member.c.book_id)
)
_OWN_BOOK = (
    select(member.c.book_id)
    .where(member.c.person_id == bindparam("person"), member.c.role == Role.EDITOR.value)
    .where(~_in_a_group)
    .order_by(member.c.book_id)
    .limit(1)
)


class Members(Scope):
    """People, books and roles."""

    def person(self, account: AccountId, external_user_id: str, name: str) -> PersonId:
        """The person with that id in the channel, made at the first call; a new name is kept."""
        key = {"account": account, "external": external_user_id}
        found = self._connection.execute(_IDENTITY, key).one_or_none()
        if found is None:
            return self._new_person(account, external_user_id, name)
        if found.name != name:
            self._connection.execute(_SET_NAME, {"person": found.person_id, "new_name": name})
        return PersonId(found.person_id)

    def _new_person(self, account: AccountId, external_user_id: str, name: str) -> PersonId:
        """A person with an identity; where another worker was faster, theirs."""
        made = self._connection.execute(_ADD_PERSON, {"name": name}).scalar_one()
        added = self._connection.execute(
            insert_unless_there(self._connection, identity, "account_id", "external_user_id"),
            {"account_id": account, "external_user_id": external_user_id, "person_id": made},
        )
        if added.rowcount:
            return PersonId(made)
        self._connection.execute(_DROP_PERSON, {"person": made})
        key = {"account": account, "external": external_user_id}
        return PersonId(self._connection.execute(_IDENTITY, key).one().person_id)

    def create_book(self, name: str, *, owner: PersonId, zone: str = "UTC") -> BookId:
        """A new book with its first editor; ValueError for a zone nobody knows."""
        made = self._connection.execute(
            _ADD_BOOK, {"name": name, "zone": checked_zone(zone), "version": 0}
        ).scalar_one()
        self.add_member(BookId(made), owner, Role.EDITOR)
        return BookId(made)

    def settle_book(
        self, chat: ChatRow, person: PersonId, *, name: str, zone: str = "UTC"
    ) -> BookId:
        """The chat's book; a chat without one gets the person's own, in a group a new one.

        Own is the oldest book that the person may edit and that is no group's; everyone
        starts with one. Being in a chat makes nobody a member: ask `role`.
        """
        if chat.book is not None:
            return chat.book
        own = None if chat.is_group else self._own_book(person)
        settled = own or self.create_book(name, owner=person, zone=zone)
        self.use_book(chat.chat, settled)
        return settled

    def _own_book(self, person: PersonId) -> BookId | None:
        found = self._connection.execute(_OWN_BOOK, {"person": person}).scalar()
        return None if found is None else BookId(found)

    def use_book(self, chat: ChatId, book: BookId) -> None:
        """The chat speaks of this book from now on; save a fresh context with it."""
        self._connection.execute(_USE_BOOK, {"chat": chat, "book": book})

    def leave_book(self, chat: ChatId) -> None:
        """The chat speaks of no book for now."""
        self._connection.execute(_LEAVE_BOOK, {"chat": chat})

    def memberships(self, person: PersonId) -> tuple[Membership, ...]:
        """Every book the person may use and how, oldest first."""
        return tuple(
            Membership(
                book=BookId(row.book_id),
                name=row.name,
                role=Role(row.role),
                is_group_s=bool(row.is_group_s),
            )
            for row in self._connection.execute(_MEMBERSHIPS, {"person": person})
        )

    def is_last_editor(self, book: BookId, person: PersonId) -> bool:
        """Whether without the person nobody could write, invite or remove any more.

        Holds the book until the turn ends: of two editors who leave at once the second is told.
        """
        self._connection.execute(_LOCK_BOOK, {"book": book})
        editors = {each.person for each in self.members(book) if each.role is Role.EDITOR}
        return editors == {person}

    def take_from_chats(self, book: BookId, person: PersonId) -> tuple[ChatId, ...]:
        """The person's own chats that spoke of the book speak of none now; which they are.

        Own is a private chat that bears its user's id, as the messenger's do.
        """
        found = self._connection.execute(
            _TAKE_FROM_CHATS, {"book": book, "person": person, "emptied": {}}
        )
        return tuple(ChatId(row.chat_id) for row in found)

    def role(self, book: BookId, person: PersonId) -> Role | None:
        """What the person may do with the book; None is nothing."""
        found = self._connection.execute(_ROLE, {"book": book, "person": person}).scalar()
        return None if found is None else Role(found)

    def add_member(self, book: BookId, person: PersonId, role: Role) -> None:
        """The person may use the book in this role from now on."""
        self._connection.execute(
            insert_or_replace(self._connection, member, "book_id", "person_id"),
            {"book_id": book, "person_id": person, "role": role.value},
        )

    def remove_member(self, book: BookId, person: PersonId) -> None:
        """The person may no longer use the book."""
        self._connection.execute(_REMOVE_MEMBER, {"book": book, "person": person})

    def members(self, book: BookId) -> tuple[MemberRow, ...]:
        """Everyone who may use the book."""
        rows = self._connection.execute(_MEMBERS, {"book": book})
        return tuple(
            MemberRow(person=PersonId(row.person_id), name=row.name, role=Role(row.role))
            for row in rows
        )

    def books_of(self, person: PersonId) -> tuple[BookRow, ...]:
        """Every book the person may use, oldest first."""
        rows = self._connection.execute(_BOOKS, {"person": person})
        return tuple(
            BookRow(book=BookId(row.book_id), name=row.name, zone=row.zone, version=row.version)
            for row in rows
        )
