"""Channels' accounts and their chats."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from sqlalchemy import ColumnElement, Select, bindparam, func, select, update

from scouting_db.conflicts import insert_unless_there
from scouting_db.directory.scope import Scope
from scouting_db.parts import VERSION_COLUMNS, stamps_of
from scouting_db.prepared import Prepared
from scouting_db.tables import account, book, chat, outbox
from scouting_db.values import AccountId, BookId, ChatId, ChatRow, Micros


def chats_with_books(*more: ColumnElement[Any]) -> Select[Any]:
    """Chats, each with its book's version and zone: what `chat_row` reads, and more columns."""
    return select(
        chat.c.chat_id,
        chat.c.account_id,
        chat.c.external_chat_id,
        chat.c.is_group,
        chat.c.book_id,
        chat.c.context,
        chat.c.blocked_at,
        book.c.version,
        book.c.zone,
        *VERSION_COLUMNS,
        *more,
    ).select_from(chat.outerjoin(book, book.c.book_id == chat.c.book_id))


OF_CHAT = chat.c.chat_id == bindparam("chat")
_CHAT = chats_with_books()
_CHAT_BY_ID = _CHAT.where(OF_CHAT)
_CHAT_BY_EXTERNAL = _CHAT.where(
    chat.c.account_id == bindparam("account"), chat.c.external_chat_id == bindparam("external")
)
_WRITTEN_IN = Prepared(
    select(chat.c.chat_id, chat.c.blocked_at).where(
        chat.c.account_id == bindparam("account"), chat.c.external_chat_id == bindparam("external")
    )
)
_ACCOUNT = select(account.c.account_id, account.c.channel).where(
    account.c.bot_ref == bindparam("bot_ref")
)
_SET_NAME = (
    update(account)
    .where(account.c.account_id == bindparam("account"))
    .values(name=bindparam("new_name"))
)
_NAME = select(account.c.name).where(account.c.account_id == bindparam("account"))
_SAVE_CONTEXT = Prepared(update(chat).where(OF_CHAT).values(context=bindparam("new_context")))
_SET_BLOCKED = update(chat).where(OF_CHAT).values(blocked_at=bindparam("at"))
_SET_EXTERNAL = (
    update(chat).where(OF_CHAT).values(external_chat_id=bindparam("external"), is_group=True)
)
_TAKE_OVER = (
    update(chat)
    .where(OF_CHAT)
    .values(
        # Whatever was said so far in the chat that goes on spoke of another book, or of none.
        book_since=chat.c.posted,
        book_id=bindparam("book"),
        context=bindparam("new_context"),
        is_group=True,
    )
)
_MOVE_UNSENT = (
    update(outbox)
    .where(outbox.c.chat_id == bindparam("old"), outbox.c.state.in_(("waiting", "sending")))
    .values(
        chat_id=bindparam("new"), outbox_id=outbox.c.outbox_id + bindparam("shift"), state="waiting"
    )
)
_LAST_POST = select(func.coalesce(func.max(outbox.c.outbox_id), 0)).where(
    outbox.c.chat_id == bindparam("chat")
)
_RAISE_POSTED = update(chat).where(OF_CHAT).values(posted=bindparam("last"))


