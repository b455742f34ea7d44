"""Rallies of a video that were told live before: recognised, so that each counts once.

A line is of a told rally if the same side won it and its score is that rally's call, or, where it
has no score, if it says the same words and how it ended. Each told rally answers for one line.
"""

from __future__ import annotations

from collections.abc import Sequence
from datetime import timedelta

from bot.chat.answers.desk import Desk
from bot.chat.answers.video_lines import ReadLine
from bot.chat.match_log import OF_VIDEO, format_from_json, read_log, unvoided
from bot.chat.said import RallyDetails
from knowledge.dataclass import dataclass
from knowledge.game import ScoreCall
from knowledge.regex import regex
from knowledge.vocabulary import PlayerId
from scouting_db.values import EntryKind, MatchRow

TOLD_WITHIN = timedelta(days=14)
"""How long after a match its video is looked at. Our own choice."""

_LETTERS = regex(r"[^\w]+")


@dataclass(frozen=True, slots=True, kw_only=True)
class _Told:
    """A rally told live: who won it, its score as called, its words."""

    won_by_us: bool
    call: ScoreCall
    words: str


def told_before(
    desk: Desk, theirs: Sequence[PlayerId], read: Sequence[ReadLine]
) -> tuple[ReadLine, ...]:
    """Those of the lines that are rallies which a match against these already tells of."""
    left = [one for row in _matches(desk, theirs) for one in _told_in(desk, row)]
    found = []
    for line in read:
        same = next((one for one in left if _is_same(line, one)), None)
        if same is not None:
            left.remove(same)
            found.append(line)
    return tuple(found)


def _matches(desk: Desk, theirs: Sequence[PlayerId]) -> Sequence[MatchRow]:
    pair = desk.view.pair_id(theirs) if len(theirs) == len(("a", "pair")) else None
    if pair is None:
        return ()
    since = desk.now - int(TOLD_WITHIN.total_seconds() * 1e6)
    rows = desk.book.matches_against(pair)
    return [row for row in rows if row.made_at >= since and not row.format.get(OF_VIDEO)]


def _told_in(desk: Desk, row: MatchRow) -> list[_Told]:
    words = {one.n: one.words for one in desk.book.rallies(row.match) if one.words}
    if not words:
        return []
    entries = desk.book.entries(row.match)
    rallies = [one for one in unvoided(entries) if one.kind is EntryKind.RALLY]
    played = read_log(entries, format_from_json(row.format)).played
    return [
        _Told(won_by_us=rally.won_by_us, call=rally.before.call, words=_bare(words[entry.n]))
        for entry, rally in zip(rallies, played, strict=False)
        if entry.n in words
    ]


def _is_same(line: ReadLine, told: _Told) -> bool:
    rally, call = line.rally, line.line.call
    if rally is None or rally.won_by_us is not told.won_by_us:
        return False
    if call is not None:
        return _is_call(call, told.call)
    return rally.details != RallyDetails() and _bare(line.line.words) == told.words


def _is_call(typed: tuple[int, ...], call: ScoreCall) -> bool:
    """As called; without the server's number where nobody typed it."""
    points, server = typed[:2], typed[2:]
    return points == (call.serving, call.receiving) and (not server or server == (call.server,))


def _bare(words: str) -> str:
    return _LETTERS.sub(" ", words.casefold()).strip()
