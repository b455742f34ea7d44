"""The post office: accept an update once, run turns, hand out what is to be sent."""

from __future__ import annotations

from collections.abc import Sequence

from sqlalchemy import Connection

from bot.post.batch import Turn, run_batch
from bot.post.incoming import Incoming
from bot.post.outgoing import NO_LIMITS, Limits, Outgoing
from knowledge.dataclass import dataclass
from scouting_db.directory import Directory
from scouting_db.session import Store
from scouting_db.values import AccountId, ChatId, InboxId, Micros, OutboxRow, Sent

LEASE_MICROS = 60_000_000
"""How long a row stays with the sender before it counts as unsent again: one minute."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Arrival:
    """An update as the channel numbered it."""

    update_id: int
    incoming: Incoming


def accept(
    connection: Connection, account: AccountId, arrivals: Sequence[Arrival], *, now: Micros
) -> tuple[InboxId, ...]:
    """Put updates in the inbox, each once per update id; returns the new rows.

    Whoever writes is no longer blocking us.
    """
    directory = Directory(connection)
    chats: dict[str, ChatId] = {}
    taken: list[InboxId | None] = []
    for arrival in arrivals:
        incoming = arrival.incoming
        if incoming.chat not in chats:
            chats[incoming.chat] = directory.written_in(
                account, incoming.chat, is_group=incoming.is_group
            )
        taken.append(_accept_one(directory, account, chats[incoming.chat], arrival, now=now))
    return tuple(inbox for inbox in taken if inbox is not None)


def _accept_one(
    directory: Directory, account: AccountId, chat: ChatId, arrival: Arrival, *, now: Micros
) -> InboxId | None:
    incoming = arrival.incoming
    return directory.accept(
        account,
        update_id=arrival.update_id,
        chat=chat,
        kind=incoming.kind.value,
        external_message_id=incoming.external_message_id,
        payload=incoming.to_json(),
        now=now,
    )


def answer(
    store: Store,
    account: AccountId,
    arrival: Arrival,
    turn: Turn,
    *,
    now: Micros,
    limits: Limits = NO_LIMITS,
) -> tuple[Outgoing, ...]:
    """Accept one update, run turns until none is open, and hand out the replies as sent.

    The whole path of a message at once, for a channel that prints (the console). The row is
    committed before its turn runs. Replies are numbered by their outbox number, which stands
    for the external message id, so that replying to one works.
    """
    with store.writing() as connection:
        accept(connection, account, [arrival], now=now)
    full = True
    while full:
        with store.writing() as connection:
            full = run_batch(connection, account, turn, now=now, limits=limits).full
    return hand_out(store, account, now=now)


def hand_out(store: Store, account: AccountId, *, now: Micros) -> tuple[Outgoing, ...]:
    """Everything that is due to be sent, marked as sent: for a channel that prints."""
    return tuple(Outgoing.from_json(row.payload) for row in _take_all(store, account, now=now))


def _take_all(store: Store, account: AccountId, *, now: Micros) -> list[OutboxRow]:
    taken: list[OutboxRow] = []
    while True:
        with store.writing() as connection:
            directory = Directory(connection)
            rows = directory.lease(account, now=now, until=Micros(now + LEASE_MICROS))
            directory.mark_sent([_printed(row) for row in rows])
        if not rows:
            return taken
        taken += rows


def _printed(row: OutboxRow) -> Sent:
    return Sent(chat=row.chat, outbox=row.outbox, external_message_id=row.outbox)
