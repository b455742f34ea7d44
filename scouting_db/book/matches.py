"""Events and matches."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from sqlalchemy import and_, bindparam, case, delete, insert, select, update

from knowledge.vocabulary import PlayerId
from scouting_db.book.scope import Scope
from scouting_db.tables import entry, event, match, pair, reminder
from scouting_db.values import (
    EventId,
    EventRow,
    MatchId,
    MatchRow,
    MatchState,
    Micros,
    PairId,
    PairRow,
    Part,
)

LONGEST_COURT = 64
"""Characters kept of a court's name, as the column has them."""

_ADD_EVENT = insert(event)
_EVENTS = (
    select(event.c.event_id, event.c.name, event.c.starts_at)
    .where(event.c.book_id == bindparam("book"))
    .order_by(event.c.event_id.desc())
)
_our = pair.alias("our")
_their = pair.alias("their")
_MATCHES = (
    select(
        match.c.match_id,
        match.c.event_id,
        match.c.our_pair,
        match.c.their_pair,
        match.c.format,
        match.c.state,
        match.c.made_at,
        match.c.starts_at,
        match.c.court,
        _our.c.player_a.label("our_a"),
        _our.c.player_b.label("our_b"),
        _their.c.player_a.label("their_a"),
        _their.c.player_b.label("their_b"),
    )
    .select_from(
        match.outerjoin(
            _our, and_(_our.c.book_id == match.c.book_id, _our.c.pair_id == match.c.our_pair)
        ).outerjoin(
            _their,
            and_(_their.c.book_id == match.c.book_id, _their.c.pair_id == match.c.their_pair),
        )
    )
    .where(match.c.book_id == bindparam("book"))
)
_MATCH = _MATCHES.where(match.c.match_id == bindparam("match"))
_TO_COME = _MATCHES.where(
    match.c.state == MatchState.ANNOUNCED.value, match.c.starts_at >= bindparam("since")
).order_by(match.c.starts_at, match.c.match_id)
_newest_first = _MATCHES.order_by(match.c.match_id.desc())
_RECENT = _newest_first.limit(bindparam("limit"))
_AGAINST = _newest_first.where(match.c.their_pair == bindparam("pair"))
_IN_EVENT = _MATCHES.where(match.c.event_id == bindparam("event")).order_by(match.c.match_id)
_NEWEST_EVENT = (
    select(event.c.event_id, event.c.name, event.c.starts_at)
    .join(
        match,
        and_(match.c.book_id == event.c.book_id, match.c.event_id == event.c.event_id),
    )
    .where(
        event.c.book_id == bindparam("book"),
        match.c.our_pair == bindparam("ours"),
        event.c.name.startswith(bindparam("begins")),
    )
    .order_by(event.c.event_id.desc())
    .limit(1)
)
_OPEN_OF_PAIR = (
    _MATCHES.where(match.c.our_pair == bindparam("ours"), match.c.state != MatchState.OVER.value)
    .order_by(
        case((match.c.state == MatchState.RUNNING.value, 0), else_=1), match.c.match_id.desc()
    )
    .limit(1)
)
_ADD = insert(match)
_THIS = (match.c.book_id == bindparam("book"), match.c.match_id == bindparam("match"))
_REPLACE = (
    update(match)
    .where(*_THIS)
    .values(
        event_id=bindparam("new_event"),
        our_pair=bindparam("new_ours"),
        their_pair=bindparam("new_theirs"),
        format=bindparam("new_format"),
        state=bindparam("new_state"),
        starts_at=bindparam("new_start"),
        court=bindparam("new_court"),
        changed=bindparam("version"),
    )
)
_SET_STATE = (
    update(match)
    .where(*_THIS, match.c.state != bindparam("new_state"))
    .values(state=bindparam("new_state"), changed=bindparam("version"))
)
_ANY_ENTRY = (
    select(entry.c.n)
    .where(entry.c.book_id == bindparam("book"), entry.c.match_id == bindparam("match"))
    .limit(1)
)
_REMOVE = delete(match).where(*_THIS)
_REMOVE_REMINDERS = delete(reminder).where(
    reminder.c.book_id == bindparam("book"), reminder.c.match_id == bindparam("match")
)
_ANY_MATCH = (
    select(match.c.match_id)
    .where(match.c.book_id == bindparam("book"), match.c.event_id == bindparam("event"))
    .limit(1)
)
_REMOVE_EVENT = delete(event).where(
    event.c.book_id == bindparam("book"), event.c.event_id == bindparam("event")
)


