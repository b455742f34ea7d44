"""The second door: everything of one book, every statement scoped by its id.

`Book(connection, book_id, person=..., now=...)` never commits; the turn does. Its first write
takes the book's next version, which locks the book until the turn ends and numbers new rows.
"""

from __future__ import annotations

from scouting_db.book.changes import Changes
from scouting_db.book.log import MatchLog
from scouting_db.book.matches import Matches
from scouting_db.book.notes import Notes
from scouting_db.book.pairs import Pairs
from scouting_db.book.plans import Plans
from scouting_db.book.players import Players


class Book(Players, Pairs, Notes, Matches, MatchLog, Plans, Changes):
    """One team's scouting data, for one person and one moment."""
