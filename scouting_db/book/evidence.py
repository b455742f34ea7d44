"""What the notes and the logged rallies say of players, as evidence for the engine."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection, Iterable, Iterator, Mapping
from typing import Any

from sqlalchemy import String, and_, bindparam, cast, func, select

from knowledge.evidence import Observation, RateTally
from knowledge.vocabulary import EvidenceId, PlayerId, Rate, Seen, Tag, Trait, Value
from scouting_db.book.scope import Scope
from scouting_db.tables import book, entry, match, note, observation, player, rally_rate
from scouting_db.values import EntryKind, MatchId, MatchState, Micros
from scouting_db.zones import local_day

_ALL = (
    select(
        observation.c.note_id,
        observation.c.n,
        observation.c.player_id,
        observation.c.trait,
        observation.c.value,
        observation.c.denied,
        observation.c.weight,
        observation.c.seen,
        observation.c.tag,
        observation.c.span_from,
        observation.c.span_to,
        note.c.author,
        note.c.at,
        note.c.text,
        book.c.zone,
    )
    .select_from(
        observation.join(
            note,
            and_(note.c.book_id == observation.c.book_id, note.c.note_id == observation.c.note_id),
        )
        .join(
            player,
            and_(
                player.c.book_id == observation.c.book_id,
                player.c.player_id == observation.c.player_id,
            ),
        )
        .join(book, book.c.book_id == observation.c.book_id)
    )
    .where(
        observation.c.book_id == bindparam("book"),
        note.c.deleted_at.is_(None),
        player.c.forgotten_at.is_(None),
    )
    .order_by(observation.c.note_id, observation.c.n)
)
_OF_PLAYERS = _ALL.where(observation.c.player_id.in_(bindparam("players", expanding=True)))
_RATES = (
    select(
        rally_rate.c.match_id,
        rally_rate.c.player_id,
        rally_rate.c.rate,
        rally_rate.c.made,
        func.aggregate_strings(cast(rally_rate.c.n, String), ",").label("rallies"),
        match.c.state,
        match.c.made_at,
        book.c.zone,
    )
    .select_from(
        rally_rate.join(
            match,
            and_(
                match.c.book_id == rally_rate.c.book_id, match.c.match_id == rally_rate.c.match_id
            ),
        ).join(book, book.c.book_id == rally_rate.c.book_id)
    )
    .where(
        rally_rate.c.book_id == bindparam("book"),
        rally_rate.c.player_id.in_(bindparam("players", expanding=True)),
    )
    .group_by(
        rally_rate.c.match_id,
        rally_rate.c.player_id,
        rally_rate.c.rate,
        rally_rate.c.made,
        match.c.state,
        match.c.made_at,
        book.c.zone,
    )
    .order_by(rally_rate.c.match_id, rally_rate.c.player_id, rally_rate.c.rate)
)
"""One row per match, player, rate and whether it was made: thousands of rallies are few rows."""

_VOIDS = (
    select(entry.c.match_id, entry.c.n, entry.c.voids)
    .where(
        entry.c.book_id == bindparam("book"),
        entry.c.match_id.in_(bindparam("matches", expanding=True)),
        entry.c.kind == EntryKind.VOID.value,
    )
    .order_by(entry.c.match_id, entry.c.n.desc())
)
_LAST_GAME = (
    select(entry.c.match_id, func.max(entry.c.game_no).label("game_no"))
    .where(
        entry.c.book_id == bindparam("book"),
        entry.c.match_id.in_(bindparam("matches", expanding=True)),
    )
    .group_by(entry.c.match_id)
    .subquery()
)
_OPEN_FROM = (
    select(entry.c.match_id, func.min(entry.c.n).label("n"))
    .join_from(
        entry,
        _LAST_GAME,
        and_(entry.c.match_id == _LAST_GAME.c.match_id, entry.c.game_no == _LAST_GAME.c.game_no),
    )
    .where(entry.c.book_id == bindparam("book"))
    .group_by(entry.c.match_id)
)
"""The first line of the last game of running matches."""


class Evidence(Scope):
    """Observations, and what rallies say of the players' rates."""

    def observations(self, players: Collection[PlayerId] | None = None) -> tuple[Observation, ...]:
        """What undeleted notes say of these players, or of everyone on the roster.

        Days are the book's own; the author is the person's number, or "" where nobody is
        known; the words are those that carry the claim, or the whole note.
        """
        if players is None:
            return tuple(map(_observation, self._read(_ALL)))
        return tuple(map(_observation, self._read(_OF_PLAYERS, {"players": list(players)})))

    def rate_tallies(
        self, players: Collection[PlayerId], *, between_games: MatchId | None = None
    ) -> tuple[RateTally, ...]:
        """What unvoided rallies say of these players' rates, one tally per match and rate.

        Rallies of the last game of a running match stand in tallies of their own, not settled,
        unless the match is `between_games`.
        """
        rows = self._read(_RATES, {"players": list(players)}).all()
        if not rows:
            return ()
        dead = self._voided(sorted({row.match_id for row in rows}))
        running = {row.match_id for row in rows if row.state == MatchState.RUNNING.value}
        open_from = self._open_from(sorted(running - {between_games}))
        return tuple(_tallies(rows, dead, open_from))

    def _voided(self, matches: list[int]) -> Mapping[int, set[int]]:
        """Lines that do not count: a void takes its target out, a void of a void puts it back."""
        dead: dict[int, set[int]] = defaultdict(set)
        for row in self._read(_VOIDS, {"matches": matches}):
            if row.n not in dead[row.match_id]:
                dead[row.match_id].add(row.voids)
        return dead

    def _open_from(self, matches: list[int]) -> Mapping[int, int]:
        if not matches:
            return {}
        return {row.match_id: row.n for row in self._read(_OPEN_FROM, {"matches": matches})}


def _tallies(
    rows: Iterable[Any], dead: Mapping[int, set[int]], open_from: Mapping[int, int]
) -> Iterator[RateTally]:
    found: dict[tuple[Any, ...], dict[tuple[bool, bool], list[EvidenceId]]] = {}
    for row in rows:
        key = (row.match_id, row.player_id, row.rate, row.made_at, row.zone)
        counted = [int(n) for n in row.rallies.split(",")]
        out = dead.get(row.match_id, ())
        since = open_from.get(row.match_id)
        groups = found.setdefault(key, defaultdict(list))
        for n in sorted(counted):
            if n not in out:
                is_settled = since is None or n < since
                groups[is_settled, row.made].append(EvidenceId(f"rally:{row.match_id}:{n}"))
    for (_, who, rate, made_at, zone), groups in found.items():
        for is_settled in (True, False):
            made, missed = groups.get((is_settled, True), []), groups.get((is_settled, False), [])
            if made or missed:
                yield RateTally(
                    player=PlayerId(who),
                    rate=Rate(rate),
                    day=local_day(Micros(made_at), zone),
                    made=tuple(made),
                    missed=tuple(missed),
                    is_settled=is_settled,
                )


def _observation(row: Any) -> Observation:
    return Observation(
        evidence=EvidenceId(f"note:{row.note_id}:{row.n}"),
        player=PlayerId(row.player_id),
        trait=Trait(row.trait),
        value=Value(row.value),
        weight=row.weight,
        seen=Seen(row.seen),
        author="" if row.author is None else str(row.author),
        day=local_day(Micros(row.at), row.zone),
        words=row.text if row.span_from is None else row.text[row.span_from : row.span_to],
        tag=None if row.tag is None else Tag(row.tag),
        denied=row.denied,
    )
