"""What logged rallies say of the players' rates, by match, so that few need be read again."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from itertools import groupby
from typing import Any

from sqlalchemy import String, and_, bindparam, case, cast, func, select, tuple_

from knowledge.evidence import RateTally
from knowledge.vocabulary import EvidenceId, PlayerId, Rate
from scouting_db.book.scope import Scope
from scouting_db.book.taken_out import taken_out
from scouting_db.match_rates import MatchRates
from scouting_db.tables import book, entry, match, player, rally_rate
from scouting_db.values import EntryKind, MatchId, MatchState, Micros
from scouting_db.zones import local_day

FROM_THE_START = -1
"""Earlier than every version, also than that of rows which were put in whole."""

_CHANGED_SINCE = (match.c.book_id == bindparam("book"), match.c.changed > bindparam("since"))
_CHANGED = select(match.c.match_id).where(*_CHANGED_SINCE)
_COUNTED = and_(
    entry.c.kind == EntryKind.RALLY.value,
    tuple_(entry.c.match_id, entry.c.n).not_in(taken_out(of=_CHANGED)),
)
_GAMES = (
    select(
        match.c.match_id,
        match.c.state,
        match.c.made_at,
        book.c.zone,
        entry.c.game_no,
        func.min(entry.c.n).label("first"),
        func.sum(case((_COUNTED, 1), else_=0)).label("rallies"),
    )
    .select_from(
        match.join(book, book.c.book_id == match.c.book_id).outerjoin(
            entry, and_(entry.c.book_id == match.c.book_id, entry.c.match_id == match.c.match_id)
        )
    )
    .where(*_CHANGED_SINCE)
    .group_by(match.c.match_id, match.c.state, match.c.made_at, book.c.zone, entry.c.game_no)
    .order_by(match.c.match_id, entry.c.game_no)
)
"""The games of every match: the first line, and how many rallies of it count."""

_GAMES_OF_RATED = _GAMES.where(
    select(rally_rate.c.n)
    .where(rally_rate.c.book_id == match.c.book_id, rally_rate.c.match_id == match.c.match_id)
    .exists()
)

_RATES = (
    select(
        rally_rate.c.match_id,
        rally_rate.c.player_id,
        rally_rate.c.rate,
        rally_rate.c.made,
        func.aggregate_strings(cast(rally_rate.c.n, String), ",").label("rallies"),
    )
    .select_from(
        rally_rate.join(
            player,
            and_(
                player.c.book_id == rally_rate.c.book_id,
                player.c.player_id == rally_rate.c.player_id,
            ),
        )
    )
    .where(
        rally_rate.c.book_id == bindparam("book"),
        rally_rate.c.match_id.in_(_CHANGED),
        player.c.forgotten_at.is_(None),
        tuple_(rally_rate.c.match_id, rally_rate.c.n).not_in(taken_out(of=_CHANGED)),
    )
    .group_by(rally_rate.c.match_id, rally_rate.c.player_id, rally_rate.c.rate, rally_rate.c.made)
    .order_by(rally_rate.c.match_id, rally_rate.c.player_id, rally_rate.c.rate, rally_rate.c.made)
)
"""One row per match, player, rate and whether it was made: thousands of rallies are few rows."""


class Rates(Scope):
    """What rallies say of the players' rates."""

    def match_rates(self, since: int = FROM_THE_START) -> tuple[MatchRates, ...]:
        """Every match that a later version than `since` changed, with what it says now.

        From the start, those that say something.
        """
        statement = _GAMES_OF_RATED if since == FROM_THE_START else _GAMES
        games = self._read(statement, {"since": since}).all()
        if not games:
            return ()
        told: dict[int, list[Any]] = {}
        for row in self._read(_RATES, {"since": since}):
            told.setdefault(row.match_id, []).append(row)
        return tuple(
            _of_match([*lines], told.get(number, ()))
            for number, lines in groupby(games, key=lambda row: row.match_id)
        )


def _of_match(games: list[Any], told: Iterable[Any]) -> MatchRates:
    """The games are in order; of a running match the last one is open."""
    about = games[0]
    is_running = about.state == MatchState.RUNNING.value
    open_from = games[-1].first if is_running else None
    is_open = [open_from is not None and row.first >= open_from for row in games if row.first]
    rallies = [row.rallies for row in games if row.first]
    open_rallies = sum(n for n, each in zip(rallies, is_open, strict=True) if each)
    logged = {False: open_rallies, True: sum(rallies) - open_rallies}
    day = local_day(Micros(about.made_at), about.zone)
    return MatchRates(
        match=MatchId(about.match_id),
        is_running=is_running,
        tallies=tuple(_tallies(told, open_from, logged, day)),
        settled_rallies=logged[True],
        open_rallies=logged[False],
    )


def _tallies(
    rows: Iterable[Any], open_from: int | None, logged: Mapping[bool, int], day: int
) -> Iterator[RateTally]:
    """Per player and rate one tally of the games that are over, and one of the open game."""
    found: dict[tuple[int, str], list[list[EvidenceId]]] = {}
    for match_id, player_id, rate, made, rallies in rows:
        groups = found.setdefault((player_id, rate), [[], [], [], []])
        numbers = sorted(map(int, rallies.split(",")))
        settled = [n for n in numbers if open_from is None or n < open_from]
        groups[made] += _ids(match_id, settled)
        groups[2 + made] += _ids(match_id, numbers[len(settled) :])
    for (who, rate), groups in found.items():
        for is_settled, (missed, made) in ((True, groups[:2]), (False, groups[2:])):
            if made or missed:
                yield RateTally(
                    player=PlayerId(who),
                    rate=Rate(rate),
                    day=day,
                    made=tuple(made),
                    missed=tuple(missed),
                    is_settled=is_settled,
                    logged=logged[is_settled],
                )


def _ids(match_id: int, numbers: Iterable[int]) -> list[EvidenceId]:
    return [EvidenceId(f"rally:{match_id}:{n}") for n in numbers]