class Matches(Scope):
    """Events and matches; what happened in a match is in its log."""

    def add_event(self, name: str, *, starts_at: Micros | None = None) -> EventId:
        """A tournament or a day of play."""
        number = self._number(Part.MATCHES)
        self._insert(_ADD_EVENT, {"event_id": number, "name": name, "starts_at": starts_at})
        return EventId(number)

    def put_back_event(self, row: EventRow) -> None:
        """An event that was taken back, under its own number; one that is there stays."""
        if not any(one.event == row.event for one in self.events()):
            values = {"event_id": row.event, "name": row.name, "starts_at": row.starts_at}
            self._insert(_ADD_EVENT, values)

    def events(self) -> tuple[EventRow, ...]:
        """Newest first."""
        return tuple(map(_event_row, self._read(_EVENTS)))

    def newest_event(self, our_pair: PairId, *, begins: str) -> EventRow | None:
        """The newest one so named in which that pair of ours has a match."""
        values = {"ours": our_pair, "begins": begins}
        found = self._read(_NEWEST_EVENT, values).one_or_none()
        return None if found is None else _event_row(found)

    def remove_event(self, event: EventId) -> None:
        """Take an event back; one that still has matches stays."""
        self._lock()
        if self._read(_ANY_MATCH, {"event": event}).first() is None:
            self._write(_REMOVE_EVENT, {"event": event})

    def matches_in(self, event: EventId) -> tuple[MatchRow, ...]:
        """The matches of an event, in the order they were announced."""
        return tuple(map(_match_row, self._read(_IN_EVENT, {"event": event})))

    def announce(
        self,
        *,
        our_pair: PairId | None,
        their_pair: PairId | None,
        format: Mapping[str, Any],
        starts_at: Micros | None = None,
        court: str | None = None,
        event: EventId | None = None,
        state: MatchState = MatchState.ANNOUNCED,
    ) -> MatchId:
        """A new match."""
        number = MatchId(self._number(Part.MATCHES))
        row = MatchRow(
            match=number,
            our_pair=None,
            their_pair=None,
            format=format,
            state=state,
            made_at=self._now,
            starts_at=starts_at,
            court=court,
            event=event,
        )
        self._add(row, our_pair, their_pair)
        return number

    def put_back_match(self, row: MatchRow) -> None:
        """An announcement that was taken back, under its own number."""
        ours, theirs = (None if one is None else one.pair for one in (row.our_pair, row.their_pair))
        self._add(row, ours, theirs)

    def _add(self, row: MatchRow, our_pair: PairId | None, their_pair: PairId | None) -> None:
        self._insert(
            _ADD,
            {
                "match_id": row.match,
                "event_id": row.event,
                "our_pair": our_pair,
                "their_pair": their_pair,
                "format": dict(row.format),
                "state": row.state.value,
                "made_at": row.made_at,
                "starts_at": row.starts_at,
                "court": None if row.court is None else row.court[:LONGEST_COURT],
                "changed": self._stamp(Part.MATCHES),
            },
        )

    def replace_match(self, row: MatchRow) -> None:
        """Everything about the match but its log and `made_at` becomes as in `row`."""
        self._write(
            _REPLACE,
            {
                "match": row.match,
                "new_event": row.event,
                "new_ours": None if row.our_pair is None else row.our_pair.pair,
                "new_theirs": None if row.their_pair is None else row.their_pair.pair,
                "new_format": dict(row.format),
                "new_state": row.state.value,
                "new_start": row.starts_at,
                "new_court": None if row.court is None else row.court[:LONGEST_COURT],
                "version": self._stamp(Part.MATCHES),
            },
        )

    def set_state(self, match: MatchId, state: MatchState) -> None:
        """Announced, running or over. A match that is so already is left as it is: each rally
        says that its match runs, and only the first one changes it.
        """
        values = {"match": match, "new_state": state.value, "version": self._stamp()}
        if self._read(_SET_STATE, values).rowcount:
            self._mark_part(Part.MATCHES)

    def match(self, match: MatchId) -> MatchRow | None:
        """One match; None for a number that is not of this book."""
        found = self._read(_MATCH, {"match": match}).one_or_none()
        return None if found is None else _match_row(found)

    def open_match(self, our_pair: PairId) -> MatchRow | None:
        """The newest running match of one pair of ours, else the newest announced one."""
        found = self._read(_OPEN_OF_PAIR, {"ours": our_pair}).one_or_none()
        return None if found is None else _match_row(found)

    def matches_to_come(self, *, since: Micros) -> tuple[MatchRow, ...]:
        """Announced matches that begin at or after `since` and did not yet, the first one first."""
        return tuple(map(_match_row, self._read(_TO_COME, {"since": since})))

    def matches(self, *, limit: int = 50) -> tuple[MatchRow, ...]:
        """Newest first."""
        return tuple(map(_match_row, self._read(_RECENT, {"limit": limit})))

    def matches_against(self, their_pair: PairId) -> tuple[MatchRow, ...]:
        """Newest first."""
        return tuple(map(_match_row, self._read(_AGAINST, {"pair": their_pair})))

    def remove_match(self, match: MatchId) -> None:
        """Take back an announcement; ValueError once something is logged."""
        self._lock()
        if self._read(_ANY_ENTRY, {"match": match}).first() is not None:
            raise ValueError(f"match {match} has a log; set its state instead")
        self._write(_REMOVE_REMINDERS, {"match": match})
        self._write(_REMOVE, {"match": match})


def _event_row(row: Any) -> EventRow:
    return EventRow(event=EventId(row.event_id), name=row.name, starts_at=row.starts_at)


def _match_row(row: Any) -> MatchRow:
    return MatchRow(
        match=MatchId(row.match_id),
        our_pair=_pair(row.our_pair, row.our_a, row.our_b),
        their_pair=_pair(row.their_pair, row.their_a, row.their_b),
        format=row.format,
        state=MatchState(row.state),
        made_at=Micros(row.made_at),
        starts_at=None if row.starts_at is None else Micros(row.starts_at),
        court=row.court,
        event=None if row.event_id is None else EventId(row.event_id),
    )


def _pair(pair: int | None, a: int, b: int) -> PairRow | None:
    if pair is None:
        return None
    return PairRow(pair=PairId(pair), players=(PlayerId(a), PlayerId(b)))
