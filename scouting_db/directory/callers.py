"""Who writes, where, and what they may do: everything that a turn begins with, read at once."""

from __future__ import annotations

from sqlalchemy import and_, bindparam

from scouting_db.directory.chats import OF_CHAT, chat_row, chats_with_books
from scouting_db.directory.scope import Scope
from scouting_db.prepared import Prepared
from scouting_db.tables import chat, identity, member, person
from scouting_db.values import CallerRow, ChatId, PersonId, Role

_CALLER = Prepared(
    chats_with_books(person.c.person_id, person.c.name, member.c.role)
    .outerjoin(
        identity,
        and_(
            identity.c.account_id == chat.c.account_id,
            identity.c.external_user_id == bindparam("external"),
        ),
    )
    .outerjoin(person, person.c.person_id == identity.c.person_id)
    .outerjoin(
        member,
        and_(member.c.book_id == chat.c.book_id, member.c.person_id == person.c.person_id),
    )
    .where(OF_CHAT)
)


class Callers(Scope):
    """One statement in place of one each for the chat, the person and the role."""

    def caller(self, chat: ChatId, external_user_id: str) -> CallerRow:
        """The chat by our own id, with whoever writes in it; LookupError without such a chat."""
        key = {"chat": chat, "external": external_user_id}
        found = _CALLER.row(self._connection, key)
        if found is None:
            raise LookupError(f"no chat {chat}")
        return CallerRow(
            chat=chat_row(found),
            person=None if found.person_id is None else PersonId(found.person_id),
            name=found.name,
            role=None if found.role is None else Role(found.role),
        )
