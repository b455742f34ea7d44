"""What is known of a logged rally beyond who won it: how it ended, and what we chose."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from typing import Any

from sqlalchemy import and_, bindparam, delete, insert, select, tuple_

from knowledge.vocabulary import (
    BallQuality,
    Ending,
    PlayerId,
    Rate,
    Stroke,
    Topic,
    Wing,
)
from scouting_db.book.scope import Scope
from scouting_db.book.taken_out import taken_out
from scouting_db.conflicts import insert_or_replace
from scouting_db.tables import choice, entry, inbox, match, rally, rally_rate
from scouting_db.values import (
    ChatId,
    ChoiceRow,
    EntryKind,
    MatchId,
    PairId,
    RallyRow,
    RateRow,
    Winner,
)

_RALLIES = (
    select(
        rally.c.match_id,
        rally.c.n,
        rally.c.ending,
        rally.c.by_player,
        rally.c.stroke,
        rally.c.wing,
        rally.c.words,
    )
    .where(rally.c.book_id == bindparam("book"), rally.c.match_id == bindparam("match"))
    .order_by(rally.c.n)
)
_RATES = (
    select(
        rally_rate.c.match_id,
        rally_rate.c.n,
        rally_rate.c.player_id,
        rally_rate.c.rate,
        rally_rate.c.made,
    )
    .where(rally_rate.c.book_id == bindparam("book"), rally_rate.c.match_id == bindparam("match"))
    .order_by(rally_rate.c.n, rally_rate.c.player_id, rally_rate.c.rate)
)
_DROP_RATES = delete(rally_rate).where(
    rally_rate.c.book_id == bindparam("book"),
    rally_rate.c.match_id == bindparam("match"),
    rally_rate.c.n == bindparam("rally"),
)
_CHOSEN = select(
    choice.c.match_id,
    choice.c.n,
    choice.c.topic,
    choice.c.option,
    choice.c.ball,
    choice.c.against_player,
    choice.c.tagged,
)
_AGAINST = select(match.c.match_id).where(
    match.c.book_id == bindparam("book"),
    match.c.our_pair == bindparam("ours"),
    match.c.their_pair == bindparam("theirs"),
)
_CHOICES_AGAINST = (
    _CHOSEN.add_columns(entry.c.won_by)
    .join_from(
        choice,
        entry,
        and_(
            entry.c.book_id == choice.c.book_id,
            entry.c.match_id == choice.c.match_id,
            entry.c.n == choice.c.n,
        ),
    )
    .where(
        choice.c.book_id == bindparam("book"),
        choice.c.topic == bindparam("topic"),
        choice.c.match_id.in_(_AGAINST),
        tuple_(choice.c.match_id, choice.c.n).not_in(taken_out(of=_AGAINST)),
    )
    .order_by(choice.c.match_id, choice.c.n)
)
_CHOICES_IN = _CHOSEN.where(
    choice.c.book_id == bindparam("book"), choice.c.match_id == bindparam("match")
).order_by(choice.c.n, choice.c.topic)
_DROP_CHOICES = delete(choice).where(
    choice.c.book_id == bindparam("book"),
    choice.c.match_id == bindparam("match"),
    choice.c.n == bindparam("rally"),
)
_OF_MESSAGE = (
    select(entry.c.match_id, entry.c.n)
    .join(inbox, inbox.c.inbox_id == entry.c.inbox_id)
    .where(
        entry.c.book_id == bindparam("book"),
        entry.c.kind == EntryKind.RALLY.value,
        inbox.c.chat_id == bindparam("chat"),
        inbox.c.external_message_id == bindparam("message"),
        inbox.c.kind == "text",
    )
    .order_by(entry.c.match_id.desc(), entry.c.n.desc())
    .limit(1)
)
_TOLD = (
    select(rally.c.match_id)
    .join(match, and_(match.c.book_id == rally.c.book_id, match.c.match_id == rally.c.match_id))
    .where(rally.c.book_id == bindparam("book"), match.c.our_pair == bindparam("ours"))
    .distinct()
    .order_by(rally.c.match_id.desc())
    .limit(bindparam("limit"))
)


class Rallies(Scope):
    """Rallies, the rates they speak for, and choices."""

    def tell_rally(self, row: RallyRow) -> None:
        """What is known of a logged rally, in place of what was."""
        self._insert(
            insert_or_replace(self._connection, rally, "book_id", "match_id", "n"),
            _rally_values(row),
        )

    def tell_new(
        self,
        match: MatchId,
        rows: Iterable[RallyRow],
        choices: Iterable[ChoiceRow],
        rates: Iterable[RateRow],
    ) -> None:
        """What is known of rallies just logged, of which nothing was told yet, all at once."""
        self._touch(match)
        self._insert(insert(rally), *map(_rally_values, rows))
        self._insert(insert(choice), *map(_choice_values, choices))
        self._insert(insert(rally_rate), *map(_rate_values, rates))

    def newest_told(self, our_pair: PairId, *, limit: int = 5) -> tuple[MatchId, ...]:
        """The newest matches of a pair of ours of which a rally was told, newest first."""
        rows = self._read(_TOLD, {"ours": our_pair, "limit": limit})
        return tuple(MatchId(row.match_id) for row in rows)

    def rallies(self, match: MatchId) -> tuple[RallyRow, ...]:
        """The rallies of a match that something is known of, in order."""
        return tuple(map(_rally_row, self._read(_RALLIES, {"match": match})))

    def count_rates(self, match: MatchId, n: int, rows: Iterable[RateRow]) -> None:
        """What rally `n` says of the players' rates, in place of what it said."""
        self._touch(match)
        self._write(_DROP_RATES, {"match": match, "rally": n})
        for row in rows:
            self._insert(insert(rally_rate), _rate_values(replace(row, match=match, n=n)))

    def rates(self, match: MatchId) -> tuple[RateRow, ...]:
        """What the rallies of a match say of the players' rates, in order."""
        return tuple(map(_rate_row, self._read(_RATES, {"match": match})))

    def choose(self, row: ChoiceRow) -> None:
        """What we chose in a logged rally, one choice per topic."""
        self._touch(row.match)
        self._insert(
            insert_or_replace(self._connection, choice, "book_id", "match_id", "n", "topic"),
            _choice_values(row),
        )

    def drop_choices(self, match: MatchId, n: int) -> None:
        """Nothing is known any more of what we chose in rally `n`."""
        self._touch(match)
        self._write(_DROP_CHOICES, {"match": match, "rally": n})

    def choices_in(self, match: MatchId) -> tuple[ChoiceRow, ...]:
        """What we chose in one match, in order."""
        return tuple(map(_choice_row, self._read(_CHOICES_IN, {"match": match})))

    def rally_of_message(
        self, chat: ChatId, external_message_id: int
    ) -> tuple[MatchId, int] | None:
        """The match and line of the rally that a message told, for edits."""
        key = {"chat": chat, "message": external_message_id}
        row = self._read(_OF_MESSAGE, key).one_or_none()
        return None if row is None else (MatchId(row.match_id), row.n)

    def choices_against(
        self, topic: Topic, *, ours: PairId, theirs: PairId
    ) -> tuple[tuple[ChoiceRow, Winner | None], ...]:
        """What we chose in rallies against a pair that still count, in order, and who won them."""
        values = {"topic": topic.value, "ours": ours, "theirs": theirs}
        return tuple(
            (_choice_row(row), None if row.won_by is None else Winner(row.won_by))
            for row in self._read(_CHOICES_AGAINST, values)
        )


