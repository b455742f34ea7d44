"""When, where and against whom we play next, as the book has it."""

from __future__ import annotations

from bot.chat.answers.desk import Desk
from bot.chat.answers.matches import plan_button
from bot.chat.answers.no_match import no_match
from bot.chat.answers.reminder_times import day_words, title_of, zone_of_book
from bot.chat.render import rows
from bot.chat.reply import Reply
from bot.chat.start_times import wall_of
from bot.chat.wording import wording
from scouting_db.values import MatchRow, MatchState, Micros

MOST_SHOWN = 4
_HOUR = 3_600_000_000


def when_we_play(desk: Desk) -> Reply:
    """The match that is on or has no time, then the others by theirs; or that none is announced."""
    current = desk.match_row()
    to_come = desk.book.matches_to_come(since=Micros(desk.now - _HOUR))
    shown = list(to_come)
    if current is not None and current.state is not MatchState.OVER:
        others = [row for row in to_come if row.match != current.match]
        is_timed = len(others) < len(to_come) and current.state is MatchState.ANNOUNCED
        shown = shown if is_timed else [current, *others]
    if not shown:
        return no_match(desk)
    lines = [_line(desk, row) for row in shown[:MOST_SHOWN]]
    if len(shown) > MOST_SHOWN:
        lines.append(wording("behind.more").format(count=len(shown) - MOST_SHOWN))
    return Reply(text="\n".join(lines), buttons=rows([plan_button()]))


def _line(desk: Desk, row: MatchRow) -> str:
    """ "Okafor/Lindqvist, 10:40 tomorrow, court 7." """
    zone = zone_of_book(desk)
    when = wording("match.no_time")
    if row.starts_at is not None:
        at = f"{wall_of(row.starts_at, zone):%H:%M}"
        when = wording("match.at").format(at=at) + day_words(row.starts_at, desk.now, zone)
    court = "" if row.court is None else wording("match.court").format(court=row.court)
    return wording("match.coming").format(match=title_of(desk, row), when=when, court=court)
