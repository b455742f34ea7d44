"""What turns changed, so that anything can be undone and done again."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from typing import Any

from sqlalchemy import bindparam, func, insert, select, update

from scouting_db.book.scope import Scope
from scouting_db.tables import change
from scouting_db.values import ChangeId, ChangeRow, ChatId, InboxId

_ADD = insert(change)
_CHANGES = select(
    change.c.change_id, change.c.verb, change.c.targets, change.c.before, change.c.undone_at
).where(change.c.book_id == bindparam("book"))
_CHANGE = _CHANGES.where(change.c.change_id == bindparam("change"))
_OF_CHAT = _CHANGES.where(change.c.chat_id == bindparam("chat"))
_LAST_STANDING = (
    _OF_CHAT.where(change.c.undone_at.is_(None)).order_by(change.c.change_id.desc()).limit(1)
)
_LAST_STANDING_OF = _LAST_STANDING.where(change.c.verb == bindparam("verb"))
_newest_standing = (
    select(func.coalesce(func.max(change.c.change_id), 0))
    .where(
        change.c.book_id == bindparam("book"),
        change.c.chat_id == bindparam("chat"),
        change.c.undone_at.is_(None),
    )
    .scalar_subquery()
)
# Undo goes backwards: of changes undone in one moment the first was undone last.
_UNDONE = _OF_CHAT.where(
    change.c.undone_at.is_not(None), change.c.change_id > _newest_standing
).order_by(change.c.undone_at.desc(), change.c.change_id)
_MARK = (
    update(change)
    .where(change.c.book_id == bindparam("book"), change.c.change_id == bindparam("change"))
    .values(undone_at=bindparam("at"))
)


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
        """What the turn did to what, and what stood before."""
        number = self._number()
        self._insert(
            _ADD,
            {
                "change_id": number,
                "chat_id": chat,
                "inbox_id": inbox,
                "verb": verb,
                "targets": dict(targets),
                "before": dict(before),
            },
        )
        return ChangeId(number)

    def change(self, change: ChangeId) -> ChangeRow | None:
        """One change; None for a number that is not of this book."""
        return _change_row(self._read(_CHANGE, {"change": change}).one_or_none())

    def last_change(self, chat: ChatId, *, verb: str | None = None) -> ChangeRow | None:
        """What undo takes back: the chat's newest change that stands, of one verb if wanted."""
        if verb is None:
            return _change_row(self._read(_LAST_STANDING, {"chat": chat}).one_or_none())
        wanted = {"chat": chat, "verb": verb}
        return _change_row(self._read(_LAST_STANDING_OF, wanted).one_or_none())

    def last_undone(
        self, chat: ChatId, *, but: Collection[ChangeId] = frozenset()
    ) -> ChangeRow | None:
        """What redo puts back: the change undone last, unless a newer one stands; none of `but`."""
        for row in self._read(_UNDONE, {"chat": chat}):
            if row.change_id not in but:
                return _change_row(row)
        return None

    def mark_undone(self, change: ChangeId) -> None:
        """The change was taken back."""
        self._write(_MARK, {"change": change, "at": self._now})

    def mark_redone(self, change: ChangeId) -> None:
        """The change was put back."""
        self._write(_MARK, {"change": change, "at": None})


def _change_row(row: Any) -> ChangeRow | None:
    if row is None:
        return None
    return ChangeRow(
        change=ChangeId(row.change_id),
        verb=row.verb,
        targets=row.targets,
        before=row.before,
        undone=row.undone_at is not None,
    )
