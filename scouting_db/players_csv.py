"""Players of a book as a table: one line each, with what else they are called and their hand."""

from __future__ import annotations

import csv
import io

from sqlalchemy import Connection

from knowledge.vocabulary import Trait, Value
from scouting_db.book import Book
from scouting_db.values import BookId, Micros

COLUMNS = ("Name", "Nicknames", "Side", "Partner", "Hand")

BETWEEN = "; "
"""Between several nicknames or partners in one cell."""

_FORMULA = ("=", "+", "-", "@", "\t", "\r")
"""A cell that begins so would be run by a spreadsheet (OWASP, "CSV Injection")."""

_HANDS = (Value.LEFT, Value.RIGHT, Value.AMBIDEXTROUS)


def players_as_csv(connection: Connection, book: BookId) -> str:
    """The table as text, a byte order mark first, so that spreadsheets read its letters right."""
    door = Book(connection, book, person=None, now=Micros(0))
    people = door.players()
    names = {row.player: row.name for row in people}
    partners: dict[int, list[str]] = {row.player: [] for row in people}
    for pair in door.pairs():
        for one, other in (pair.players, pair.players[::-1]):
            if one in partners and other in names:
                partners[one].append(names[other])
    claims = door.observations([row.player for row in people]) if people else ()
    hands = {
        claim.player: claim.value
        for claim in claims
        if claim.trait is Trait.HAND and claim.value in _HANDS and not claim.denied
    }
    out = io.StringIO()
    writer = csv.writer(out)
    writer.writerow(COLUMNS)
    for row in people:
        writer.writerow(
            [
                _cell(row.name),
                _cell(BETWEEN.join(row.aliases)),
                "us" if row.ours else "them",
                _cell(BETWEEN.join(partners[row.player])),
                hands[row.player].value if row.player in hands else "",
            ]
        )
    return "\ufeff" + out.getvalue()


def _cell(text: str) -> str:
    return f"'{text}" if text.startswith(_FORMULA) else text
