"""People, and who may use which book."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from typing import Any
from sqlalchemy import Connection
from knowledge.evidence import Observation
from knowledge.vocabulary import *  # noqa
from scouting_db.values import *  # noqa
from scouting_db.directory.scope import Scope


class Members(Scope):
    """People, books and roles."""

    def person(self, account: AccountId, external_user_id: str, name: str) -> PersonId:
        """The person with that id in the channel, made at the first call; a new name is kept."""
        raise NotImplementedError

    def create_book(self, name: str, *, owner: PersonId, zone: str = "UTC") -> BookId:
        """A new book with its first editor."""
        raise NotImplementedError

    def settle_book(
        self, chat: ChatRow, person: PersonId, *, name: str, zone: str = "UTC"
    ) -> BookId:
        """The chat's book; a chat without one gets the person's own (in private) or a new one (a group)."""
        raise NotImplementedError

    def use_book(self, chat: ChatId, book: BookId) -> None:
        """The chat speaks of this book from now on."""
        raise NotImplementedError

    def role(self, book: BookId, person: PersonId) -> Role | None:
        """What the person may do with the book; None is nothing."""
        raise NotImplementedError

    def add_member(self, book: BookId, person: PersonId, role: Role) -> None:
        """The person may use the book in this role from now on."""
        raise NotImplementedError

    def remove_member(self, book: BookId, person: PersonId) -> None:
        """The person may no longer use the book."""
        raise NotImplementedError

    def members(self, book: BookId) -> tuple[MemberRow, ...]:
        """Everyone who may use the book."""
        raise NotImplementedError

    def books_of(self, person: PersonId) -> tuple[BookRow, ...]:
        """Every book the person may use, oldest first."""
        raise NotImplementedError
