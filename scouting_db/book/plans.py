"""Game plans as given, and the book's own settings."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from sqlalchemy import bindparam, insert, select

from knowledge.given_plan import GivenLine
from knowledge.vocabulary import EvidenceId, PlayerId
from scouting_db.book.scope import Scope
from scouting_db.conflicts import insert_or_replace
from scouting_db.tables import book, plan, preference
from scouting_db.values import Micros, PairId, Part, PlanId, PlanRow

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
        lines: Sequence[GivenLine],
    ) -> PlanId:
        """Keep a plan as it was given."""
        number = self._number(Part.SETTLED)
        self._write(
            _ADD,
            {
                "number": number,
                "ours": our_pair,
                "theirs": their_pair,
                "which": variant,
                "plan_lines": [_line_to_json(line) for line in lines],
                "at": self._now,
            },
        )
        return PlanId(number)

    def latest_plan(
        self,
        their_pair: PairId | None,
        *,
        variant: str | None = None,
        before: Micros | None = None,
    ) -> PlanRow | None:
        """The newest plan against that pair, of any variant unless said.

        `before`: the newest of those given up to then.
        """
        values: dict[str, Any] = {"pair": their_pair}
        statement = _NEWEST
        if variant is not None:
            values["which"] = variant
            statement = _NEWEST_VARIANT
        if before is not None:
            values["before"] = before
            statement = statement.where(plan.c.made_at <= bindparam("before"))
        found = self._read(statement, values).one_or_none()
        return None if found is None else _plan_row(found)

    def preferences(self) -> Mapping[str, str]:
        """The book's own settings."""
        return {row.key: row.value for row in self._read(_PREFERENCES)}

    def prefer(self, key: str, value: str) -> None:
        """Set one of them."""
        self._insert(
            insert_or_replace(self._connection, preference, "book_id", "key"),
            {"key": key, "value": value},
        )


def _plan_row(row: Any) -> PlanRow:
    return PlanRow(
        plan=PlanId(row.plan_id),
        their_pair=None if row.their_pair is None else PairId(row.their_pair),
        variant=row.variant,
        lines=tuple(map(_line_of, row.lines)),
        made_at=Micros(row.made_at),
    )


def _line_to_json(line: GivenLine) -> dict[str, Any]:
    """Plain JSON, absent things left out."""
    stored = {
        "do": line.do,
        "because": line.because,
        "cue": line.cue,
        "phase": line.phase,
        "source": line.source,
        "evidence": list(line.evidence),
        "per_100": line.per_100,
        "we_serve": line.we_serve,
        "who": line.who,
        "option": line.option,
    }
    return {key: value for key, value in stored.items() if value not in (None, "", [])}


def _line_of(stored: Any) -> GivenLine:
    """A stored line; plans of the first versions kept nothing but its text."""
    if isinstance(stored, str):
        do, _, because = stored.partition(": ")
        return GivenLine(do=do, because=because)
    who = stored.get("who")
    return GivenLine(
        do=stored["do"],
        because=stored.get("because", ""),
        cue=stored.get("cue", ""),
        phase=stored.get("phase", ""),
        source=stored.get("source", ""),
        evidence=tuple(map(EvidenceId, stored.get("evidence", ()))),
        per_100=stored.get("per_100", 0.0),
        we_serve=stored.get("we_serve"),
        who=None if who is None else PlayerId(who),
        option=stored.get("option", ""),
    )
