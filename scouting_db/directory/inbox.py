"""What came in: stored once per update id, handled in order per chat."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from functools import cache
from typing import Any

from sqlalchemy import Insert, bindparam, case, func, literal_column, select, text, update

from scouting_db.conflicts import insert_unless_there
from scouting_db.directory.scope import Scope
from scouting_db.lock_keys import LockKind, lock_key
from scouting_db.prepared import Prepared
from scouting_db.tables import book, chat, inbox
from scouting_db.values import AccountId, ChatId, InboxId, InboxRow, Micros, Waiting

CHATS_CLAIMED = 10
"""How many chats a worker takes at a time: enough to share a commit, few enough to leave some."""

MAX_ATTEMPTS = 3
"""A turn that failed this often is given up; a guess that a bug will not heal by itself."""

# Written out and not bound, so that SQLite sees that the partial index applies.
_OPEN = inbox.c.state == literal_column("'open'")
# "+ 0" keeps the planner from the indexes on these columns, which lead to every message ever:
# the open rows are few, and it should begin with them.
_OF_ACCOUNT = inbox.c.account_id + 0 == bindparam("account")
_OLDEST_FIRST = inbox.c.inbox_id + 0
_ROW = select(
    inbox.c.inbox_id,
    inbox.c.chat_id,
    inbox.c.kind,
    inbox.c.external_message_id,
    inbox.c.payload,
    inbox.c.attempts,
)
_OPEN_ROWS = Prepared(
    _ROW.where(_OPEN, _OF_ACCOUNT).order_by(_OLDEST_FIRST).limit(bindparam("limit"))
)
_OPEN_OF_CHATS = (
    _ROW.where(_OPEN, inbox.c.chat_id.in_(bindparam("chats", expanding=True)))
    .order_by(inbox.c.inbox_id)
    .limit(bindparam("limit"))
)
_heads = (
    select(inbox.c.chat_id, func.min(inbox.c.inbox_id).label("head"))
    .where(_OPEN, _OF_ACCOUNT)
    .group_by(inbox.c.chat_id)
    .subquery("heads")
)
# PostgreSQL, SELECT, "The Locking Clause": SKIP LOCKED passes over rows that another transaction
# has locked. NO KEY UPDATE (`key_share`), since an accepted row's reference to its chat takes a
# KEY SHARE lock, which it lets through: a message comes in while a turn of its chat runs.
_LOCK_CHATS = (
    select(chat.c.chat_id, chat.c.book_id)
    .join_from(chat, _heads, _heads.c.chat_id == chat.c.chat_id)
    .order_by(_heads.c.head)
    .limit(bindparam("chats"))
    .with_for_update(of=chat, key_share=True, skip_locked=True)
)
_WAITING_CHATS = (
    select(chat.c.external_chat_id)
    .join_from(inbox, chat, chat.c.chat_id == inbox.c.chat_id)
    .where(_OPEN, _OF_ACCOUNT)
    .distinct()
)
_LOCK_BOOKS = (
    select(book.c.book_id)
    .where(book.c.book_id.in_(bindparam("books", expanding=True)))
    .with_for_update(key_share=True, skip_locked=True)
)
_TAKE_TURNS = text("SELECT pg_advisory_xact_lock(:key)")
_OLDEST_OPEN = select(func.count(), func.min(inbox.c.received_at)).where(_OPEN, _OF_ACCOUNT)
_PAYLOAD = select(inbox.c.payload).where(
    inbox.c.inbox_id == bindparam("inbox"), inbox.c.chat_id == bindparam("chat")
)
_CLOSE = Prepared(update(inbox).where(inbox.c.inbox_id == bindparam("inbox")).values(state="done"))
_BLANK = update(inbox).where(inbox.c.inbox_id == bindparam("inbox")).values(payload={})
_FAIL = (
    update(inbox)
    .where(inbox.c.inbox_id == bindparam("inbox"))
    .values(
        attempts=inbox.c.attempts + 1,
        error=bindparam("why"),
        state=case((inbox.c.attempts + 1 >= MAX_ATTEMPTS, "failed"), else_="open"),
    )
    .returning(inbox.c.state)
)
_FILLED = (
    "account_id",
    "update_id",
    "chat_id",
    "kind",
    "external_message_id",
    "payload",
    "received_at",
    "state",
    "attempts",
)


class Incoming(Scope):
    """The inbox."""

    @property
    def claims_some_chats(self) -> bool:
        """Whether a claim takes the rows of some chats only, and others may still be open."""
        return self._connection.dialect.name == "postgresql"

    def take_turns_accepting(self, account: AccountId) -> None:
        """Until the commit nobody else accepts for this account, so that rows are committed in
        the order of their numbers; otherwise a later one might be handled before an earlier one
        is seen. SQLite has one writer at a time anyway.

        PostgreSQL, "Advisory Locks": such a lock is released at the end of the transaction.
        """
        if self._connection.dialect.name == "postgresql":
            key = lock_key(LockKind.ACCEPTING, account)
            self._connection.execute(_TAKE_TURNS, {"key": key})

    def accept(
        self,
        account: AccountId,
        *,
        update_id: int,
        chat: ChatId,
        kind: str,
        external_message_id: int | None,
        payload: Mapping[str, Any],
        now: Micros,
    ) -> InboxId | None:
        """The new row's id; None where this update id was accepted before."""
        statement = insert_unless_there(self._connection, inbox, "account_id", "update_id")
        made = _accepting(statement).row(
            self._connection,
            {
                "account_id": account,
                "update_id": update_id,
                "chat_id": chat,
                "kind": kind,
                "external_message_id": external_message_id,
                "payload": dict(payload),
                "received_at": now,
                "state": "open",
                "attempts": 0,
            },
        )
        return None if made is None else InboxId(made.inbox_id)

    def claim(
        self, account: AccountId, *, limit: int = 200, chats: int = CHATS_CLAIMED
    ) -> tuple[InboxRow, ...]:
        """Open rows to handle now, each chat's in order; empty where nothing is left to do.

        SQLite: of all chats, since one process alone handles an account. PostgreSQL: of so many
        chats, those waiting longest that no other worker holds and whose books none does; both
        are held until the commit, and free at once where a worker dies: its connection's end
        rolls back. Once a row fails, leave its chat's later rows for the next claim.
        """
        if self.claims_some_chats:
            return self._claim_chats(account, limit, chats)
        rows = _OPEN_ROWS.rows(self._connection, {"account": account, "limit": limit})
        return tuple(map(_inbox_row, rows))

    def _claim_chats(self, account: AccountId, limit: int, chats: int) -> tuple[InboxRow, ...]:
        """Lock first, then look: another worker may have emptied a chat just before."""
        found = self._connection.execute(_LOCK_CHATS, {"account": account, "chats": chats}).all()
        books = {one.book_id for one in found} - {None}
        if books:
            books = set(self._connection.execute(_LOCK_BOOKS, {"books": [*books]}).scalars())
        locked = [one.chat_id for one in found if one.book_id is None or one.book_id in books]
        if not locked:
            return ()
        rows = self._connection.execute(_OPEN_OF_CHATS, {"chats": locked, "limit": limit})
        return tuple(map(_inbox_row, rows))

    def waiting_rows(self, account: AccountId) -> Waiting:
        """How many rows are open, and since when the oldest is."""
        count, oldest = self._connection.execute(_OLDEST_OPEN, {"account": account}).one()
        return Waiting(count=count, since=None if oldest is None else Micros(oldest))

    def waiting_chats(self, account: AccountId) -> tuple[str, ...]:
        """The channel's ids of the chats with a message that is stored and not yet handled."""
        return tuple(self._connection.execute(_WAITING_CHATS, {"account": account}).scalars())

    def payload_of(self, inbox: InboxId, chat: ChatId) -> Mapping[str, Any] | None:
        """What came in with that number; None where it was not in this chat."""
        values = {"inbox": inbox, "chat": chat}
        found: Mapping[str, Any] | None = self._connection.execute(_PAYLOAD, values).scalar()
        return found

    def close_rows(self, rows: Collection[InboxId]) -> None:
        """The rows are done; call it in the transaction of their turns."""
        _CLOSE.run_each(self._connection, [{"inbox": inbox} for inbox in rows])

    def blank_row(self, inbox: InboxId) -> None:
        """The row's words are gone with this turn; that it came in stays known."""
        self._connection.execute(_BLANK, {"inbox": inbox})

    def fail_row(self, inbox: InboxId, error: str) -> bool:
        """One more attempt failed; True where it was the last: the row is then given up."""
        state = self._connection.execute(_FAIL, {"inbox": inbox, "why": error}).scalar_one()
        return bool(state == "failed")


# Kept by the statement, of which there is one for each dialect.
@cache
def _accepting(statement: Insert) -> Prepared:
    return Prepared(statement.returning(inbox.c.inbox_id), fills=_FILLED)


def _inbox_row(row: Any) -> InboxRow:
    return InboxRow(
        inbox=InboxId(row.inbox_id),
        chat=ChatId(row.chat_id),
        kind=row.kind,
        external_message_id=row.external_message_id,
        payload=row.payload,
        attempts=row.attempts,
    )
