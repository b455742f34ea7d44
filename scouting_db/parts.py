"""The parts of a book: what of it was written when, so that what is kept of the others holds."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from sqlalchemy import Column, Table

from scouting_db import tables
from scouting_db.values import Part, Stamps

PART_OF: Mapping[Table, Part | None] = {
    tables.player: Part.PEOPLE,
    tables.alias: Part.PEOPLE,
    tables.pair: Part.PEOPLE,
    tables.note: Part.NOTES,
    tables.observation: Part.NOTES,
    tables.event: Part.MATCHES,
    tables.match: Part.MATCHES,
    tables.entry: Part.LOG,
    tables.rally: Part.LOG,
    tables.rally_rate: Part.LOG,
    tables.choice: Part.LOG,
    tables.agreement: Part.SETTLED,
    tables.preference: Part.SETTLED,
    tables.plan: Part.SETTLED,
    tables.book: None,
    tables.change: None,
    tables.reminder: None,
}
"""Every table that a book's door writes. None: nothing of it is kept between turns; the book's own
name and zone are read with every message, and days told in the zone are notes' and matches'."""


def version_column(part: Part) -> Column[Any]:
    """The column of the book with the version that last wrote the part."""
    return tables.book.c[f"{part.value}_version"]


VERSION_COLUMNS = tuple(map(version_column, Part))
"""What `stamps_of` reads."""


def stamps_of(row: Any) -> Stamps:
    """The stamps of a row that has `VERSION_COLUMNS`; 0 where it is of no book."""
    return Stamps(**{part.value: getattr(row, version_column(part).name) or 0 for part in Part})
