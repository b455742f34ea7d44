"""Which lines of match logs are taken out, asked of the database instead of folding every log."""

from __future__ import annotations

from typing import Any

from sqlalchemy import bindparam, select, tuple_

from scouting_db.tables import entry
from scouting_db.values import EntryKind

DEEPEST_VOID = 3
"""A correction's own void, its undo, and the redo of that: a log goes no deeper, since whatever
is undone once more voids the first line anew. Voids of voids beyond that are not looked at."""


def taken_out(depth: int = DEEPEST_VOID, *, of: Any = None) -> Any:
    """The lines of the book that a void takes out, but for voids that were taken out themselves.

    `of` are the matches that are looked at, as a selection of their numbers; else all.
    """
    void = entry.alias(f"void_{depth}")
    lines = select(void.c.match_id, void.c.voids).where(
        void.c.book_id == bindparam("book"),
        void.c.kind == EntryKind.VOID.value,
        void.c.voids.is_not(None),
    )
    if of is not None:
        lines = lines.where(void.c.match_id.in_(of))
    if depth == 1:
        return lines
    return lines.where(tuple_(void.c.match_id, void.c.n).not_in(taken_out(depth - 1, of=of)))
