"""The current match's log with how each rally ended, as far as somebody told it."""

from __future__ import annotations

from bot.chat.answers.desk import Desk
from bot.chat.match_log import MatchLog, read_log
from knowledge.rally_ends import end_tag
from scouting_db.values import MatchId, Part, Winner


def told_log(desk: Desk) -> MatchLog:
    """As `Desk.log`, with tags; read apart, since a tapped rally does not need them."""
    match = desk.context.match
    if match is None:
        return desk.log()
    return desk.recall(("told log", match), lambda: _read(desk, match), Part.MATCHES, Part.LOG)


def _read(desk: Desk, match: MatchId) -> MatchLog:
    told = {one.n: one for one in desk.book.rallies(match)}
    tags = {
        entry.n: (
            end_tag(won_by_us=entry.won_by is Winner.US, ending=one.ending, stroke=one.stroke),
        )
        for entry in desk.entries()
        if (one := told.get(entry.n)) is not None and one.ending is not None
    }
    return read_log(desk.entries(), desk.format(), tags=tags)
