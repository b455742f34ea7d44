"""What goes out: numbered per chat, leased to the sender, marked."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from typing import Any

from scouting_db.directory.outbox_statements import (
    ABOUT,
    ANY_DUE,
    ANY_HELD_UP,
    DROP,
    DUE,
    DUE_CHATS,
    DUE_OF_CHATS,
    LEASE,
    NEXT_DUE,
    NUMBER,
    NUMBER_TO_SEND,
    POST,
    RELEASE,
    RELEASE_CHATS,
    RETRY,
    SENDING_CHATS,
    SENT,
    UNSENT_ROWS,
)
from scouting_db.directory.scope import Scope
from scouting_db.values import (
    About,
    AccountId,
    ChatId,
    InboxId,
    Micros,
    NewPost,
    OutboxId,
    OutboxRow,
    PostKind,
    Sent,
    Waiting,
)


class Outgoing(Scope):
    """The outbox."""

    def post(
        self, chat: ChatId, inbox: InboxId | None, posts: Sequence[NewPost], *, now: Micros
    ) -> tuple[OutboxId, ...]:
        """Put messages in the outbox, in order; at most one call per inbox row."""
        if not posts:
            return ()
        numbered = NUMBER.row(self._connection, {"chat": chat, "more": len(posts)})
        if numbered is None:
            raise LookupError(f"no chat {chat}")
        rows = _numbered(posts, chat=chat, inbox=inbox, last=numbered.posted, now=now)
        POST.run_each(self._connection, rows)
        return tuple(OutboxId(row["outbox_id"]) for row in rows)

    def post_leased(
        self,
        chat: ChatId,
        inbox: InboxId | None,
        replies: Sequence[NewPost],
        *,
        now: Micros,
        until: Micros,
    ) -> tuple[OutboxRow, ...]:
        """The same for the account's one sender, which is handed them as by `lease`: what it is to
        send, once that is committed. Empty where a reply before them must go first: all then wait.
        """
        if not replies:
            return ()
        values = {"chat": chat, "more": len(replies), "now": now}
        numbered = NUMBER_TO_SEND.row(self._connection, values)
        if numbered is None:
            raise LookupError(f"no chat {chat}")
        rows = _numbered(replies, chat=chat, inbox=inbox, last=numbered.posted, now=now)
        if numbered.is_preceded or numbered.blocked_at is not None:
            POST.run_each(self._connection, rows)
            return ()
        leased = [{**row, "state": "sending", "attempts": 1, "lease_until": until} for row in rows]
        POST.run_each(self._connection, leased)
        return tuple(
            OutboxRow(
                chat=chat,
                outbox=OutboxId(row["outbox_id"]),
                external_chat_id=numbered.external_chat_id,
                kind=reply.kind,
                payload=reply.payload,
                priority=reply.priority,
                attempts=1,
                is_group=bool(numbered.is_group),
            )
            for row, reply in zip(rows, replies, strict=True)
        )

    def lease(
        self,
        account: AccountId,
        *,
        now: Micros,
        until: Micros,
        limit: int = 200,
        chats: Collection[ChatId] | None = None,
    ) -> tuple[OutboxRow, ...]:
        """Rows due now, marked as sending until `until`; `attempts` counts this one.

        In order per chat, replies before reminders; none overtakes an earlier row that waits; none
        of a blocked chat. A reply may follow one that is being sent: the sender keeps the order of
        what it was given. A row whose lease ran out is due again. One sender at a time per account;
        or per chat, each giving the `chats` that it holds.
        """
        values = {"account": account, "now": now, "limit": limit}
        if chats is None:
            found: Sequence[Any] = DUE.rows(self._connection, values)
        else:
            held = {**values, "chats": list(chats)}
            found = self._connection.execute(DUE_OF_CHATS, held).all()
        rows = tuple(map(_outbox_row, found))
        marks = [{"chat": row.chat, "number": row.outbox, "until": until} for row in rows]
        LEASE.run_each(self._connection, marks)
        return rows

    def any_due(self, account: AccountId, *, now: Micros) -> bool:
        """Whether a lease may find something, or find it held up."""
        return ANY_DUE.row(self._connection, {"account": account, "now": now}) is not None

    def any_held_up(self, account: AccountId, *, now: Micros) -> bool:
        """Right after a lease: whether a row waits for one before it that is being sent."""
        values = {"account": account, "now": now}
        return ANY_HELD_UP.row(self._connection, values) is not None

    def chats_due(self, account: AccountId, *, now: Micros, limit: int) -> tuple[ChatId, ...]:
        """Chats with a row due now, the most urgent first."""
        values = {"account": account, "now": now, "limit": limit}
        return tuple(map(ChatId, self._connection.execute(DUE_CHATS, values).scalars()))

    def chats_being_sent(self, account: AccountId) -> tuple[ChatId, ...]:
        """Chats with a row marked as sending, by whomever, dead or alive."""
        found = self._connection.execute(SENDING_CHATS, {"account": account})
        return tuple(map(ChatId, found.scalars()))

    def unsent_rows(self, account: AccountId) -> Waiting:
        """How many rows are unsent, and since when the oldest is due."""
        count, oldest = self._connection.execute(UNSENT_ROWS, {"account": account}).one()
        return Waiting(count=count, since=None if oldest is None else Micros(oldest))

    def mark_sent(self, marks: Sequence[Sent]) -> None:
        """The channel took these."""
        SENT.run_each(
            self._connection,
            [
                {"chat": one.chat, "number": one.outbox, "external": one.external_message_id}
                for one in marks
            ],
        )

    def retry_at(self, chat: ChatId, outbox: OutboxId, *, at: Micros) -> None:
        """Try an unsent row again then, and later rows of the chat after it."""
        self._connection.execute(RETRY, {"chat": chat, "number": outbox, "at": at})

    def release(self, account: AccountId) -> None:
        """Rows that a killed sender had in hand are due again; for the one sender's start."""
        self._connection.execute(RELEASE, {"account": account})

    def release_chats(self, chats: Collection[ChatId]) -> None:
        """The same for these chats; for whoever holds them and has sent nothing there yet."""
        if chats:
            self._connection.execute(RELEASE_CHATS, {"chats": list(chats)})

    def drop(self, chat: ChatId, outbox: OutboxId, *, because: str) -> None:
        """Never send this row."""
        self._connection.execute(DROP, {"chat": chat, "number": outbox, "why": because})

    def next_due(self, account: AccountId) -> Micros | None:
        """The earliest time at which a row may be due; None with nothing to send."""
        found = self._connection.execute(NEXT_DUE, {"account": account}).scalar()
        return None if found is None else Micros(found)

    def about_of(self, chat: ChatId, external_message_id: int) -> About | None:
        """What a message of ours spoke of, to correct by replying; None where not known."""
        key = {"chat": chat, "external": external_message_id}
        found = self._connection.execute(ABOUT, key).one_or_none()
        return None if found is None else About(kind=found.about_kind, id=found.about_id)


