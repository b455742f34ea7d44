"""The statements of the outbox."""

from __future__ import annotations

from sqlalchemy import and_, bindparam, case, func, insert, literal, or_, select, text, update

from scouting_db.prepared import Prepared
from scouting_db.tables import chat, outbox
from scouting_db.values import REPLY

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
NUMBER = Prepared(_numbering)
POST = Prepared(
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
NUMBER_TO_SEND = Prepared(
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
DUE = Prepared(_due)
_OF_CHATS = outbox.c.chat_id.in_(bindparam("chats", expanding=True))
DUE_OF_CHATS = _due.where(_OF_CHATS)
DUE_CHATS = (
    select(outbox.c.chat_id)
    .join_from(outbox, chat, chat.c.chat_id == outbox.c.chat_id)
    .where(*_OF_ACCOUNT, _due_at <= bindparam("now"), ~_held_up)
    .group_by(outbox.c.chat_id)
    .order_by(func.min(outbox.c.priority), func.min(outbox.c.next_try_at))
    .limit(bindparam("limit"))
)
SENDING_CHATS = (
    select(outbox.c.chat_id)
    .join_from(outbox, chat, chat.c.chat_id == outbox.c.chat_id)
    .where(*_OF_ACCOUNT, outbox.c.state == "sending")
    .distinct()
)
UNSENT_ROWS = (
    select(func.count(), func.min(outbox.c.next_try_at))
    .select_from(outbox.join(chat, chat.c.chat_id == outbox.c.chat_id))
    .where(*_OF_ACCOUNT)
)
NEXT_DUE = (
    select(func.min(_due_at))
    .select_from(outbox.join(chat, chat.c.chat_id == outbox.c.chat_id))
    .where(*_OF_ACCOUNT)
)
ANY_DUE = Prepared(
    select(outbox.c.outbox_id)
    .join_from(outbox, chat, chat.c.chat_id == outbox.c.chat_id)
    .where(*_OF_ACCOUNT, _due_at <= bindparam("now"))
    .limit(1)
)
ANY_HELD_UP = Prepared(
    select(outbox.c.outbox_id)
    .join_from(outbox, chat, chat.c.chat_id == outbox.c.chat_id)
    .where(*_OF_ACCOUNT, outbox.c.state == "waiting", outbox.c.next_try_at <= bindparam("now"))
    .limit(1)
)
_THIS = and_(outbox.c.chat_id == bindparam("chat"), outbox.c.outbox_id == bindparam("number"))
LEASE = Prepared(
    update(outbox)
    .where(_THIS)
    .values(state="sending", attempts=outbox.c.attempts + 1, lease_until=bindparam("until"))
)
# Written out: many rows are marked at once, for which a list cannot be bound.
_SAYS_WHAT_IS_NOT_KEPT = or_(*(outbox.c.about_kind == kind for kind in NOT_KEPT))
SENT = Prepared(
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
RETRY = (
    update(outbox)
    .where(_THIS, or_(outbox.c.state == "sending", outbox.c.state == "waiting"))
    .values(state="waiting", lease_until=None, next_try_at=bindparam("at"))
)
RELEASE = (
    update(outbox)
    .where(
        outbox.c.state == "sending",
        outbox.c.chat_id.in_(
            select(chat.c.chat_id).where(chat.c.account_id == bindparam("account"))
        ),
    )
    .values(state="waiting", lease_until=None)
)
RELEASE_CHATS = (
    update(outbox)
    .where(outbox.c.state == "sending", _OF_CHATS)
    .values(state="waiting", lease_until=None)
)
DROP = (
    update(outbox)
    .where(_THIS)
    .values(state="dropped", lease_until=None, dropped_because=bindparam("why"))
)
ABOUT = (
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
