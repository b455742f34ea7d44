"""The document that an exported book is, as text and as values.

An object:

- `seamwise`: the version of this form, 2.
- `book`: `name`, `zone` and `version`, its count of changes, from which new rows are numbered.
- `people`: the names of those who wrote in it. Columns that tell who refer to a name by its
  place, from 1.
- `tables`: for each table its rows, each an object with its columns. A column without a value
  is left out.

The form before, 1, had a row to a line; it is still read.
"""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping, Sequence
from typing import Any

FORMAT = 2

PEOPLE = frozenset({"author", "person_id"})
"""Columns that refer to a person, whose number changes on import."""


class ExchangeError(Exception):
    """The text is no export of a book; the message names the place."""


def written(
    head: Mapping[str, Any], people: Sequence[str], rows: Mapping[str, Sequence[Mapping[str, Any]]]
) -> str:
    """A row to a line, so that two versions of a book can be compared by eye."""
    told = [
        f'"{name}":[' + ",".join(f"\n{_json(row)}" for row in rows[name]) + "]" for name in rows
    ]
    return (
        f'{{"seamwise":{FORMAT},\n"book":{_json(head)},\n"people":{_json(list(people))},\n'
        '"tables":{\n' + ",\n".join(told) + "\n}}\n"
    )


def _json(value: object) -> str:
    return json.dumps(value, ensure_ascii=False, separators=(",", ":"))


def read_document(text: str) -> dict[str, Any]:
    """The document of a text, of this form or the one before; ExchangeError where it is none."""
    try:
        value = json.loads(text)
    except ValueError as error:
        return _from_lines(text, error)
    if not isinstance(value, dict):
        raise ExchangeError("the file is not a JSON object")
    if value.get("seamwise") != FORMAT:
        if value.get("seamwise") == 1:
            return _from_lines(text, ValueError("one line"))
        raise ExchangeError(f'the file is no export of a book: expected "seamwise": {FORMAT}')
    return value


def _from_lines(text: str, error: ValueError) -> dict[str, Any]:
    """A document of the form before: a head, and a row to a line with its table's name."""
    lines = [line for line in text.splitlines() if line.strip()]
    values = _parsed_lines(lines, error)
    if not values or values[0].get("seamwise") != 1:
        raise ExchangeError(f"the file is not JSON: {error}")
    people: dict[object, int] = {}
    names: list[object] = []
    rows: dict[str, list[dict[str, Any]]] = {}
    for row in values[1:]:
        name = str(row.pop("table", None))
        if name == "person":
            names.append(row.get("name"))
            people[row.get("person_id")] = len(names)
            continue
        for key in PEOPLE & row.keys():
            row[key] = people.get(row[key])
        rows.setdefault(name, []).append(row)
    head = {key: values[0].get(key) for key in ("name", "zone", "version")}
    return {"seamwise": FORMAT, "book": head, "people": names, "tables": rows}


def _parsed_lines(lines: Iterable[str], error: ValueError) -> list[dict[str, Any]]:
    try:
        values = [json.loads(line) for line in lines]
    except ValueError:
        raise ExchangeError(f"the file is not JSON: {error}") from None
    if not all(isinstance(value, dict) for value in values):
        raise ExchangeError(f"the file is not JSON: {error}")
    return values