class Chats(Scope):
    """Who we are in a channel, and where we talk."""

    def account(self, channel: str, bot_ref: str, *, name: str | None = None) -> AccountId:
        """The account of a channel ("console", "telegram"), made at the first call.

        A name, by which links to us are written, is kept until another one is given.

        ValueError where the reference belongs to another channel.
        """
        self._connection.execute(
            insert_unless_there(self._connection, account, "bot_ref"),
            {"channel": channel, "bot_ref": bot_ref},
        )
        row = self._connection.execute(_ACCOUNT, {"bot_ref": bot_ref}).one()
        if row.channel != channel:
            raise ValueError(f"{bot_ref} is an account of {row.channel}, not of {channel}")
        if name is not None:
            self._connection.execute(_SET_NAME, {"account": row.account_id, "new_name": name})
        return AccountId(row.account_id)

    def account_name(self, account: AccountId) -> str | None:
        """The name given with the account; None without one."""
        found = self._connection.execute(_NAME, {"account": account}).scalar()
        return None if found is None else str(found)

    def chat(self, account: AccountId, external_chat_id: str, *, is_group: bool = False) -> ChatRow:
        """The chat with that id in the channel, made at the first call."""
        key = {"account": account, "external": external_chat_id}
        found = self._connection.execute(_CHAT_BY_EXTERNAL, key).one_or_none()
        if found is None:
            self._connection.execute(
                insert_unless_there(self._connection, chat, "account_id", "external_chat_id"),
                {
                    "account_id": account,
                    "external_chat_id": external_chat_id,
                    "is_group": is_group,
                    "context": {},
                    "posted": 0,
                },
            )
            found = self._connection.execute(_CHAT_BY_EXTERNAL, key).one()
        return chat_row(found)

    def written_in(
        self, account: AccountId, external_chat_id: str, *, is_group: bool = False
    ) -> ChatId:
        """The chat that a message came from, made at the first: whoever writes no longer shuts us
        out.
        """
        key = {"account": account, "external": external_chat_id}
        found = _WRITTEN_IN.row(self._connection, key)
        if found is None:
            return self.chat(account, external_chat_id, is_group=is_group).chat
        if found.blocked_at is not None:
            self.unblock(ChatId(found.chat_id))
        return ChatId(found.chat_id)

    def chat_row(self, chat: ChatId) -> ChatRow:
        """The chat by our own id; LookupError without one."""
        found = self._connection.execute(_CHAT_BY_ID, {"chat": chat}).one_or_none()
        if found is None:
            raise LookupError(f"no chat {chat}")
        return chat_row(found)

    def save_context(self, chat: ChatId, context: Mapping[str, Any]) -> None:
        """What the chat remembers from now on."""
        _SAVE_CONTEXT.run(self._connection, {"chat": chat, "new_context": dict(context)})

    def move_chat(self, chat: ChatId, external_chat_id: str) -> ChatId:
        """A group was upgraded: the chat that stands for it from now on.

        That is the same chat under its new id; or, where the new id already wrote to us, that
        newer chat with the old one's book, context and unsent messages. A book made for the
        newer chat in between stays with its members.
        """
        old = self.chat_row(chat)
        key = {"account": old.account, "external": external_chat_id}
        newer = self._connection.execute(_CHAT_BY_EXTERNAL, key).one_or_none()
        if newer is None:
            self._connection.execute(_SET_EXTERNAL, {"chat": chat, "external": external_chat_id})
            return chat
        if newer.chat_id != chat:
            self._take_over(old, chat_row(newer))
        return ChatId(newer.chat_id)

    def _take_over(self, old: ChatRow, new: ChatRow) -> None:
        self._connection.execute(
            _TAKE_OVER,
            {
                "chat": new.chat,
                "book": old.book if old.book is not None else new.book,
                "new_context": dict(old.context or new.context),
            },
        )
        last = self._connection.execute(_LAST_POST, {"chat": new.chat}).scalar_one()
        self._connection.execute(_MOVE_UNSENT, {"old": old.chat, "new": new.chat, "shift": last})
        last = self._connection.execute(_LAST_POST, {"chat": new.chat}).scalar_one()
        self._connection.execute(_RAISE_POSTED, {"chat": new.chat, "last": last})

    def block(self, chat: ChatId, *, now: Micros) -> None:
        """The user shut us out: nothing is sent there until `unblock`."""
        self._connection.execute(_SET_BLOCKED, {"chat": chat, "at": now})

    def unblock(self, chat: ChatId) -> None:
        """They write to us again."""
        self._connection.execute(_SET_BLOCKED, {"chat": chat, "at": None})


def chat_row(row: Any) -> ChatRow:
    """The value of a row of `chats_with_books`."""
    return ChatRow(
        chat=ChatId(row.chat_id),
        account=AccountId(row.account_id),
        external_chat_id=row.external_chat_id,
        is_group=row.is_group,
        book=None if row.book_id is None else BookId(row.book_id),
        context=row.context,
        blocked=row.blocked_at is not None,
        version=row.version,
        zone=row.zone,
        stamps=None if row.book_id is None else stamps_of(row),
    )
