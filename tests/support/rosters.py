"""A book's players from their names alone, numbered from 1, none of them ours."""

from __future__ import annotations

from knowledge.vocabulary import PlayerId
from scouting_db.values import PlayerRow


def roster_of(*names: str) -> tuple[PlayerRow, ...]:
    return tuple(
        PlayerRow(player=PlayerId(number), name=name, ours=False)
        for number, name in enumerate(names, start=1)
    )
