"""Tables as spreadsheets and desks write them: any common encoding, delimiter and header."""

from __future__ import annotations

import csv
import io
from collections.abc import Sequence
from enum import StrEnum

from knowledge.dataclass import dataclass
from knowledge.regex import regex
from scouting_db.sounds import fold

MOST_ROWS = 2_000
"""Rows read of one file: no event we know of has so many entries."""

_DELIMITERS = ",;\t|"


class Field(StrEnum):
    """What a column holds."""

    NAME = "name"
    FIRST = "first"
    LAST = "last"
    PARTNER = "partner"
    TEAM = "team"
    OTHER_TEAM = "other_team"
    HAND = "hand"
    NICKNAME = "nickname"
    SIDE = "side"


_HEADERS: dict[Field, tuple[str, ...]] = {
    Field.NAME: (
        "name", "player", "players", "full name", "fullname", "player name", "athlete",
        "participant", "competitor", "player 1", "player1", "player one", "p1", "entrant",
        "player 1 name", "names",
    ),
    Field.FIRST: ("first", "first name", "firstname", "given name", "given", "forename"),
    Field.LAST: ("last", "last name", "lastname", "surname", "family name", "familyname"),
    Field.PARTNER: (
        "partner", "partner name", "teammate", "team mate", "player 2", "player2", "player two",
        "p2", "doubles partner", "with", "player 2 name",
    ),
    Field.TEAM: (
        "team", "pair", "team name", "entry", "doubles team", "team 1", "team1", "team a",
        "pairing", "teams", "pairs", "home",
    ),
    Field.OTHER_TEAM: (
        "opponent", "opponents", "team 2", "team2", "team b", "away", "versus", "vs", "against",
    ),
    Field.HAND: (
        "hand", "handedness", "plays", "handed", "dominant hand", "playing hand", "l r",
        "left right",
    ),
    Field.NICKNAME: ("nickname", "nicknames", "nick", "alias", "aliases", "aka", "known as"),
    Field.SIDE: ("side", "us or them", "us them"),
}  # fmt: skip
"""Words over a column that say what it holds."""


@dataclass(frozen=True, slots=True, kw_only=True)
class TableRead:
    """A table: what its columns hold, and its rows with their line numbers."""

    fields: tuple[Field | None, ...]
    rows: tuple[tuple[int, tuple[str, ...]], ...]
    has_header: bool
    cut: bool = False


def text_of(content: bytes) -> str:
    """The text of a file: by its byte order mark, else UTF-8, else Windows-1252."""
    for mark, encoding in (
        (b"\xef\xbb\xbf", "utf-8-sig"),
        (b"\xff\xfe", "utf-16"),
        (b"\xfe\xff", "utf-16"),
    ):
        if content.startswith(mark):
            return content.decode(encoding, errors="replace")
    if content[1:2] == b"\0":
        return content.decode("utf-16-le", errors="replace")
    try:
        return content.decode("utf-8")
    except UnicodeDecodeError:
        return content.decode("cp1252", errors="replace")


def read_table(text: str) -> TableRead:
    """The rows of a table; without a header its first column holds names."""
    delimiter = _delimiter(text)
    lines = csv.reader(io.StringIO(text, newline=""), delimiter=delimiter, skipinitialspace=True)
    found = [
        (lines.line_num, tuple(cell.strip() for cell in row))
        for row in lines
        if any(cell.strip() for cell in row)
    ]
    for place, (_, row) in enumerate(found[:_HEADER_WITHIN]):
        fields = tuple(map(field_of, row))
        if _is_header(fields):
            rows = found[place + 1 :]
            return TableRead(
                fields=fields,
                rows=tuple(rows[:MOST_ROWS]),
                has_header=True,
                cut=len(rows) > MOST_ROWS,
            )
    width = max((len(row) for _, row in found), default=0)
    fields = (Field.NAME, *[None] * (width - 1)) if width else ()
    return TableRead(
        fields=fields, rows=tuple(found[:MOST_ROWS]), has_header=False, cut=len(found) > MOST_ROWS
    )


_HEADER_WITHIN = 5
"""A title or two may stand over the header."""


def _is_header(fields: Sequence[Field | None]) -> bool:
    return any(one in _NAMING for one in fields)


_NAMING = frozenset({Field.NAME, Field.FIRST, Field.LAST, Field.TEAM, Field.PARTNER})


def _delimiter(text: str) -> str:
    """The one that stands equally often in the first lines, and most often of those."""
    lines = [line for line in text.splitlines() if line.strip()][:20]
    if not lines:
        return ","

    def evenness(mark: str) -> tuple[int, int]:
        counts = [len(next(csv.reader([line], delimiter=mark), [])) for line in lines]
        usual = max(set(counts), key=counts.count)
        return (counts.count(usual) if usual > 1 else 0, usual)

    best = max(_DELIMITERS, key=evenness)
    return best if evenness(best)[0] else ","


_SPLIT = regex(r"[\W_]+")
_KNOWN = {header: field for field, headers in _HEADERS.items() for header in headers}


def field_of(header: str) -> Field | None:
    """What a column of that header holds; None for one that says nothing to us."""
    return _KNOWN.get(" ".join(part for part in _SPLIT.split(fold(header)) if part))
