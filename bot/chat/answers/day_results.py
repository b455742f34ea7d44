"""All matches that were finished today, of every pair of ours: whom against, and how they ended.

The one that is on comes last, with how it stands.
"""

from __future__ import annotations

from collections.abc import Iterator

from bot.chat.answers.desk import Desk
from bot.chat.answers.listing import within_screen
from bot.chat.answers.plan_book import day_of
from bot.chat.answers.pool_order import pair_words
from bot.chat.answers.results import score_of
from bot.chat.answers.scoreboard import scoreboard
from bot.chat.match_log import OF_VIDEO, format_from_json
from bot.chat.match_results import MatchResult, result_of
from bot.chat.render import rows
from bot.chat.reply import Button, Reply
from bot.chat.wording import wording
from knowledge.dataclass import dataclass
from knowledge.vocabulary import PlayerId
from scouting_db.values import MatchId, MatchRow, MatchState

LOOKED_AT = 60
"""Newest matches looked through: more than a day has, those announced the evening before too."""

FEWEST = 2
"""Of one match alone the review tells more."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Played:
    ours: tuple[PlayerId, ...]
    theirs: tuple[PlayerId, ...]
    result: MatchResult


def day_told(desk: Desk) -> Reply | None:
    """The matches in the order they were told of; None where fewer than two ended today and none
    is on."""
    played = [*_played(desk)][::-1]
    match = desk.context.match
    now = None if match is None else _on_now(desk, match)
    if now is None and len(played) < FEWEST:
        return None
    won = sum(one.result.won is True for one in played)
    head = wording("day.head").format(won=won, lost=len(played) - won)
    several = len({one.ours for one in played}) > 1
    lines = [_line(desk, one, names_ours=several) for one in played]
    left_out = wording("day.left_out")
    if match is None or now is None:
        return Reply(text="\n".join(within_screen([head], lines, (), left_out=left_out)))
    on_now, taps = now
    text = "\n".join(within_screen([head], lines, on_now, left_out=left_out))
    return Reply(text=text, buttons=rows(taps), about=("match", match))


def _on_now(desk: Desk, match: MatchId) -> tuple[list[str], list[Button]] | None:
    """Whom the match that is on is against, how it stands, and the taps to count on."""
    row = desk.match_row()
    if row is None or not desk.log().is_begun:
        return None
    score, taps = scoreboard(desk, match)
    theirs = () if row.their_pair is None else row.their_pair.players
    return [wording("day.on").format(names=pair_words(desk, theirs)), score], taps


def _played(desk: Desk) -> Iterator[_Played]:
    """Newest first; a match counts for the day on which its last line was told."""
    today = day_of(desk, desk.now)
    for row in desk.book.matches(limit=LOOKED_AT):
        entries = desk.entries_of(row.match) if _is_over(row) else ()
        if not entries or day_of(desk, entries[-1].at) != today:
            continue
        result = result_of(entries, format_from_json(row.format))
        if result.won is not None:
            ours = () if row.our_pair is None else row.our_pair.players
            theirs = () if row.their_pair is None else row.their_pair.players
            yield _Played(ours=ours, theirs=theirs, result=result)


def _is_over(row: MatchRow) -> bool:
    return row.state is MatchState.OVER and not row.format.get(OF_VIDEO)


def _line(desk: Desk, one: _Played, *, names_ours: bool) -> str:
    key = "day.won" if one.result.won else "day.lost"
    told = (
        wording(key)
        .format(games=score_of(one.result.games), names=pair_words(desk, one.theirs))
        .replace(" ,", ",")
    )
    return (
        f"{pair_words(desk, one.ours)}: {told}" if names_ours else f"{told[:1].upper()}{told[1:]}"
    )
