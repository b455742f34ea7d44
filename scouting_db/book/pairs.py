"""Two players together, and what a pair of ours settled."""

from __future__ import annotations

from typing import Any

from sqlalchemy import bindparam, delete, exists, func, insert, select

from knowledge.vocabulary import AgreementKey, PlayerId
from scouting_db.book.scope import Scope
from scouting_db.conflicts import insert_or_replace
from scouting_db.tables import agreement, match, pair, plan
from scouting_db.values import AgreementRow, Micros, PairId, PairRow, Part

_PAIRS = (
    select(pair.c.pair_id, pair.c.player_a, pair.c.player_b)
    .where(pair.c.book_id == bindparam("book"))
    .order_by(pair.c.pair_id)
)
_PAIR = _PAIRS.where(pair.c.pair_id == bindparam("pair"))
_PAIR_OF = _PAIRS.where(pair.c.player_a == bindparam("a"), pair.c.player_b == bindparam("b"))
_ADD = insert(pair)
_AGREEMENTS = (
    select(agreement.c.key, agreement.c.value, agreement.c.words, agreement.c.since)
    .where(agreement.c.book_id == bindparam("book"), agreement.c.pair_id == bindparam("pair"))
    .order_by(agreement.c.since)
)
_OF_KEY = (
    agreement.c.book_id == bindparam("book"),
    agreement.c.pair_id == bindparam("pair"),
    agreement.c.key == bindparam("which"),
)
_NEWEST = select(func.max(agreement.c.since)).where(*_OF_KEY)
_WITHDRAW = delete(agreement).where(*_OF_KEY, agreement.c.since == bindparam("newest"))


_UNMAKE = delete(pair).where(
    pair.c.book_id == bindparam("book"),
    pair.c.pair_id == bindparam("pair"),
    *(
        ~exists().where(table.c.book_id == bindparam("book"), column == bindparam("pair"))
        for table, column in (
            (agreement, agreement.c.pair_id),
            (match, match.c.our_pair),
            (match, match.c.their_pair),
            (plan, plan.c.our_pair),
            (plan, plan.c.their_pair),
        )
    ),
)


class Pairs(Scope):
    """Pairs and agreements."""

    def pair_of(self, a: PlayerId, b: PlayerId) -> PairId:
        """The pair of two players in any order, made at the first call.

        ValueError for one player twice; IntegrityError for a player of another book.
        """
        if a == b:
            raise ValueError(f"a pair is two players, got {a} twice")
        key = {"a": min(a, b), "b": max(a, b)}
        found = self._read(_PAIR_OF, key).one_or_none()
        if found is None:
            # Look again with the book locked: another turn may have made it just now.
            self._lock()
            found = self._read(_PAIR_OF, key).one_or_none()
        return PairId(found.pair_id) if found is not None else self._add_pair(key["a"], key["b"])

    def _add_pair(self, a: PlayerId, b: PlayerId) -> PairId:
        number = self._number(Part.PEOPLE)
        self._insert(_ADD, {"pair_id": number, "player_a": a, "player_b": b})
        return PairId(number)

    def unmake_pair(self, pair: PairId) -> bool:
        """Take a pair out again; False where a match, a plan or an agreement is already theirs."""
        return self._write(_UNMAKE, {"pair": pair}).rowcount > 0

    def pair(self, pair: PairId) -> PairRow | None:
        """One pair; None for a number that is not of this book."""
        found = self._read(_PAIR, {"pair": pair}).one_or_none()
        return None if found is None else _pair_row(found)

    def pairs(self) -> tuple[PairRow, ...]:
        """Every pair, in the order they were made."""
        return tuple(map(_pair_row, self._read(_PAIRS)))

    def agree(self, pair: PairId, key: AgreementKey, value: str, words: str) -> None:
        """From now on this counts for the pair; what stood before is kept."""
        columns = ("book_id", "pair_id", "key", "since")
        self._insert(
            insert_or_replace(self._connection, agreement, *columns),
            {
                "pair_id": pair,
                "key": key.value,
                "since": self._now,
                "value": value,
                "words": words,
            },
        )

    def withdraw(self, pair: PairId, key: AgreementKey) -> None:
        """Take back the newest agreement of that key: the one before counts again."""
        values = {"pair": pair, "which": key.value}
        newest = self._read(_NEWEST, values).scalar()
        self._write(_WITHDRAW, {**values, "newest": newest})

    def agreements_of(self, pair: PairId) -> tuple[AgreementRow, ...]:
        """The newest of each key, oldest first."""
        newest = {row.key: row for row in self._read(_AGREEMENTS, {"pair": pair})}
        return tuple(
            AgreementRow(
                key=AgreementKey(row.key),
                value=row.value,
                words=row.words,
                since=Micros(row.since),
            )
            for row in sorted(newest.values(), key=lambda each: each.since)
        )


def _pair_row(row: Any) -> PairRow:
    return PairRow(
        pair=PairId(row.pair_id), players=(PlayerId(row.player_a), PlayerId(row.player_b))
    )
