"""Documents of random books: rows in every table that is exported, valid by the schema alone."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any

from hypothesis import strategies as st
from sqlalchemy import (
    JSON,
    BigInteger,
    Boolean,
    CheckConstraint,
    Column,
    Float,
    ForeignKeyConstraint,
    Integer,
    String,
    Table,
    UniqueConstraint,
)

from scouting_db.book.scope import NUMBERS_PER_VERSION
from scouting_db.book_document import FORMAT, PEOPLE
from scouting_db.exchange import KEPT, LEFT_BEHIND

MOST_ROWS = 4
LARGEST = 2**40

_LISTED = re.compile(r"(\w+) IN \((.*)\)", re.DOTALL)
_TEXT = st.text(st.characters(exclude_characters="\0", exclude_categories=["Cs"]), max_size=12)
_JSON = st.recursive(
    st.none() | st.booleans() | st.integers(-1000, 1000) | _TEXT,
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(_TEXT, inner, max_size=3),
    max_leaves=4,
)


def _allowed(table: Table) -> dict[str, list[str]]:
    """The words that CHECK constraints allow in a column."""
    found: dict[str, list[str]] = {}
    for one in table.constraints:
        listed = _LISTED.fullmatch(str(one.sqltext)) if isinstance(one, CheckConstraint) else None
        if listed:
            found[listed[1]] = re.findall(r"'([^']*)'", listed[2])
    return found


def _value(column: Column[Any], allowed: Mapping[str, list[str]]) -> st.SearchStrategy[Any]:
    if column.name in allowed:
        return st.sampled_from(allowed[column.name])
    kind = column.type
    if isinstance(kind, JSON):
        is_list = column.name == "lines"
        return st.lists(_JSON, max_size=3) if is_list else st.dictionaries(_TEXT, _JSON, max_size=3)
    if isinstance(kind, Boolean):
        return st.booleans()
    if isinstance(kind, Float):
        return st.floats(-10, 10).map(lambda one: one + 0.0)
    if isinstance(kind, BigInteger | Integer):
        return st.integers(0, 2**31 - 1 if type(kind) is Integer else LARGEST)
    if isinstance(kind, String) and kind.length:
        return _TEXT
    return _TEXT


@st.composite
def books(draw: st.DrawFn) -> dict[str, Any]:
    """A document: what `export_book` would write of some book."""
    people = draw(st.lists(_TEXT, min_size=2, max_size=2))
    rows: dict[str, list[dict[str, Any]]] = {}
    for name, table in KEPT.items():
        rows[name] = _rows(draw, table, rows, people)
    used = {row[key] for name in ("note", "entry") for row in rows[name] for key in PEOPLE & {*row}}
    if used != set(range(1, len(people) + 1)):
        # Only those who wrote something are told, so each of them writes a note.
        base = max([row["note_id"] for row in rows["note"]], default=0) + 1
        rows["note"] += [
            {"note_id": base + at, "author": at, "at": 0, "text": "", "unread": False}
            for at in range(1, len(people) + 1)
        ]
    numbers = [
        value for found in rows.values() for row in found
        for key, value in row.items() if key.endswith("_id") and isinstance(value, int)
    ]  # fmt: skip
    version = max(numbers, default=0) // NUMBERS_PER_VERSION + draw(st.integers(1, 5))
    return {
        "seamwise": FORMAT,
        "book": {"name": draw(_TEXT), "zone": "Europe/Vienna", "version": version},
        "people": people,
        "tables": rows,
    }


def _rows(
    draw: st.DrawFn, table: Table, others: Mapping[str, list[dict[str, Any]]], people: list[str]
) -> list[dict[str, Any]]:
    made: dict[tuple[Any, ...], dict[str, Any]] = {}
    keys = [column.name for column in table.primary_key if column.name not in LEFT_BEHIND]
    for _ in range(draw(st.integers(0, MOST_ROWS))):
        row = _row(draw, table, others, people)
        if row is not None and not _clashes(table, row, list(made.values())):
            made.setdefault(tuple(row[key] for key in keys), row)
    return [made[key] for key in sorted(made)]


def _clashes(table: Table, row: Mapping[str, Any], others: list[dict[str, Any]]) -> bool:
    """Whether another row has the same values where the schema wants them to differ."""
    for one in table.constraints:
        if isinstance(one, UniqueConstraint):
            names = [column.name for column in one.columns if column.name not in LEFT_BEHIND]
            if any(all(row.get(key) == other.get(key) for key in names) for other in others):
                return True
    return False


def _row(
    draw: st.DrawFn, table: Table, others: Mapping[str, list[dict[str, Any]]], people: list[str]
) -> dict[str, Any] | None:
    allowed = _allowed(table)
    row: dict[str, Any] = {}
    for key in sorted(table.foreign_key_constraints, key=lambda one: str(one.name)):
        if key.referred_table.name in KEPT and not _refer(draw, key, others, row):
            return None
    for column in table.c:
        if column.name in LEFT_BEHIND or column.name in row:
            continue
        if column.name in PEOPLE:
            value = draw(st.none() | st.integers(1, len(people)))
        else:
            value = draw(_value(column, allowed) | (st.none() if column.nullable else st.nothing()))
        row[column.name] = value
    if table.name == "pair":
        low, high = sorted((row["player_a"], row["player_b"]))
        if low == high:
            return None
        row["player_a"], row["player_b"] = low, high
    return {column.name: row[column.name] for column in table.c if row.get(column.name) is not None}


def _refer(
    draw: st.DrawFn,
    key: ForeignKeyConstraint,
    others: Mapping[str, list[dict[str, Any]]],
    row: dict[str, Any],
) -> bool:
    """Point to some row that is there, or to none where that may be."""
    pairs = [
        (element.parent, element.column.name)
        for element in key.elements
        if element.parent.name not in LEFT_BEHIND
    ]
    if all(near.nullable for near, _ in pairs) and draw(st.booleans()):
        row.update({near.name: None for near, _ in pairs})
        return True
    there = others[key.referred_table.name]
    if not there:
        row.update({near.name: None for near, _ in pairs})
        return all(near.nullable for near, _ in pairs)
    target = draw(st.sampled_from(there))
    row.update({near.name: target[far] for near, far in pairs})
    return True
