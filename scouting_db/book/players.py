"""Players and the names they go by."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from typing import Any

from sqlalchemy import and_, bindparam, delete, insert, select, update

from knowledge.vocabulary import PlayerId
from scouting_db.book.scope import Scope
from scouting_db.conflicts import insert_or_replace
from scouting_db.names import fold
from scouting_db.tables import alias, match, note, observation, player, rally_rate
from scouting_db.values import Micros, Part, PlayerRow

LONGEST_ALIAS = 200
"""Characters of a folded alias; nobody's name is longer, and the column ends there."""

_NAMES = (
    select(player.c.player_id, player.c.name, player.c.ours, alias.c.words)
    .select_from(
        player.outerjoin(
            alias,
            and_(alias.c.book_id == player.c.book_id, alias.c.player_id == player.c.player_id),
        )
    )
    .where(player.c.book_id == bindparam("book"))
    .order_by(player.c.player_id, alias.c.folded)
)
_ROSTER = _NAMES.where(player.c.forgotten_at.is_(None), player.c.merged_into.is_(None))
_ONE = _NAMES.where(player.c.player_id == bindparam("player"))
_ADD = insert(player)
_THIS = (player.c.book_id == bindparam("book"), player.c.player_id == bindparam("player"))
_RENAME = update(player).where(*_THIS).values(name=bindparam("new_name"))
_SET_OURS = update(player).where(*_THIS).values(ours=bindparam("is_ours"))
_SET_FORGOTTEN = update(player).where(*_THIS).values(forgotten_at=bindparam("at"))
_NOTED = select(observation.c.note_id).where(
    observation.c.book_id == bindparam("book"), observation.c.player_id == bindparam("player")
)
_RATED = select(rally_rate.c.match_id).where(
    rally_rate.c.book_id == bindparam("book"), rally_rate.c.player_id == bindparam("player")
)
_SAYS_ELSE = (
    update(note)
    .where(note.c.book_id == bindparam("book"), note.c.note_id.in_(_NOTED))
    .values(changed=bindparam("version")),
    update(match)
    .where(match.c.book_id == bindparam("book"), match.c.match_id.in_(_RATED))
    .values(changed=bindparam("version")),
)
"""Nothing is told of somebody removed: notes and matches that speak of them read anew."""

_REMOVE_ALIAS = delete(alias).where(
    alias.c.book_id == bindparam("book"),
    alias.c.player_id == bindparam("player"),
    alias.c.folded == bindparam("key"),
)


class Players(Scope):
    """The roster."""

    def players(self) -> tuple[PlayerRow, ...]:
        """Everyone on the roster with every alias, in the order they were added."""
        return _player_rows(self._read(_ROSTER))

    def player(self, player: PlayerId) -> PlayerRow | None:
        """One player, removed ones included; None for a number that is not of this book."""
        return next(iter(_player_rows(self._read(_ONE, {"player": player}))), None)

    def add_player(self, name: str, *, ours: bool = False) -> PlayerId:
        """Somebody new on the roster."""
        number = self._number(Part.PEOPLE)
        self._insert(_ADD, {"player_id": number, "name": name, "ours": ours})
        return PlayerId(number)

    def rename(self, player: PlayerId, name: str) -> None:
        """A new name; the old one is not kept as an alias."""
        self._write(_RENAME, {"player": player, "new_name": name})

    def set_ours(self, player: PlayerId, *, ours: bool) -> None:
        """Whether the player is one of us."""
        self._write(_SET_OURS, {"player": player, "is_ours": ours})

    def remove_player(self, player: PlayerId) -> None:
        """Take the player off the roster; notes and log stay for `restore_player`."""
        self._set_forgotten(player, self._now)

    def restore_player(self, player: PlayerId) -> None:
        """Back on the roster."""
        self._set_forgotten(player, None)

    def _set_forgotten(self, player: PlayerId, at: Micros | None) -> None:
        self._write(_SET_FORGOTTEN, {"player": player, "at": at})
        for statement in _SAYS_ELSE:
            self._write(statement, {"player": player, "version": self._stamp()})

    def add_alias(self, player: PlayerId, words: str) -> None:
        """A further way to name the player; several players may share one."""
        key = ("book_id", "folded", "player_id")
        self._insert(
            insert_or_replace(self._connection, alias, *key),
            {"folded": _key(words), "player_id": player, "words": words},
        )

    def remove_alias(self, player: PlayerId, words: str) -> None:
        """The player no longer goes by these words."""
        self._write(_REMOVE_ALIAS, {"player": player, "key": _key(words)})


def _key(words: str) -> str:
    return fold(words).replace("\0", "")[:LONGEST_ALIAS]


def _player_rows(rows: Iterable[Any]) -> tuple[PlayerRow, ...]:
    """One value per player from one row per alias."""
    found: dict[int, PlayerRow] = {}
    for row in rows:
        known = found.get(row.player_id) or PlayerRow(
            player=PlayerId(row.player_id), name=row.name, ours=row.ours
        )
        if row.words is not None:
            known = replace(known, aliases=(*known.aliases, row.words))
        found[row.player_id] = known
    return tuple(found.values())
