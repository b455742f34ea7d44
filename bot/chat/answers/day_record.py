"""Our record of the day from the book: how many were won and lost, against whom, by what games."""

from __future__ import annotations

from bot.chat.answers.desk import Desk
from bot.chat.answers.last_meeting import last_meeting_told
from bot.chat.answers.names import by_pair, settled
from bot.chat.answers.plan_book import day_of, is_meeting
from bot.chat.answers.results import score_of, told_result
from bot.chat.answers.review import review
from bot.chat.answers.reviewed import reviewed
from bot.chat.reply import Reply
from bot.chat.said import BookSaid
from bot.chat.wording import wording
from knowledge.dataclass import dataclass

LOOKED_AT = 60
"""Newest matches looked through: more are not played in a day."""

MOST_SHOWN = 6
FEWEST = 2
"""A day of one match is told by that match's own review."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Played:
    won: bool
    games: str
    names: str


def day_record(desk: Desk) -> Reply:
    """The matches that were won and lost today; of fewer than two the last match alone."""
    played = _played_today(desk)
    is_on = desk.context.match is not None
    if len(played) + is_on < FEWEST or not played:
        return review(desk)
    won = sum(one.won for one in played)
    lines = [wording("match.day_record").format(won=won, lost=len(played) - won)]
    lines += [
        wording("match.day_won" if one.won else "match.day_lost")
        .format(games=one.games, names=one.names)
        .replace("  ", " ")
        for one in played[:MOST_SHOWN]
    ]
    return Reply(text="\n".join(lines))


def _played_today(desk: Desk) -> list[_Played]:
    """Newest first; a match whose result nobody told counts for neither side."""
    today, found = day_of(desk, desk.now), []
    for row in desk.book.matches(limit=LOOKED_AT):
        if not is_meeting(desk, row) or day_of(desk, row.made_at) != today:
            continue
        result = told_result(desk, row)
        if result.won is None:
            continue
        theirs = () if row.their_pair is None else row.their_pair.players
        names = "/".join(desk.names(theirs)) or wording("match.day_nobody")
        found.append(_Played(won=result.won, games=score_of(result.games), names=names))
    return found


def reviewed_or_met(desk: Desk, said: BookSaid) -> Reply:
    """The review of the last match; of another one against whoever is named, how it ended."""
    players = settled(by_pair(desk, said.mentions))
    match = reviewed(desk)
    if not said.mentions or players == () or (match and players and {*players} <= {*match.theirs}):
        return review(desk)
    return last_meeting_told(desk, said)
