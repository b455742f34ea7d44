"""People and pairs of a roster or a draw, as its table tells them."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping

from knowledge.dataclass import dataclass
from knowledge.regex import regex
from knowledge.vocabulary import Value
from scouting_db.csv_reading import Field, TableRead
from scouting_db.sounds import fold

LONGEST_NAME = 80
"""Characters of a name; a longer cell is a remark."""

_BETWEEN = regex(r"\s*(?:/|&|\+|;|\band\b|\bwith\b|\s-\s|\s–\s|\n)\s*", re.IGNORECASE)
_NUMBERING = regex(
    r"^\s*(?:[\[(#]?\d{1,3}[\])]?[.:)]?\s+)|\s*[\[(](?:\d{1,3}|wc|q|ll)[\])]\s*$", re.IGNORECASE
)
"""A seed or a number beside a name."""

_NOBODY = frozenset(
    ["bye", "tbd", "tba", "none", "na", "n a", "", "-", "winner", "loser", "qualifier"]
)

_HANDS: Mapping[str, Value] = {
    "l": Value.LEFT, "left": Value.LEFT, "lefty": Value.LEFT, "left handed": Value.LEFT,
    "lh": Value.LEFT, "left hand": Value.LEFT, "r": Value.RIGHT, "right": Value.RIGHT,
    "righty": Value.RIGHT, "right handed": Value.RIGHT, "rh": Value.RIGHT,
    "right hand": Value.RIGHT, "both": Value.AMBIDEXTROUS, "ambi": Value.AMBIDEXTROUS,
    "ambidextrous": Value.AMBIDEXTROUS,
}  # fmt: skip


@dataclass(frozen=True, slots=True, kw_only=True)
class Entrant:
    """Somebody in a table, with what it says of them."""

    name: str
    hand: Value | None = None
    nicknames: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Roster:
    """Everybody once, in order; pairs by name; lines that name nobody."""

    entrants: tuple[Entrant, ...]
    pairs: tuple[tuple[str, str], ...]
    unread: tuple[int, ...]


def read_roster(table: TableRead) -> Roster:
    """The people of a table, the same name once however often it stands there."""
    people: dict[str, Entrant] = {}
    pairs: dict[frozenset[str], tuple[str, str]] = {}
    unread: list[int] = []
    for number, row in table.rows:
        cells = dict(_cells(table, row))
        teams = [team for team in _teams(cells) if team]
        if not teams:
            unread.append(number)
        for team in teams:
            for one in team:
                _take(people, one)
            if len(team) == 2 and fold(team[0].name) != fold(team[1].name):
                names = (team[0].name, team[1].name)
                pairs.setdefault(frozenset(map(fold, names)), names)
    told = [(people[fold(a)].name, people[fold(b)].name) for a, b in pairs.values()]
    return Roster(entrants=tuple(people.values()), pairs=tuple(told), unread=tuple(unread))


def _cells(table: TableRead, row: tuple[str, ...]) -> Iterator[tuple[Field, str]]:
    for field, cell in zip(table.fields, row, strict=False):
        if field is not None and cell:
            yield field, " ".join(cell.split()) if field is not Field.TEAM else cell


def _take(people: dict[str, Entrant], one: Entrant) -> None:
    """A later line adds what an earlier one left out."""
    known = people.get(fold(one.name))
    if known is None:
        people[fold(one.name)] = one
        return
    people[fold(one.name)] = Entrant(
        name=known.name,
        hand=known.hand or one.hand,
        nicknames=tuple(dict.fromkeys((*known.nicknames, *one.nicknames))),
    )


def _teams(cells: Mapping[Field, str]) -> list[tuple[Entrant, ...]]:
    """The one or two sides of a line."""
    own = _own(cells)
    partner = _people(cells.get(Field.PARTNER, ""))
    first = (*own, *partner) if own else _people(cells.get(Field.TEAM, "")) or partner
    return [first[:2], _people(cells.get(Field.OTHER_TEAM, ""))[:2]]


def _own(cells: Mapping[Field, str]) -> tuple[Entrant, ...]:
    parts = (cells.get(Field.FIRST, ""), cells.get(Field.LAST, ""))
    whole = " ".join(part for part in parts if part) or cells.get(Field.NAME, "")
    found = _people(whole)
    if len(found) != 1:
        return found
    hand = _HANDS.get(fold(cells.get(Field.HAND, "")).replace("-", " "))
    nicknames = tuple(
        part.strip() for part in cells.get(Field.NICKNAME, "").split(";") if part.strip()
    )
    return (Entrant(name=found[0].name, hand=hand, nicknames=nicknames),)


def _people(cell: str) -> tuple[Entrant, ...]:
    """The names in a cell: one, or two of a team."""
    names = (_name(part) for part in _BETWEEN.split(cell))
    return tuple(Entrant(name=name) for name in names if name)


def _name(part: str) -> str:
    """The name as people say it: "Okafor, Chidi" is Chidi Okafor; a seed is no part of it."""
    bare = _NUMBERING.sub("", part.lstrip("'")).strip(" .,")
    last, comma, first = bare.partition(",")
    if comma and "," not in first:
        bare = f"{first.strip()} {last.strip()}"
    is_name = any(letter.isalpha() for letter in bare) and len(bare) <= LONGEST_NAME
    return bare if is_name and fold(bare) not in _NOBODY else ""
