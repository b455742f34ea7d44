"""Game plans as given, and the book's own settings."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from sqlalchemy import bindparam, insert, select

from scouting_db.book.scope import Scope
from scouting_db.conflicts import insert_or_replace
from scouting_db.tables import book, plan, preference
from scouting_db.values import Micros, PairId, PlanId, PlanRow

# The version is that at the moment of the insert: the turn's own.
_version = select(book.c.version).where(book.c.book_id == bindparam("book")).scalar_subquery()
_ADD = insert(plan).values(
    book_id=bindparam("book"),
    plan_id=bindparam("number"),
    our_pair=bindparam("ours"),
    their_pair=bindparam("theirs"),
    variant=bindparam("which"),
    lines=bindparam("plan_lines"),
    made_at=bindparam("at"),
    book_version=_version,
)
_NEWEST = (
    select(plan.c.plan_id, plan.c.their_pair, plan.c.variant, plan.c.lines, plan.c.made_at)
    .where(
        plan.c.book_id == bindparam("book"),
        plan.c.their_pair.is_not_distinct_from(bindparam("pair")),
    )
    .order_by(plan.c.made_at.desc(), plan.c.plan_id.desc())
    .limit(1)
)
_NEWEST_VARIANT = _NEWEST.where(plan.c.variant == bindparam("which"))
_PREFERENCES = select(preference.c.key, preference.c.value).where(
    preference.c.book_id == bindparam("book")
)


class Plans(Scope):
    """Plans and preferences."""

    def store_plan(
        self,
        *,
        our_pair: PairId | None,
        their_pair: PairId | None,
        variant: str,
        lines: Sequence[str],
    ) -> PlanId:
        """Keep a plan as it was given."""
        number = self._number()
        self._write(
            _ADD,
            {
                "number": number,
                "ours": our_pair,
                "theirs": their_pair,
                "which": variant,
                "plan_lines": list(lines),
                "at": self._now,
            },
        )
        return PlanId(number)

    def latest_plan(
        self, their_pair: PairId | None, *, variant: str | None = None
    ) -> PlanRow | None:
        """The newest plan against that pair, of any variant unless said."""
        if variant is None:
            found = self._read(_NEWEST, {"pair": their_pair}).one_or_none()
        else:
            values = {"pair": their_pair, "which": variant}
            found = self._read(_NEWEST_VARIANT, values).one_or_none()
        if found is None:
            return None
        return PlanRow(
            plan=PlanId(found.plan_id),
            their_pair=None if found.their_pair is None else PairId(found.their_pair),
            variant=found.variant,
            lines=tuple(found.lines),
            made_at=Micros(found.made_at),
        )

    def preferences(self) -> Mapping[str, str]:
        """The book's own settings."""
        return {row.key: row.value for row in self._read(_PREFERENCES)}

    def prefer(self, key: str, value: str) -> None:
        """Set one of them."""
        self._insert(
            insert_or_replace(self._connection, preference, "book_id", "key"),
            {"key": key, "value": value},
        )
