"""Players and the names they go by."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from typing import Any
from sqlalchemy import Connection
from knowledge.evidence import Observation
from knowledge.vocabulary import *  # noqa
from scouting_db.values import *  # noqa
from scouting_db.book.scope import Scope


class Players(Scope):
    """The roster."""

    def players(self) -> tuple[PlayerRow, ...]:
        """Everyone on the roster, with every alias."""
        raise NotImplementedError

    def player(self, player: PlayerId) -> PlayerRow | None:
        """One player, removed ones included; None for a number that is not of this book."""
        raise NotImplementedError

    def add_player(self, name: str, *, ours: bool = False) -> PlayerId:
        """"""
        raise NotImplementedError

    def rename(self, player: PlayerId, name: str) -> None:
        """A new name; the old one is not kept as an alias."""
        raise NotImplementedError

    def set_ours(self, player: PlayerId, *, ours: bool) -> None:
        """Whether the player is one of us."""
        raise NotImplementedError

    def remove_player(self, player: PlayerId) -> None:
        """Take the player off the roster; notes and log stay for `restore_player`."""
        raise NotImplementedError

    def restore_player(self, player: PlayerId) -> None:
        """"""
        raise NotImplementedError

    def add_alias(self, player: PlayerId, words: str) -> None:
        """A further way to name the player; several players may share one."""
        raise NotImplementedError

    def remove_alias(self, player: PlayerId, words: str) -> None:
        """"""
        raise NotImplementedError
