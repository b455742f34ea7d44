"""What the notes and the logged rallies say of players, as evidence for the engine."""

from __future__ import annotations

from collections import Counter
from collections.abc import Collection, Iterable, Iterator, Mapping
from typing import Any

from sqlalchemy import String, and_, bindparam, case, cast, func, select, tuple_

from knowledge.evidence import Observation, RateCount, RateTally
from knowledge.vocabulary import EvidenceId, PlayerId, Rate, Seen, Tag, Trait, Value
from scouting_db.book.scope import Scope
from scouting_db.book.taken_out import taken_out
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
_OF_TRAITS = _ALL.where(observation.c.trait.in_(bindparam("which", expanding=True)))
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
        tuple_(rally_rate.c.match_id, rally_rate.c.n).not_in(taken_out()),
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

_COUNTED = and_(
    entry.c.kind == EntryKind.RALLY.value,
    tuple_(entry.c.match_id, entry.c.n).not_in(taken_out()),
)
_GAMES = (
    select(
        entry.c.match_id,
        entry.c.game_no,
        func.min(entry.c.n).label("first"),
        func.sum(case((_COUNTED, 1), else_=0)).label("rallies"),
    )
    .where(
        entry.c.book_id == bindparam("book"),
        entry.c.match_id.in_(bindparam("matches", expanding=True)),
    )
    .group_by(entry.c.match_id, entry.c.game_no)
    .order_by(entry.c.match_id, entry.c.game_no)
)
"""The games of a match: the first line, and how many rallies of it count."""

_COUNTS = (
    select(
        rally_rate.c.player_id,
        rally_rate.c.rate,
        func.sum(case((rally_rate.c.made, 1), else_=0)).label("made"),
        func.count().label("of"),
        match.c.made_at,
        book.c.zone,
    )
    .select_from(
        rally_rate.join(
            match,
            and_(
                match.c.book_id == rally_rate.c.book_id, match.c.match_id == rally_rate.c.match_id
            ),
        )
        .join(
            player,
            and_(
                player.c.book_id == rally_rate.c.book_id,
                player.c.player_id == rally_rate.c.player_id,
            ),
        )
        .join(book, book.c.book_id == rally_rate.c.book_id)
    )
    .where(
        rally_rate.c.book_id == bindparam("book"),
        match.c.state != MatchState.RUNNING.value,
        player.c.forgotten_at.is_(None),
        tuple_(rally_rate.c.match_id, rally_rate.c.n).not_in(taken_out()),
    )
    .group_by(rally_rate.c.player_id, rally_rate.c.rate, match.c.made_at, book.c.zone)
    .order_by(rally_rate.c.player_id, rally_rate.c.rate, match.c.made_at)
)
"""One row per player, rate and match, whoever they are."""


class Evidence(Scope):
    """Observations, and what rallies say of the players' rates."""

    def observations(self, players: Collection[PlayerId] | None = None) -> tuple[Observation, ...]:
        """What undeleted notes say of these players, or of everyone on the roster.

        Days are the book's own; the author is the person's number, or "" where nobody is
        known; the words are those that carry the claim, or the whole note.
        """
        if players is None:
            return tuple(_observations(self._read(_ALL)))
        return tuple(_observations(self._read(_OF_PLAYERS, {"players": list(players)})))

    def observations_of(self, *traits: Trait) -> tuple[Observation, ...]:
        """What undeleted notes say of these traits, of everyone on the roster."""
        which = [trait.value for trait in traits]
        return tuple(_observations(self._read(_OF_TRAITS, {"which": which})))

    def rate_counts(self) -> tuple[RateCount, ...]:
        """Everybody's counts from the unvoided rallies of matches that are not running."""
        return tuple(map(_rate_count, self._read(_COUNTS)))

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
        matches = sorted({row.match_id for row in rows})
        running = {row.match_id for row in rows if row.state == MatchState.RUNNING.value}
        games = self._read(_GAMES, {"matches": matches}).all()
        last = {row.match_id: row for row in games}
        open_from = {one: last[one].first for one in running - {between_games}}
        return tuple(_tallies(rows, open_from, _logged(games, open_from)))


def _logged(games: Iterable[Any], open_from: Mapping[int, int]) -> Mapping[tuple[int, bool], int]:
    """Rallies that count, by match and whether their game is settled."""
    found: Counter[tuple[int, bool]] = Counter()
    for row in games:
        is_open = row.match_id in open_from and row.first >= open_from[row.match_id]
        found[row.match_id, not is_open] += row.rallies
    return found


def _tallies(
    rows: Iterable[Any],
    open_from: Mapping[int, int],
    logged: Mapping[tuple[int, bool], int],
) -> Iterator[RateTally]:
    found: dict[tuple[Any, ...], list[list[EvidenceId]]] = {}
    for match_id, player_id, rate, made, rallies, _, made_at, zone in rows:
        numbers: list[str] = rallies.split(",")
        since = open_from.get(match_id)
        groups = found.setdefault((match_id, player_id, rate, made_at, zone), [[], [], [], []])
        start = f"rally:{match_id}:"
        settled = numbers if since is None else [n for n in numbers if int(n) < since]
        groups[made].extend(_ids(start, settled))
        if len(settled) < len(numbers):
            groups[2 + made].extend(_ids(start, [n for n in numbers if n not in settled]))
    for (match_id, who, rate, made_at, zone), groups in found.items():
        for is_settled, (missed, made) in ((True, groups[:2]), (False, groups[2:])):
            if made or missed:
                yield RateTally(
                    player=PlayerId(who),
                    rate=Rate(rate),
                    day=local_day(Micros(made_at), zone),
                    made=tuple(made),
                    missed=tuple(missed),
                    is_settled=is_settled,
                    logged=logged[match_id, is_settled],
                )


def _rate_count(row: Any) -> RateCount:
    return RateCount(
        player=PlayerId(row.player_id),
        rate=Rate(row.rate),
        day=local_day(Micros(row.made_at), row.zone),
        made=int(row.made),
        missed=int(row.of) - int(row.made),
    )


def _ids(start: str, numbers: Iterable[str]) -> list[EvidenceId]:
    return [start + n for n in numbers]  # type: ignore[misc]  # an EvidenceId is a str


_TRAITS = {trait.value: trait for trait in Trait}
_VALUES = {value.value: value for value in Value}
_SEEN = {seen.value: seen for seen in Seen}


def _observations(rows: Iterable[Any]) -> Iterator[Observation]:
    """Thousands of rows are read in one go: unpacked by place, each day worked out once."""
    days: dict[tuple[int, str], int] = {}
    for (
        note_id, n, who, trait, value, denied, weight, seen, tag, start, end, author, at, text, zone
    ) in rows:  # fmt: skip
        day = days.get((at, zone))
        if day is None:
            day = days[at, zone] = local_day(Micros(at), zone)
        yield Observation(
            evidence=EvidenceId(f"note:{note_id}:{n}"),
            player=who,
            trait=_TRAITS[trait],
            value=_VALUES[value],
            weight=weight,
            seen=_SEEN[seen],
            author="" if author is None else str(author),
            day=day,
            words=text if start is None else text[start:end],
            tag=None if tag is None else Tag(tag),
            denied=denied,
        )
