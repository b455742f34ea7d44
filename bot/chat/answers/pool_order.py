"""The order of a pool: which of its matches is on, and which comes next."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

from bot.chat.answers.desk import Desk
from bot.chat.match_log import format_from_json, format_to_json
from bot.chat.said import Certainty, ResultSaid
from bot.chat.wording import wording
from knowledge.dataclass import dataclass
from knowledge.game import GameFormat
from knowledge.vocabulary import Mode, PlayerId
from scouting_db.values import EventId, MatchRow, MatchState, Micros

POOL = "Pool"
"""What the event of a pool is called; its letter follows where one was told."""

POOL_LASTS = timedelta(hours=48)
"""How long a pool is the one that "next" means: told the evening before, played the day after.
Our own choice."""

ASSUMED = "assumed"
"""Marks the format of a match of which nobody said how it is played."""

_TARGETS = (11, 15, 21)
"""What pool games are played to (2025 edition, 12: games to 11, 15 or 21)."""

_BEST_OF = (1, 3)


@dataclass(frozen=True, slots=True, kw_only=True)
class Pool:
    """A pool of ours and its matches in order."""

    event: EventId
    matches: tuple[MatchRow, ...]

    @property
    def left(self) -> tuple[MatchRow, ...]:
        """Those not over, the one under way first."""
        left = [row for row in self.matches if row.state is not MatchState.OVER]
        return tuple(sorted(left, key=lambda row: row.state is not MatchState.RUNNING))


def pool_of(desk: Desk) -> Pool | None:
    """This chat's pool, else our pair's newest one; None once its days are over."""
    event = desk.context.pool
    if event is None:
        pair = desk.view.pair_id(desk.ours)
        row = None if pair is None else desk.book.newest_event(pair, begins=POOL)
        event = None if row is None else row.event
    matches = () if event is None else desk.book.matches_in(event)
    if event is None or not matches or _is_past(desk, matches):
        return None
    return Pool(event=event, matches=matches)


def _is_past(desk: Desk, matches: Sequence[MatchRow]) -> bool:
    newest = max(row.starts_at or row.made_at for row in matches)
    return desk.now - newest > int(POOL_LASTS.total_seconds() * 1e6)


def opponents_of(row: MatchRow) -> tuple[PlayerId, ...]:
    return () if row.their_pair is None else row.their_pair.players


def take_up(desk: Desk, row: MatchRow) -> None:
    """From now on the match is the current one, and "they" are its pair."""
    theirs = opponents_of(row)
    desk.context = replace(
        desk.context.after_result().looking_at(*theirs),
        match=row.match,
        ours=desk.ours,
        theirs=theirs,
        mode=Mode.OPEN,
        pool=row.event if row.event is not None else desk.context.pool,
    )
    desk.match_changed()


def move_on(desk: Desk, over: MatchRow) -> list[str]:
    """After a match of a pool the next one is on; what to say of it, nothing for other matches."""
    pool = None if over.event is None else pool_of(desk)
    if pool is None or over.event != pool.event:
        return []
    desk.context = replace(desk.context, pool=pool.event)
    left = [row for row in pool.left if row.match != over.match]
    if not left:
        return [wording("pool.all_played")]
    take_up(desk, left[0])
    return [wording("pool.then").format(who=match_words(desk, left[0]))]


def moved_on_from(desk: Desk, over: int) -> bool:
    """Whether the current match only is so because that one of the same pool was over."""
    now = desk.match_row()
    before = next((row for row in _in_pool(desk) if row.match == over), None)
    return now is not None and before is not None and not desk.log().is_begun


def _in_pool(desk: Desk) -> tuple[MatchRow, ...]:
    pool = desk.context.pool
    return () if pool is None else desk.book.matches_in(pool)


def pool_match_against(desk: Desk, theirs: Collection[PlayerId]) -> MatchRow | None:
    """The match of this chat's pool with that pair, if it is still to play and not begun."""
    if desk.context.pool is None or len(set(theirs)) != len(("a", "pair")):
        return None
    open_ones = [row for row in _in_pool(desk) if row.state is MatchState.ANNOUNCED]
    return next((row for row in open_ones if set(opponents_of(row)) == set(theirs)), None)


def pick_in_pool(desk: Desk, said: ResultSaid) -> None:
    """The match that a result is of: the current one, unless it names another pair of the pool."""
    sure = [one.players[0] for one in said.mentions if one.certainty is Certainty.SURE]
    named = {player for player in sure if player not in desk.ours}
    current = desk.context.match
    of_pool_alone = not named and _is_of_the_pool_alone(desk, said.games)
    if current is not None and not of_pool_alone:
        is_of_current = not named or named <= set(desk.context.theirs)
        if is_of_current or desk.log().is_begun:
            return
    pool = pool_of(desk)
    left = () if pool is None else pool.left
    fitting = [row for row in left if not named or named <= set(opponents_of(row))]
    if fitting and fitting[0].match != current:
        take_up(desk, fitting[0])


def _is_of_the_pool_alone(desk: Desk, games: Sequence[tuple[int, int]]) -> bool:
    """Whether no match like the one under way can end so, but the pool's next can."""
    now, pool = desk.match_row(), pool_of(desk)
    if now is None or pool is None or not pool.left or now.event == pool.event or not games:
        return False
    format = desk.format()
    if len(games) < format.games_needed and all(
        _is_exact(max(one), min(one), format) for one in games
    ):
        return False  # a game of the match that is on, the first of them
    return not _fits(games, format) and _fits(games, format_of(pool.left[0]))


def settle_assumed_format(desk: Desk, games: Sequence[tuple[int, int]]) -> None:
    """Where nobody said how the pool is played, the first result that fits no other way says it."""
    row = desk.match_row()
    if row is None or not row.format.get(ASSUMED) or not games:
        return
    format = desk.format()
    if _fits(games, format):
        return
    tried = (
        replace(format, target=target, best_of=best_of)
        for best_of in _BEST_OF
        for target in _TARGETS
    )
    found = next((one for one in tried if _fits(games, one)), None)
    if found is not None:
        desk.book.replace_match(replace(row, format=format_to_json(found) | {ASSUMED: True}))
        desk.match_changed()


def _fits(games: Sequence[tuple[int, int]], format: GameFormat) -> bool:
    """Whether such games are a whole match so played."""
    won = sum(ours > theirs for ours, theirs in games)
    decides = max(won, len(games) - won) == format.games_needed
    return decides and all(_is_exact(max(one), min(one), format) for one in games)


def _is_exact(high: int, low: int, format: GameFormat) -> bool:
    """Won, and not earlier: 15-11 is no game to 11, since 11-9 or 13-11 had ended it."""
    if not format.is_won(high, low):
        return False
    return high == format.target or (high > format.target and high - low == format.win_by)


def match_words(desk: Desk, row: MatchRow) -> str:
    """ "Okafor/Lindqvist, 10:40, court 7"."""
    parts = [pair_words(desk, opponents_of(row))]
    if row.starts_at is not None:
        parts.append(clock_of(desk, row.starts_at))
    if row.court:
        parts.append(wording("pool.court").format(court=row.court))
    return " ".join(parts)


def pair_words(desk: Desk, players: Sequence[PlayerId]) -> str:
    return "/".join(desk.names(players)) or wording("pool.nobody")


def clock_of(desk: Desk, at: Micros) -> str:
    """The time of day in the book's zone."""
    zone = ZoneInfo(desk.book.about().zone)
    return f"{datetime.fromtimestamp(at / 1e6, UTC).astimezone(zone):%H:%M}"


def format_of(row: MatchRow) -> GameFormat:
    return format_from_json(row.format)
