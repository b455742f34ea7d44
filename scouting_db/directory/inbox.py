"""What came in: stored once per update id, handled in order per chat."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from typing import Any
from sqlalchemy import Connection
from knowledge.evidence import Observation
from knowledge.vocabulary import *  # noqa
from scouting_db.values import *  # noqa
from scouting_db.directory.scope import Scope


class Incoming(Scope):
    """The inbox."""

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
        raise NotImplementedError

    def claim(self, account: AccountId, *, limit: int = 200) -> tuple[InboxRow, ...]:
        """Open rows to handle now, oldest first. SQLite: of all chats. PostgreSQL: of one chat, locked until commit."""
        raise NotImplementedError

    def close_row(self, inbox: InboxId) -> None:
        """The row is done; call it inside the turn's savepoint."""
        raise NotImplementedError

    def fail_row(self, inbox: InboxId, error: str) -> bool:
        """One more attempt failed; True where it was the last (MAX_ATTEMPTS): then the row is failed for good."""
        raise NotImplementedError
