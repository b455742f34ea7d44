"""How a match ended: told in words, or as its log comes to."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.match_log import MatchLog, read_log, unvoided
from knowledge.dataclass import dataclass
from knowledge.game import GameFormat
from scouting_db.values import EntryKind, EntryRow, Winner

Games = tuple[tuple[int, int], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class MatchResult:
    """Who won and the games, ours first; of a match told only in games the tally stands there.

    `won` is None while it is not over.
    """

    won: bool | None
    games: Games = ()
    is_tally: bool = False


def result_of(entries: Sequence[EntryRow], format: GameFormat) -> MatchResult:
    """A result told in words counts before what was logged of the match."""
    told = [one for one in unvoided(entries) if one.kind is EntryKind.RESULT]
    log = read_log(entries, format)
    if not told:
        return MatchResult(won=log.match.we_won, games=log.games)
    detail = told[-1].detail or {}
    games, tally = detail.get("games", ()), detail.get("tally")
    said = tuple((ours, theirs) for ours, theirs in games or ([tally] if tally else ()))
    return MatchResult(
        won=told[-1].won_by is Winner.US,
        games=said or finished_games(log),
        is_tally=bool(tally) and not games,
    )


def finished_games(log: MatchLog) -> Games:
    """The games that are over."""
    return log.games if log.match.game.is_over else log.finished
