"""Whether the logs of matches fold, and to what the matches say of themselves."""

from __future__ import annotations

from collections.abc import Iterator

from sqlalchemy import Connection, select

from bot.chat.match_log import format_from_json, read_log
from scouting_db import tables
from scouting_db.book import Book
from scouting_db.values import BookId, MatchId, MatchState, Micros


def log_faults(connection: Connection) -> tuple[str, ...]:
    """A line for each match whose log cannot be folded or contradicts its state.

    A score is never stored: it is the fold. What is stored is whether a match has begun and
    whether it is over, and both follow from the log.
    """
    match = tables.match
    numbers = connection.execute(
        select(match.c.book_id, match.c.match_id).order_by(match.c.book_id, match.c.match_id)
    ).all()
    return tuple(
        fault
        for book, number in numbers
        for fault in _faults_of(connection, BookId(book), MatchId(number))
    )


def _faults_of(connection: Connection, book: BookId, number: MatchId) -> Iterator[str]:
    door = Book(connection, book, person=None, now=Micros(0))
    row = door.match(number)
    if row is None:
        return
    where = f"book {book}, match {number}"
    try:
        log = read_log(door.entries(number), format_from_json(row.format))
    except (ValueError, LookupError, TypeError, AssertionError) as error:
        yield f"{where}: its log cannot be read ({type(error).__name__}: {error})"
        return
    if log.is_begun and row.state is MatchState.ANNOUNCED:
        yield f"{where}: its log has begun, but it is stored as only announced"
    if log.match.we_won is not None and row.state is MatchState.RUNNING:
        yield f"{where}: its log ends the match, but it is stored as running"