def _numbered(
    posts: Sequence[NewPost], *, chat: ChatId, inbox: InboxId | None, last: int, now: Micros
) -> list[dict[str, Any]]:
    """Their rows, of which the last has that number."""
    first = last - len(posts) + 1
    return [
        _values(post, chat=chat, inbox=inbox, n=n, number=first + n, now=now)
        for n, post in enumerate(posts)
    ]


def _values(
    post: NewPost, *, chat: ChatId, inbox: InboxId | None, n: int, number: int, now: Micros
) -> dict[str, Any]:
    return {
        "chat_id": chat,
        "outbox_id": number,
        "inbox_id": inbox,
        "n": n,
        "kind": post.kind.value,
        "payload": dict(post.payload),
        "about_kind": None if post.about is None else post.about.kind,
        "about_id": None if post.about is None else post.about.id,
        "priority": post.priority,
        "state": "waiting",
        "attempts": 0,
        "next_try_at": now,
        "lease_until": None,
    }


def _outbox_row(row: Any) -> OutboxRow:
    return OutboxRow(
        chat=ChatId(row.chat_id),
        outbox=OutboxId(row.outbox_id),
        external_chat_id=row.external_chat_id,
        kind=PostKind(row.kind),
        payload=row.payload,
        priority=row.priority,
        attempts=row.attempts + 1,
        is_group=row.is_group,
    )