def _rally_values(row: RallyRow) -> dict[str, Any]:
    return {
        "match_id": row.match,
        "n": row.n,
        "ending": None if row.ending is None else row.ending.value,
        "by_player": row.by_player,
        "stroke": None if row.stroke is None else row.stroke.value,
        "wing": None if row.wing is None else row.wing.value,
        "words": row.words,
    }


def _rate_values(row: RateRow) -> dict[str, Any]:
    return {
        "match_id": row.match,
        "n": row.n,
        "player_id": row.player,
        "rate": row.rate.value,
        "made": row.made,
    }


def _choice_values(row: ChoiceRow) -> dict[str, Any]:
    return {
        "match_id": row.match,
        "n": row.n,
        "topic": row.topic.value,
        "option": row.option,
        "ball": None if row.ball is None else row.ball.value,
        "against_player": row.against,
        "tagged": "before" if row.tagged_before else "after",
    }


def _rally_row(row: Any) -> RallyRow:
    return RallyRow(
        match=MatchId(row.match_id),
        n=row.n,
        ending=None if row.ending is None else Ending(row.ending),
        by_player=None if row.by_player is None else PlayerId(row.by_player),
        stroke=None if row.stroke is None else Stroke(row.stroke),
        wing=None if row.wing is None else Wing(row.wing),
        words=row.words,
    )


def _rate_row(row: Any) -> RateRow:
    return RateRow(
        match=MatchId(row.match_id),
        n=row.n,
        player=PlayerId(row.player_id),
        rate=Rate(row.rate),
        made=row.made,
    )


def _choice_row(row: Any) -> ChoiceRow:
    return ChoiceRow(
        match=MatchId(row.match_id),
        n=row.n,
        topic=Topic(row.topic),
        option=row.option,
        ball=None if row.ball is None else BallQuality(row.ball),
        against=None if row.against_player is None else PlayerId(row.against_player),
        tagged_before=row.tagged == "before",
    )
