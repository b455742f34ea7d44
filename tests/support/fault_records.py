"""A campaign's ledger, read from the database and from the stand-in server."""

from __future__ import annotations

from collections.abc import Hashable, Iterable, Mapping
from typing import Any

from bot_api_server import SentMessage, State
from fault_ledger import Accepted, Arrived, Injected, Ledger, Noted, Posted
from sqlalchemy import Connection, NullPool, create_engine, func, select

from bot.channels.telegram_bot.form import shown_text
from bot.chat.wording import wording
from bot.post import Outgoing
from scouting_db.tables import chat, inbox, note, outbox

COURTESIES = frozenset((wording("busy"),))
"""Lines that are said outside the outbox."""


def read_ledger(
    url: str,
    state: State,
    *,
    injected: Iterable[Injected],
    killed: Iterable[str],
    cut_off: int = 0,
) -> Ledger:
    """All of a run, once it has come to rest."""
    engine = create_engine(url, poolclass=NullPool)
    with engine.connect() as connection:
        return Ledger(
            injected=tuple(injected),
            accepted=_accepted(connection),
            noted=_noted(connection),
            posted=_posted(connection),
            arrived=tuple(_arrived(one, state) for one in state.sent if one.text not in COURTESIES),
            killed=frozenset(killed),
            cut_off=cut_off,
        )


def unsettled(url: str, injected: int) -> int:
    """Messages that are not yet accepted, handled or answered."""
    engine = create_engine(url, poolclass=NullPool)
    with engine.connect() as connection:
        accepted = connection.scalar(select(func.count()).select_from(inbox)) or 0
        open_rows = select(func.count()).where(inbox.c.state == "open")
        unsent = select(func.count()).where(outbox.c.state.in_(("waiting", "sending")))
        left = (connection.scalar(one) or 0 for one in (open_rows, unsent))
        return injected - accepted + sum(left)


def _accepted(connection: Connection) -> tuple[Accepted, ...]:
    rows = connection.execute(
        select(inbox, chat.c.external_chat_id)
        .join(chat, chat.c.chat_id == inbox.c.chat_id)
        .order_by(inbox.c.inbox_id)
    )
    return tuple(
        Accepted(
            inbox=row.inbox_id,
            update_id=row.update_id,
            chat=int(row.external_chat_id),
            text=row.payload["text"],
            state=row.state,
        )
        for row in rows
    )


def _noted(connection: Connection) -> tuple[Noted, ...]:
    rows = connection.execute(
        select(note.c.text, chat.c.external_chat_id)
        .join(chat, chat.c.chat_id == note.c.chat_id)
        .where(note.c.deleted_at.is_(None))
        .order_by(note.c.book_id, note.c.note_id)
    )
    return tuple(Noted(chat=int(row.external_chat_id), text=row.text) for row in rows)


def _posted(connection: Connection) -> tuple[Posted, ...]:
    rows = connection.execute(
        select(outbox, chat.c.external_chat_id)
        .join(chat, chat.c.chat_id == outbox.c.chat_id)
        .order_by(outbox.c.chat_id, outbox.c.outbox_id)
    )
    return tuple(
        Posted(
            chat=int(row.external_chat_id),
            inbox=row.inbox_id,
            key=_key_of_posted(row.payload),
            state=row.state,
        )
        for row in rows
    )


def _key_of_posted(payload: Mapping[str, Any]) -> Hashable:
    message = Outgoing.from_json(payload)
    payloads = tuple(button.payload for row in message.buttons for button in row)
    return shown_text(message), payloads


def _arrived(sent: SentMessage, state: State) -> Arrived:
    payloads = tuple(button["callback_data"] for row in sent.buttons for button in row)
    return Arrived(
        chat=sent.chat_id,
        key=(sent.text, payloads),
        by=sent.by,
        was_heard=sent.message_id not in state.unheard,
    )
