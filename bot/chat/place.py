"""Which book a message is about, and what its writer may do there."""

from __future__ import annotations

from knowledge.dataclass import dataclass
from scouting_db.directory import Directory
from scouting_db.values import BookId, ChatRow, Membership, PersonId, Role


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """The book, the writer's role in it, and whether they were moved out of another one just now.

    `book` None is a group that no book is bound to.
    """

    book: BookId | None
    role: Role | None = None
    was_moved: bool = False


def place_of(
    directory: Directory,
    chat: ChatRow,
    person: PersonId,
    *,
    user_name: str,
    known_role: Role | None = None,
) -> Place:
    """Being in a chat makes nobody a member; a group has no book until an editor binds one.

    In a private chat somebody who is no longer a member goes on with a book of their own.
    `known_role` is the writer's role in the chat's book, where it was read with the chat.
    """
    if chat.is_group and chat.book is None:
        return Place(book=None)
    if chat.book is not None and known_role is not None:
        return Place(book=chat.book, role=known_role)
    book = directory.settle_book(chat, person, name=book_name(user_name))
    role = directory.role(book, person)
    if role is not None or chat.is_group:
        return Place(book=book, role=role)
    return _moved(directory, chat, person, user_name)


def book_name(user_name: str) -> str:
    return f"{user_name}'s book"


def own_book(memberships: tuple[Membership, ...]) -> BookId | None:
    """The book to go on with: one that the person may edit, rather no group's, then the oldest."""
    edited = [one for one in memberships if one.role is Role.EDITOR]
    return min(edited, key=lambda one: (one.is_group_s, one.book)).book if edited else None


def _moved(directory: Directory, chat: ChatRow, person: PersonId, user_name: str) -> Place:
    move_to_own(directory, chat, person, user_name=user_name)
    book = directory.chat_row(chat.chat).book
    assert book is not None, "a book was just settled"
    return Place(book=book, role=directory.role(book, person), was_moved=True)


def move_to_own(directory: Directory, chat: ChatRow, person: PersonId, *, user_name: str) -> BookId:
    """The private chat speaks of the person's own book from now on, made if need be."""
    own = own_book(directory.memberships(person))
    if own is None:
        own = directory.create_book(book_name(user_name), owner=person)
    switch(directory, chat, own)
    return own


def switch(directory: Directory, chat: ChatRow, book: BookId) -> None:
    """The chat speaks of that book from now on, and remembers nothing of another one."""
    directory.use_book(chat.chat, book)
    directory.save_context(chat.chat, {})
