"""A match's log: appended only, its score a fold over it (bot.chat.match_log)."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import replace
from itertools import groupby
from typing import Any

from sqlalchemy import and_, bindparam, func, insert, select, update

from knowledge.vocabulary import PlayerId
from scouting_db.book.scope import Scope
from scouting_db.tables import entry, match, pair
from scouting_db.values import (
    AlreadyCounted,
    EntryKind,
    EntryRow,
    InboxId,
    LoggedMatch,
    MatchId,
    MeetingLog,
    Micros,
    PairId,
    PairRow,
    Part,
    Winner,
)

_OF_MATCH = (entry.c.book_id == bindparam("book"), entry.c.match_id == bindparam("match"))
_LINES = select(
    entry.c.n,
    entry.c.game_no,
    entry.c.kind,
    entry.c.at,
    entry.c.won_by,
    entry.c.ours,
    entry.c.theirs,
    entry.c.server,
    entry.c.we_serve,
    entry.c.detail,
    entry.c.voids,
)
_ENTRIES = _LINES.where(*_OF_MATCH).order_by(entry.c.n)
_LOGGED = (
    select(
        match.c.match_id,
        match.c.format,
        match.c.made_at,
        pair.c.pair_id,
        pair.c.player_a,
        pair.c.player_b,
        select(func.max(entry.c.n))
        .where(entry.c.book_id == match.c.book_id, entry.c.match_id == match.c.match_id)
        .scalar_subquery()
        .label("lines"),
    )
    .select_from(
        match.join(
            pair, and_(pair.c.book_id == match.c.book_id, pair.c.pair_id == match.c.their_pair)
        )
    )
    .where(match.c.book_id == bindparam("book"), match.c.our_pair == bindparam("ours"))
    .order_by(match.c.match_id.desc())
    .limit(bindparam("limit"))
)
_LOGS = (
    _LINES.add_columns(entry.c.match_id, match.c.format, match.c.made_at)
    .join_from(
        entry,
        match,
        and_(match.c.book_id == entry.c.book_id, match.c.match_id == entry.c.match_id),
    )
    .where(
        entry.c.book_id == bindparam("book"),
        entry.c.match_id.in_(bindparam("matches", expanding=True)),
    )
    .order_by(entry.c.match_id, entry.c.n)
)
_LAST = select(func.coalesce(func.max(entry.c.n), 0)).where(*_OF_MATCH).scalar_subquery()
_TOUCH_AND_LAST = (
    update(match)
    .where(match.c.book_id == bindparam("book"), match.c.match_id == bindparam("match"))
    .values(changed=bindparam("version"))
    .returning(_LAST)
)
"""A log that grows is marked as changed in the statement that tells how long it is."""

_GAME_OF = select(entry.c.game_no).where(*_OF_MATCH, entry.c.n == bindparam("which"))
_APPEND = insert(entry)


class MatchLog(Scope):
    """The log of a match."""

    def entries(self, match: MatchId) -> tuple[EntryRow, ...]:
        """Every line in order, voided ones and voids included."""
        return tuple(map(_entry_row, self._read(_ENTRIES, {"match": match})))

    def logged_matches(self, our_pair: PairId, *, limit: int = 100) -> tuple[LoggedMatch, ...]:
        """The newest matches of a pair of ours that have a log, newest first."""
        rows = self._read(_LOGGED, {"ours": our_pair, "limit": limit})
        return tuple(_logged(row) for row in rows if row.lines is not None)

    def logs(self, matches: Collection[MatchId]) -> tuple[MeetingLog, ...]:
        """The logs of these matches."""
        if not matches:
            return ()
        rows = self._read(_LOGS, {"matches": list(matches)})
        return tuple(_meeting([*lines]) for _, lines in groupby(rows, key=lambda row: row.match_id))

    def append(
        self,
        match: MatchId,
        kind: EntryKind,
        *,
        expected: int | None = None,
        game_no: int = 1,
        won_by: Winner | None = None,
        ours: int | None = None,
        theirs: int | None = None,
        server: int | None = None,
        we_serve: bool | None = None,
        detail: Mapping[str, Any] | None = None,
        voids: int | None = None,
        inbox: InboxId | None = None,
    ) -> EntryRow | AlreadyCounted:
        """The next line; lines are numbered from 1 without gaps.

        `expected` is the number that a scoring tap counts on: where the log is elsewhere,
        nothing is written. That makes two taps of one button one rally.
        """
        self._mark_part(Part.LOG)
        last = self._last_line(match)
        if expected is not None and expected != last + 1:
            return AlreadyCounted(expected=expected, last=last)
        row = EntryRow(
            n=last + 1,
            game_no=game_no,
            kind=kind,
            at=self._now,
            won_by=won_by,
            ours=ours,
            theirs=theirs,
            server=server,
            we_serve=we_serve,
            detail=None if detail is None else dict(detail),
            voids=voids,
        )
        self._insert(_APPEND, self._values(match, row, inbox))
        return row

    def append_all(
        self, match: MatchId, drafts: Sequence[EntryRow], *, inbox: InboxId | None = None
    ) -> tuple[EntryRow, ...]:
        """The next lines at once, numbered on from the log's end whatever number they bear."""
        self._mark_part(Part.LOG)
        last = self._last_line(match)
        rows = tuple(
            replace(one, n=last + at, at=self._now) for at, one in enumerate(drafts, start=1)
        )
        self._insert(_APPEND, *(self._values(match, row, inbox) for row in rows))
        return rows

    def _last_line(self, match: MatchId) -> int:
        """The log's length. LookupError for a match that is not of this book."""
        values = {"match": match, "version": self._stamp(Part.LOG)}
        found = self._read(_TOUCH_AND_LAST, values).scalar_one_or_none()
        if found is None:
            raise LookupError(f"no match {match}")
        self._touched.add(match)
        return int(found)

    def void(self, match: MatchId, n: int, *, inbox: InboxId | None = None) -> EntryRow:
        """Take line `n` out; voiding a void puts its line back. LookupError without line `n`."""
        self._mark_part(Part.LOG)
        game_no = self._read(_GAME_OF, {"match": match, "which": n}).scalar()
        if game_no is None:
            raise LookupError(f"match {match} has no entry {n}")
        row = self.append(match, EntryKind.VOID, game_no=game_no, voids=n, inbox=inbox)
        assert isinstance(row, EntryRow)
        return row

    def _values(self, match: MatchId, row: EntryRow, inbox: InboxId | None) -> dict[str, Any]:
        return {
            "match_id": match,
            "n": row.n,
            "game_no": row.game_no,
            "kind": row.kind.value,
            "at": row.at,
            "person_id": self._person,
            "inbox_id": inbox,
            "won_by": None if row.won_by is None else row.won_by.value,
            "ours": row.ours,
            "theirs": row.theirs,
            "server": row.server,
            "we_serve": row.we_serve,
            "detail": row.detail,
            "voids": row.voids,
        }


def _logged(row: Any) -> LoggedMatch:
    return LoggedMatch(
        match=MatchId(row.match_id),
        their_pair=PairRow(
            pair=PairId(row.pair_id), players=(PlayerId(row.player_a), PlayerId(row.player_b))
        ),
        format=row.format,
        made_at=Micros(row.made_at),
        lines=row.lines,
    )


def _meeting(rows: list[Any]) -> MeetingLog:
    return MeetingLog(
        match=MatchId(rows[0].match_id),
        format=rows[0].format,
        made_at=Micros(rows[0].made_at),
        entries=tuple(map(_entry_row, rows)),
    )


def _entry_row(row: Any) -> EntryRow:
    return EntryRow(
        n=row.n,
        game_no=row.game_no,
        kind=EntryKind(row.kind),
        at=Micros(row.at),
        won_by=None if row.won_by is None else Winner(row.won_by),
        ours=row.ours,
        theirs=row.theirs,
        server=row.server,
        we_serve=row.we_serve,
        detail=row.detail,
        voids=row.voids,
    )
