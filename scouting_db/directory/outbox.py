"""What goes out: numbered per chat, leased to the sender, marked."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from typing import Any

from sqlalchemy import and_, bindparam, case, func, insert, literal, or_, select, text, update

from scouting_db.directory.scope import Scope
from scouting_db.prepared import Prepared
from scouting_db.tables import chat, outbox
from scouting_db.values import (
    REPLY,
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

NOT_KEPT = ("invitation", "handed_back")
"""What a message of ours may be about whose text is gone once it is sent: a key, or words that we
promised not to store."""

# Written out and not bound, so that SQLite sees that the partial index applies.
_UNSENT = text("outbox.state IN ('waiting', 'sending')")
_numbering = (
    update(chat)
    .where(chat.c.chat_id == bindparam("chat"))
    .values(posted=chat.c.posted + bindparam("more"))
    .returning(chat.c.posted)
)
_NUMBER = Prepared(_numbering)
_POST = Prepared(
    insert(outbox),
    fills=(
        "chat_id",
        "outbox_id",
        "inbox_id",
        "n",
        "kind",
        "payload",
        "about_kind",
        "about_id",
        "priority",
        "state",
        "attempts",
        "next_try_at",
        "lease_until",
    ),
)
# For a reply, which nothing precedes but an earlier reply: one that waits, or whose sender is dead.
_IS_PRECEDED = (
    select(outbox.c.outbox_id)
    .where(
        _UNSENT,
        outbox.c.chat_id == bindparam("chat"),
        outbox.c.priority <= REPLY,
        or_(outbox.c.state == "waiting", outbox.c.lease_until <= bindparam("now")),
    )
    .exists()
)
# The column itself, not whether it is NULL: SQLite 3.40 says it is not, in RETURNING, of a column
# behind one that is NOT NULL.
_NUMBER_TO_SEND = Prepared(
    _numbering.returning(
        chat.c.external_chat_id,
        chat.c.is_group,
        chat.c.blocked_at,
        _IS_PRECEDED.label("is_preceded"),
    )
)

_due_at = case((outbox.c.state == "sending", outbox.c.lease_until), else_=outbox.c.next_try_at)
_earlier = outbox.alias("earlier")
# Whoever is sending to a chat goes through its rows in order, so that a reply is handed out behind
# one that is being sent; a reminder is not, since replies that come meanwhile go before it.
_earlier_is_in_the_way = or_(
    and_(_earlier.c.state == "waiting", _earlier.c.next_try_at > bindparam("now")),
    and_(
        _earlier.c.state == "sending",
        _earlier.c.lease_until > bindparam("now"),
        _earlier.c.priority < outbox.c.priority,
    ),
)
_held_up = (
    select(_earlier.c.outbox_id)
    .where(
        text("earlier.state IN ('waiting', 'sending')"),
        _earlier.c.chat_id == outbox.c.chat_id,
        _earlier.c.outbox_id < outbox.c.outbox_id,
        _earlier.c.priority <= outbox.c.priority,
        _earlier_is_in_the_way,
    )
    .exists()
)
# "+ 0" keeps the planner from beginning with the account's chats, all of them: the unsent rows
# are few.
_OF_ACCOUNT = (_UNSENT, chat.c.account_id + 0 == bindparam("account"), chat.c.blocked_at.is_(None))
_due = (
    select(
        outbox.c.chat_id,
        outbox.c.outbox_id,
        chat.c.external_chat_id,
        chat.c.is_group,
        outbox.c.kind,
        outbox.c.payload,
        outbox.c.priority,
        outbox.c.attempts,
    )
    .join_from(outbox, chat, chat.c.chat_id == outbox.c.chat_id)
    .where(*_OF_ACCOUNT, _due_at <= bindparam("now"), ~_held_up)
    .order_by(outbox.c.priority, outbox.c.chat_id, outbox.c.outbox_id)
    .limit(bindparam("limit"))
)
_DUE = Prepared(_due)
_OF_CHATS = outbox.c.chat_id.in_(bindparam("chats", expanding=True))
_DUE_OF_CHATS = _due.where(_OF_CHATS)
_DUE_CHATS = (
    select(outbox.c.chat_id)
    .join_from(outbox, chat, chat.c.chat_id == outbox.c.chat_id)
    .where(*_OF_ACCOUNT, _due_at <= bindparam("now"), ~_held_up)
    .group_by(outbox.c.chat_id)
    .order_by(func.min(outbox.c.priority), func.min(outbox.c.next_try_at))
    .limit(bindparam("limit"))
)
_SENDING_CHATS = (
    select(outbox.c.chat_id)
    .join_from(outbox, chat, chat.c.chat_id == outbox.c.chat_id)
    .where(*_OF_ACCOUNT, outbox.c.state == "sending")
    .distinct()
)
_UNSENT_ROWS = (
    select(func.count(), func.min(outbox.c.next_try_at))
    .select_from(outbox.join(chat, chat.c.chat_id == outbox.c.chat_id))
    .where(*_OF_ACCOUNT)
)
_NEXT_DUE = (
    select(func.min(_due_at))
    .select_from(outbox.join(chat, chat.c.chat_id == outbox.c.chat_id))
    .where(*_OF_ACCOUNT)
)
_ANY_DUE = Prepared(
    select(outbox.c.outbox_id)
    .join_from(outbox, chat, chat.c.chat_id == outbox.c.chat_id)
    .where(*_OF_ACCOUNT, _due_at <= bindparam("now"))
    .limit(1)
)
_ANY_HELD_UP = Prepared(
    select(outbox.c.outbox_id)
    .join_from(outbox, chat, chat.c.chat_id == outbox.c.chat_id)
    .where(*_OF_ACCOUNT, outbox.c.state == "waiting", outbox.c.next_try_at <= bindparam("now"))
    .limit(1)
)
_THIS = and_(outbox.c.chat_id == bindparam("chat"), outbox.c.outbox_id == bindparam("number"))
_LEASE = Prepared(
    update(outbox)
    .where(_THIS)
    .values(state="sending", attempts=outbox.c.attempts + 1, lease_until=bindparam("until"))
)
# Written out: many rows are marked at once, for which a list cannot be bound.
_SAYS_WHAT_IS_NOT_KEPT = or_(*(outbox.c.about_kind == kind for kind in NOT_KEPT))
_SENT = Prepared(
    update(outbox)
    .where(_THIS)
    .values(
        state="sent",
        lease_until=None,
        external_message_id=bindparam("external"),
        payload=case(
            (_SAYS_WHAT_IS_NOT_KEPT, literal({}, outbox.c.payload.type)),
            else_=outbox.c.payload,
        ),
    )
)
_RETRY = (
    update(outbox)
    .where(_THIS, or_(outbox.c.state == "sending", outbox.c.state == "waiting"))
    .values(state="waiting", lease_until=None, next_try_at=bindparam("at"))
)
_RELEASE = (
    update(outbox)
    .where(
        outbox.c.state == "sending",
        outbox.c.chat_id.in_(
            select(chat.c.chat_id).where(chat.c.account_id == bindparam("account"))
        ),
    )
    .values(state="waiting", lease_until=None)
)
_RELEASE_CHATS = (
    update(outbox)
    .where(outbox.c.state == "sending", _OF_CHATS)
    .values(state="waiting", lease_until=None)
)
_DROP = (
    update(outbox)
    .where(_THIS)
    .values(state="dropped", lease_until=None, dropped_because=bindparam("why"))
)
_ABOUT = (
    select(outbox.c.about_kind, outbox.c.about_id)
    .join_from(outbox, chat, chat.c.chat_id == outbox.c.chat_id)
    .where(
        outbox.c.chat_id == bindparam("chat"),
        outbox.c.external_message_id == bindparam("external"),
        outbox.c.about_kind.is_not(None),
        # What was said while another book was in use speaks of rows of that one.
        outbox.c.outbox_id > chat.c.book_since,
    )
    .order_by(outbox.c.outbox_id.desc())
    .limit(1)
)


class Outgoing(Scope):
    """The outbox."""

    def post(
        self, chat: ChatId, inbox: InboxId | None, posts: Sequence[NewPost], *, now: Micros
    ) -> tuple[OutboxId, ...]:
        """Put messages in the outbox, in order; at most one call per inbox row."""
        if not posts:
            return ()
        numbered = _NUMBER.row(self._connection, {"chat": chat, "more": len(posts)})
        if numbered is None:
            raise LookupError(f"no chat {chat}")
        rows = _numbered(posts, chat=chat, inbox=inbox, last=numbered.posted, now=now)
        _POST.run_each(self._connection, rows)
        return tuple(OutboxId(row["outbox_id"]) for row in rows)

    def post_leased(
        self,
        chat: ChatId,
        inbox: InboxId,
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
        numbered = _NUMBER_TO_SEND.row(self._connection, values)
        if numbered is None:
            raise LookupError(f"no chat {chat}")
        rows = _numbered(replies, chat=chat, inbox=inbox, last=numbered.posted, now=now)
        if numbered.is_preceded or numbered.blocked_at is not None:
            _POST.run_each(self._connection, rows)
            return ()
        leased = [{**row, "state": "sending", "attempts": 1, "lease_until": until} for row in rows]
        _POST.run_each(self._connection, leased)
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
            found: Sequence[Any] = _DUE.rows(self._connection, values)
        else:
            held = {**values, "chats": list(chats)}
            found = self._connection.execute(_DUE_OF_CHATS, held).all()
        rows = tuple(map(_outbox_row, found))
        marks = [{"chat": row.chat, "number": row.outbox, "until": until} for row in rows]
        _LEASE.run_each(self._connection, marks)
        return rows

    def any_due(self, account: AccountId, *, now: Micros) -> bool:
        """Whether a lease may find something, or find it held up."""
        return _ANY_DUE.row(self._connection, {"account": account, "now": now}) is not None

    def any_held_up(self, account: AccountId, *, now: Micros) -> bool:
        """Right after a lease: whether a row waits for one before it that is being sent."""
        values = {"account": account, "now": now}
        return _ANY_HELD_UP.row(self._connection, values) is not None

    def chats_due(self, account: AccountId, *, now: Micros, limit: int) -> tuple[ChatId, ...]:
        """Chats with a row due now, the most urgent first."""
        values = {"account": account, "now": now, "limit": limit}
        return tuple(map(ChatId, self._connection.execute(_DUE_CHATS, values).scalars()))

    def chats_being_sent(self, account: AccountId) -> tuple[ChatId, ...]:
        """Chats with a row marked as sending, by whomever, dead or alive."""
        found = self._connection.execute(_SENDING_CHATS, {"account": account})
        return tuple(map(ChatId, found.scalars()))

    def unsent_rows(self, account: AccountId) -> Waiting:
        """How many rows are unsent, and since when the oldest is due."""
        count, oldest = self._connection.execute(_UNSENT_ROWS, {"account": account}).one()
        return Waiting(count=count, since=None if oldest is None else Micros(oldest))

    def mark_sent(self, marks: Sequence[Sent]) -> None:
        """The channel took these."""
        _SENT.run_each(
            self._connection,
            [
                {"chat": one.chat, "number": one.outbox, "external": one.external_message_id}
                for one in marks
            ],
        )

    def retry_at(self, chat: ChatId, outbox: OutboxId, *, at: Micros) -> None:
        """Try an unsent row again then, and later rows of the chat after it."""
        self._connection.execute(_RETRY, {"chat": chat, "number": outbox, "at": at})

    def release(self, account: AccountId) -> None:
        """Rows that a killed sender had in hand are due again; for the one sender's start."""
        self._connection.execute(_RELEASE, {"account": account})

    def release_chats(self, chats: Collection[ChatId]) -> None:
        """The same for these chats; for whoever holds them and has sent nothing there yet."""
        if chats:
            self._connection.execute(_RELEASE_CHATS, {"chats": list(chats)})

    def drop(self, chat: ChatId, outbox: OutboxId, *, because: str) -> None:
        """Never send this row."""
        self._connection.execute(_DROP, {"chat": chat, "number": outbox, "why": because})

    def next_due(self, account: AccountId) -> Micros | None:
        """The earliest time at which a row may be due; None with nothing to send."""
        found = self._connection.execute(_NEXT_DUE, {"account": account}).scalar()
        return None if found is None else Micros(found)

    def about_of(self, chat: ChatId, external_message_id: int) -> About | None:
        """What a message of ours spoke of, to correct by replying; None where not known."""
        key = {"chat": chat, "external": external_message_id}
        found = self._connection.execute(_ABOUT, key).one_or_none()
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
