"""What goes out: numbered per chat, leased to the sender, marked."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from typing import Any
from sqlalchemy import Connection
from knowledge.evidence import Observation
from knowledge.vocabulary import *  # noqa
from scouting_db.values import *  # noqa
from scouting_db.directory.scope import Scope


class Outgoing(Scope):
    """The outbox."""

    def post(
        self, chat: ChatId, inbox: InboxId | None, posts: Sequence[NewPost], *, now: Micros
    ) -> tuple[OutboxId, ...]:
        """Put messages in the outbox, in order; at most one call per inbox row."""
        raise NotImplementedError

    def lease(
        self, account: AccountId, *, now: Micros, until: Micros, limit: int = 200
    ) -> tuple[OutboxRow, ...]:
        """Rows due now, marked as sending until `until`. In order per chat; a row whose lease ran out is due again; none overtakes an earlier row that waits; none of a blocked chat."""
        raise NotImplementedError

    def mark_sent(self, marks: Sequence[Sent]) -> None:
        """The channel took these."""
        raise NotImplementedError

    def retry_at(self, chat: ChatId, outbox: OutboxId, *, at: Micros) -> None:
        """Try again then, and later rows of the chat after it."""
        raise NotImplementedError

    def drop(self, chat: ChatId, outbox: OutboxId, *, because: str) -> None:
        """Never send this row."""
        raise NotImplementedError

    def next_due(self, account: AccountId) -> Micros | None:
        """The earliest time at which a row may be due; None with nothing unsent."""
        raise NotImplementedError

    def about_of(self, chat: ChatId, external_message_id: int) -> About | None:
        """What a message of ours spoke of, to correct by replying; None where not known."""
        raise NotImplementedError
