"""The second door: everything of one book, every statement scoped by its id.

`Book(connection, book_id, person=..., now=...)` never commits; the turn does. Its first write
takes the book's next version, which locks the book until the turn ends and numbers new rows.
Make one per turn (or per savepoint): after a rollback its version is void.
"""

from __future__ import annotations

from scouting_db.book.changes import Changes
from scouting_db.book.evidence import Evidence
from scouting_db.book.forgetting import Forgetting
from scouting_db.book.log import MatchLog
from scouting_db.book.matches import Matches
from scouting_db.book.notes import Notes
from scouting_db.book.pairs import Pairs
from scouting_db.book.plans import Plans
from scouting_db.book.players import Players
from scouting_db.book.rallies import Rallies
from scouting_db.book.rates import Rates
from scouting_db.book.reminders import Reminders
from scouting_db.book.told import Told


class Book(
    Players,
    Pairs,
    Notes,
    Evidence,
    Rates,
    Matches,
    MatchLog,
    Rallies,
    Told,
    Plans,
    Reminders,
    Changes,
    Forgetting,
):
    """One team's scouting data, for one person and one moment."""
