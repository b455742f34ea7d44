"""What turns changed, so that anything can be undone."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from typing import Any
from sqlalchemy import Connection
from knowledge.evidence import Observation
from knowledge.vocabulary import *  # noqa
from scouting_db.values import *  # noqa
from scouting_db.book.scope import Scope


class Changes(Scope):
    """Undo and redo."""

    def record_change(
        self,
        verb: str,
        *,
        targets: Mapping[str, Any],
        before: Mapping[str, Any],
        chat: ChatId | None = None,
        inbox: InboxId | None = None,
    ) -> ChangeId:
        """"""
        raise NotImplementedError

    def change(self, change: ChangeId) -> ChangeRow | None:
        """"""
        raise NotImplementedError

    def last_change(self, chat: ChatId) -> ChangeRow | None:
        """The newest change of the chat that stands: what undo takes back."""
        raise NotImplementedError

    def last_undone(self, chat: ChatId) -> ChangeRow | None:
        """What redo puts back: the change undone last, unless a newer one stands."""
        raise NotImplementedError

    def mark_undone(self, change: ChangeId) -> None:
        """"""
        raise NotImplementedError

    def mark_redone(self, change: ChangeId) -> None:
        """"""
        raise NotImplementedError
